"""Plots return their axes, name their units, and do not rely on colour alone."""

import json

import pytest

import windwall as ww

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


def test_accounts(best, ax):
    assert ww.plot.accounts(best, ax) is ax
    assert "kW" in ax.get_xlabel()
    for bars, account in zip(ax.containers, (best.shaft, best.heat), strict=True):
        total, *others = [bar.get_width() for bar in bars]
        assert total == pytest.approx(account.iloc[0] / 1e3)
        assert sum(others) == pytest.approx(total, abs=0.05)  # entries too small have no bar
    names = [label.get_text() for label in ax.get_yticklabels()]
    assert names[0] == "shaft: indicated"
    assert "shaft: grade" not in names  # a level road takes nothing


def test_best_by_cost(ranking, ax):
    assert ww.plot.best_by_cost(ranking, ax) is ax
    assert "EUR" in ax.get_xlabel()
    assert "goal" in labels(ax)
    said = [text.get_text() for text in ax.texts]
    assert 0 < len(said) <= 10
    assert any(text.startswith("+") for text in said)


def test_units_and_titles_come_from_the_file(document, ax):
    document["units"] = "us"
    document["title"] = "costs $5$ and <b>"
    car = ww.loads(json.dumps(document))
    ww.plot.force_against_speed(car, ax)
    assert "mph" in ax.get_xlabel()
    assert "lbf" in ax.get_ylabel()
    assert ax.get_title() == r"costs \$5\$ and <b>"  # signs, not a formula
    ax.figure.canvas.draw()


def test_without_axes_one_is_made(best):
    import matplotlib.pyplot as plt

    made = ww.plot.accounts(best)
    assert made.figure is not None
    plt.close(made.figure)


def test_no_answer_still_plots_the_forces(stuck, ax):
    ww.plot.force_against_speed(stuck, ax)
    assert labels(ax)[-1] == "road load"
