"""Plots return their axes, name their units, and do not rely on colour alone."""

import json

import pytest

import windwall as ww
from python.samples import DOCUMENT

matplotlib = pytest.importorskip("matplotlib")
matplotlib.use("Agg")


@pytest.fixture
def ax():
    import matplotlib.pyplot as plt

    figure, axes = plt.subplots()
    yield axes
    plt.close(figure)


def labels(axes):
    return axes.get_legend_handles_labels()[1]


def test_force_against_speed(car, best, ax):
    assert ww.plot.force_against_speed(car, ax) is ax
    assert labels(ax)[:5] == ["gear 1", "gear 2", "gear 3", "gear 4", "road load"]
    assert (ax.get_xlabel(), ax.get_ylabel()) == (
        "Speed over the ground, km/h",
        "Force at the road, N",
    )
    gears = ax.get_lines()[:4]
    assert len({(line.get_linestyle(), line.get_marker()) for line in gears}) == 4
    (x,), (y,) = ax.get_lines()[-1].get_data()
    assert x == pytest.approx(best.speed * 3.6)
    assert y == pytest.approx(best.point.road.thrust)


def test_the_road_load_crosses_at_the_balance(car, best, ax):
    import numpy as np

    ww.plot.force_against_speed(car, ax, points=60)
    speed, force = ax.get_lines()[4].get_data()
    there = np.interp(best.speed * 3.6, speed, force)
    assert there == pytest.approx(best.point.road.thrust - best.point.road.surplus, rel=2e-3)


def test_accounts_flow_from_what_is_given_to_nothing(best, ax):
    assert ww.plot.accounts(best, ax) is ax
    names = [label.get_text() for label in ax.get_yticklabels()]
    bars = dict(zip(names, (one[0] for one in ax.containers), strict=False))
    assert names[0] == "pistons give"
    assert "grade" not in names  # a level road takes nothing
    end = bars["air"].get_x() + bars["air"].get_width()
    assert end == pytest.approx(0, abs=0.05)  # nothing is left
    share = 100 * best.shaft["air"] / best.shaft["indicated"]
    assert abs(bars["air"].get_width()) == pytest.approx(share)
    crank = 100 * best.point.engine.power / best.shaft["indicated"]
    assert bars["crank gives"].get_width() == pytest.approx(crank, rel=1e-4)
    assert names.index("fuel holds") < names.index("exhaust") < names.index("road")


def test_stations_are_those_of_the_answer(best, ax):
    assert ww.plot.stations(best, ax) is ax
    other = ax.figure.axes[1]
    assert (ax.get_ylabel(), other.get_ylabel()) == (
        "Pressure (above), kPa",
        "Temperature (below), degC",
    )
    (pressure,), (temperature,) = ax.get_lines(), other.get_lines()
    assert list(pressure.get_ydata()) == pytest.approx(best.stations["pressure"] / 1e3)
    assert list(temperature.get_ydata()) == pytest.approx(best.stations["temperature"] - 273.15)
    names = [one.get_text().replace("\n", " ") for one in ax.get_xticklabels()]
    assert names == [one.removeprefix("behind ") for one in best.stations.index]
    assert ax.get_xlabel() == "Behind each part"
    ax.figure.canvas.draw()
    lowest = ax.transData.transform((0, min(pressure.get_ydata())))[1]
    highest = other.transData.transform((0, max(temperature.get_ydata())))[1]
    assert highest < lowest  # neither line crosses the other


def test_knock_shows_the_band_to_which_it_is_known(car, best, ax):
    assert ww.plot.knock_over_engine_speed(car, ax) is ax
    assert f"gear {best.gear}," in ax.get_xlabel()
    line, at_best = (one for one in ax.get_lines() if not one.get_label().startswith("_"))
    curve = car.full_throttle_curve(gear=best.gear, points=40)
    assert list(line.get_ydata()) == pytest.approx(curve["knock/margin"])
    assert list(at_best.get_ydata()) == pytest.approx(curve["knock/margin_at_best_spark"])
    band = ax.collections[0].get_paths()[0].get_extents()
    sigma = car.knock_sigma
    assert band.y0 == pytest.approx(min(line.get_ydata()) - sigma)
    assert band.y1 == pytest.approx(max(line.get_ydata()) + sigma)
    right = ax.child_axes[0]
    words = [one.get_text() for one in right.get_yticklabels()]
    ticks = dict(zip(words, right.get_yticks(), strict=True))
    assert ticks["50"] == pytest.approx(0)
    for chance, margin in ticks.items():
        known = ww.physics.knock_probability(margin, sigma)
        assert 100 * known == pytest.approx(float(chance), abs=1e-6)


def test_gains_at_three_anchors_with_their_spread(car, ranking, ax):
    drawn = car.drawn_ranking(ranking, 16, progress=False)
    assert ww.plot.gains(ranking, drawn, ax) is ax
    names = [one.get_text() for one in ax.get_yticklabels()]
    shown = sorted(ranking.upgrades.values(), key=lambda one: -one.alone[1])
    assert names == [ranking.menu[one.id].title for one in shown]
    views = [one for one in ax.get_lines() if one.get_label().startswith("knock anchor")]
    for view, line in enumerate(views):
        assert list(line.get_xdata()) == pytest.approx([one.alone[view] * 3.6 for one in shown])
        assert f"{ranking.knock_anchors[view]:.0f}" in line.get_label()
    for one, bar in zip(shown, ax.containers[0], strict=True):
        spread = drawn.gain(one.id).alone
        assert bar.get_width() == pytest.approx(2 * spread.sigma * 3.6)
        assert bar.get_x() + bar.get_width() / 2 == pytest.approx(spread.mean * 3.6)


def test_best_by_cost(ranking, ax):
    assert ww.plot.best_by_cost(ranking, ax) is ax
    assert "EUR" in ax.get_xlabel()
    assert "goal" in labels(ax)
    said = [text.get_text() for text in ax.texts]
    assert {"1", "2", "Nose fairing", "speed, km/h"} <= set(said)


def test_units_and_titles_come_from_the_file(document, ax):
    document["units"] = "us"
    document["title"] = "costs $5$ and <b>"
    car = ww.loads(json.dumps(document))
    ww.plot.force_against_speed(car, ax)
    assert "mph" in ax.get_xlabel()
    assert "lbf" in ax.get_ylabel()
    said = ax.get_title().splitlines()
    assert said == ["Force against speed", r"costs \$5\$ and <b>"]  # signs, not a formula
    ax.figure.canvas.draw()


def test_without_axes_one_is_made(best):
    import matplotlib.pyplot as plt

    made = ww.plot.accounts(best)
    assert made.figure is not None
    plt.close(made.figure)


def test_no_answer_still_plots_the_forces(stuck, ax):
    ww.plot.force_against_speed(stuck, ax)
    assert labels(ax)[-1] == "road load"
    load = ax.get_lines()[-1].get_ydata()
    thrust = max(max(line.get_ydata()) for line in ax.get_lines()[:-1])
    assert thrust < min(load) < ax.get_ylim()[1]  # why it does not move is seen


@pytest.fixture(scope="module")
def drives():
    """Two runs that set out hot, and the same cold."""
    legs = [
        {"kind": "idle", "time": "30 s"},
        {"kind": "full_throttle", "for_distance": "300 m"},
        {"kind": "stop", "time": "5 min", "engine": "off"},
        {"kind": "full_throttle", "for_distance": "300 m"},
        {"kind": "stop", "time": "1 s"},
    ]
    made = {}
    for starts in ("soaked", "cold"):
        outing = {"id": "twice", "legs": legs, "starts": starts}
        made[starts] = ww.loads(json.dumps(DOCUMENT | {"outings": [outing]})).drive(progress=False)
    return made


def test_over_time(drives, ax):
    drive = drives["soaked"]
    assert ww.plot.over_time(drive, ax=ax) is ax
    assert (ax.get_xlabel(), ax.get_ylabel()) == ("Time, s", "Road speed, km/h")
    x, y = ax.get_lines()[0].get_data()
    assert max(y) == pytest.approx(3.6 * drive["road/speed"].max())
    assert x[-1] == drive["time"][-1]
    assert "shift" in labels(ax)
    marks = ax.get_lines()[labels(ax).index("shift") + 1]
    shifts = [one.time for one in drive.happened if one.what == "shift_begins"]
    assert list(marks.get_xdata()) == pytest.approx(shifts, abs=1e-3)


def test_a_long_outing_counts_minutes(drives, ax):
    drive = drives["soaked"]
    longer = type(drive)(
        drive._numbers
        | {"columns": [column * 3 for column in drive._numbers["columns"]]}
        | {"events": []},
        drive.scenario_info,
        drive.outing,
    )
    ww.plot.over_time(longer, "engine/head/temperature", ax)
    assert ax.get_xlabel() == "Time, min"
    assert ax.get_ylabel() == "Engine head temperature, degC"
    assert ax.get_lines()[0].get_xdata()[-1] == pytest.approx(drive["time"][-1] * 3 / 60)


def test_over_distance_begins_where_the_run_does(drives, ax):
    assert ww.plot.over_distance(drives["soaked"], run=2, ax=ax) is ax
    assert ax.get_xlabel() == "Distance, m"
    x, y = ax.get_lines()[0].get_data()
    assert x[0] == 0
    # Two moments are kept where a run begins and soon behind: a step there is 0.02 s, or 0.3 km/h.
    assert y[0] < 0.5
    assert 300 < x[-1] < 500  # and the way to stop
    assert (x[1:] > x[:-1]).all()  # but not where it stands then
    with pytest.raises(ValueError, match="no run 3 in 'twice'"):
        ww.plot.over_distance(drives["soaked"], run=3, ax=ax)


def test_hot_and_cold_lie_over_each_other(drives, ax):
    ww.plot.runs_overlaid({name: (drive, 1) for name, drive in drives.items()}, ax=ax)
    assert {"soaked", "cold", "shift"} <= set(labels(ax))
    assert labels(ax).count("shift") == 1
    lines = {line.get_label(): line for line in ax.get_lines()}
    assert lines["soaked"].get_linestyle() != lines["cold"].get_linestyle()
    hot, cold = (lines[name].get_ydata().max() for name in ("soaked", "cold"))
    assert hot != pytest.approx(cold, rel=1e-4)
