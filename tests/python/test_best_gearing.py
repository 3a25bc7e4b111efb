"""The best gearing: whole teeth, ends of what is tried, and what it says."""

import json

import numpy as np
import pytest

import windwall as ww
from python.samples import CURVE
from windwall.results.gearing import BestGearing, Tried
from windwall.study import gearing_search, standing_start

TEETH = "driveline/last/teeth_rear"


def geared(teeth=30, run_up="1500 m", **changes):
    """A light vehicle with two gears and a chain."""
    chain = {"id": "last", "kind": "chain", "teeth_front": 15, "teeth_rear": teeth}
    box = {"id": "box", "kind": "gearbox", "ratios": [4.5, 2.5]}
    goal = {} if run_up is None else {"run_up": run_up}
    return ww.loads(json.dumps(CURVE | {"driveline": [box, chain], "goal": goal} | changes))


@pytest.fixture(scope="module")
def best():
    return ww.best_gearing(geared(teeth=36))


def test_every_sprocket_is_tried_and_the_fastest_is_it(best):
    assert best.address == TEETH
    assert best.whole
    values = [one.value for one in best.tried]
    assert values == [float(one) for one in range(round(36 / 1.6), round(36 * 1.6) + 1)]
    speeds = {
        teeth: geared(teeth=int(teeth)).brief_top_speed().goal_speed
        for teeth in (best.best.value - 1, best.best.value, best.best.value + 1, 36)
    }
    assert max(speeds, key=speeds.get) == best.best.value
    assert best.best.merit == pytest.approx(speeds[best.best.value], rel=1e-9)
    assert best.now.merit == pytest.approx(speeds[36], rel=1e-9)
    assert best.gain == pytest.approx(speeds[best.best.value] - speeds[36], rel=1e-6)


def test_flat_holds_what_is_within_a_fifth_of_a_percent(best):
    low, high = best.flat
    inside = [one.merit for one in best.tried if low <= one.value <= high]
    assert min(inside) >= best.best.merit * (1 - 0.002)
    beyond = [one.merit for one in best.tried if one.value in (low - 1, high + 1)]
    assert all(merit < best.best.merit * (1 - 0.002) for merit in beyond)


def test_it_shifts_where_the_next_gear_pushes_as_hard(best):
    (shift,) = best.shifts
    car = geared(teeth=int(best.best.value))
    thrusts = []
    for gear in (1, 2):
        curve = car.full_throttle_curve(gear, 200).dropna(subset=["road/thrust"])
        speeds, thrust = curve["road/speed"], curve["road/thrust"]
        at = speeds.searchsorted(shift.road_speed)
        thrusts.append(thrust.iloc[min(at, len(thrust) - 1)])
    if shift.at_the_limit:
        assert thrusts[0] > thrusts[1]
        assert shift.engine_speed == pytest.approx(car.get("engine/rev_limit"))
    else:
        assert thrusts[0] == pytest.approx(thrusts[1], rel=0.02)


def test_a_torque_that_falls_away_is_left_before_the_limit():
    table = {
        "columns": {"engine_speed": "rpm", "torque": "N m"},
        "rows": [[2000, 50], [3500, 50], [4500, 30], [6000, 8]],
    }
    car = geared(engine=CURVE["engine"] | {"table": table})
    best = ww.best_gearing(car)
    (shift,) = best.shifts
    assert not shift.at_the_limit
    assert shift.engine_speed < car.get("engine/rev_limit")
    fastest = car.set({best.address: best.best.value})
    curves = [
        fastest.full_throttle_curve(gear, 400).dropna(subset=["road/thrust"]) for gear in (1, 2)
    ]
    pushes = [np.interp(shift.road_speed, one["road/speed"], one["road/thrust"]) for one in curves]
    assert pushes[0] == pytest.approx(pushes[1], rel=2e-3)


def test_the_end_of_what_was_tried_is_said():
    best = ww.best_gearing(geared(teeth=36), reach=1.05)
    assert best.best.value in (best.tried[0].value, best.tried[-1].value)
    assert any("larger reach" in one for one in best.sentences)


def test_text_frame_and_document(best):
    assert f"is {best.best.value:.0f}:" in best.sentence
    assert "at the end of 1500 m" in best.sentence
    assert "best" in best.summary()
    curve = best.curve
    assert list(curve.columns) == ["value", "speed"]
    assert curve.attrs["units"] == {"value": "1", "speed": "m/s"}
    document = json.loads(json.dumps(best.to_dict()))
    assert document["best"]["value"] == best.best.value
    assert document["shifts"][0]["gear"] == 1


def test_without_a_road_it_is_the_speed_that_is_held():
    best = ww.best_gearing(geared(run_up=None))
    assert best.run_up is None
    assert "at the end of" not in best.sentence


@pytest.mark.parametrize(
    "address, found",
    [
        ("driveline/box/ratios", "only a number"),
        ("driveline/last/tooth", "tooth.*; did you mean driveline/last/teeth_"),
        ("body/mass", "gears the driveline.*: driveline/last/teeth_front, driveline/last/teeth_re"),
    ],
)
def test_what_cannot_be_tried(address, found):
    with pytest.raises((ww.ScenarioError, KeyError), match=found):
        ww.best_gearing(geared(), address)


@pytest.mark.parametrize("mark", ["402 kg", 402, "0 m"])
def test_a_mark_is_a_distance_or_a_speed(mark):
    with pytest.raises(ww.ScenarioError, match="no distance or speed"):
        ww.best_gearing(geared(), mark=mark)


def twin_peaked(merits, now=38.0):
    """Speeds that were found with so many teeth, made up."""
    tried = tuple(Tried(float(teeth), merit) for teeth, merit in merits)
    best = max((one for one in tried if one.merit is not None), key=lambda one: one.merit)
    there = next(one for one in tried if one.value == now)
    measure = ww.best_gearing(geared(), reach=1.0).measure
    return BestGearing(
        "metric", TEETH, measure, True, None, None, there, best, tried, None, (), len(tried)
    )


def two_hills():
    """38 of them, the best at 34 and a second one at 26."""
    speeds = [32 - 0.02 * min(abs(teeth - 26) + 0.5, abs(teeth - 34)) for teeth in range(24, 62)]
    return twin_peaked(list(zip(range(24, 62), speeds, strict=True)))


def test_every_peak_and_what_there_is_now_are_on_the_page():
    best = two_hills()
    text = best.summary()
    assert [one.value for one in best.peaks] == [26, 34]
    assert "Tried: 38 from 24 to 61" in text
    rows = {line.split()[0]: line for line in text.partition("Tried")[2].splitlines()[1:]}
    assert rows["26"].endswith("another peak")
    assert rows["34"].endswith("best")
    assert rows["38"].endswith("now")
    assert {"24", "61", "..."} <= set(rows)
    assert "45" not in rows
    assert "There is another peak at 26: 115.2 km/h, 0.036 km/h less." in text


def test_a_low_peak_is_a_row_and_no_sentence():
    best = twin_peaked([(36, 20.0), (37, 10.0), (38, 11.0), (39, 9.0), (40, None)])
    assert [one.value for one in best.peaks] == [36, 38]
    assert "There is another peak" not in best.summary()
    assert "another peak, now" in best.summary()
    assert "no answer" in best.summary()


@pytest.mark.parametrize("after", [0, 1, 3])
def test_it_can_be_stopped_and_says_what_was_tried(monkeypatch, after):
    times = []

    def interrupted(*asked):
        if len(times) == after:
            raise KeyboardInterrupt
        times.append(asked)
        return driven(*asked)

    driven = gearing_search.standing_start
    monkeypatch.setattr(gearing_search, "standing_start", interrupted)
    if after == 0:
        with pytest.raises(KeyboardInterrupt):
            ww.best_gearing(geared(), mark="60 km/h")
        return
    best = ww.best_gearing(geared(), mark="60 km/h")
    assert best.interrupted
    assert (len(best.tried), best.now.value) == (after, 30.0)
    said = " ".join(best.summary().split())
    assert f"It was stopped when {after} of {best.wanted} had been tried" in said
    assert "Start in gear" not in said
    assert best.to_dict()["stopped"]


def test_an_interrupt_in_a_run_is_no_answer_of_it(monkeypatch):
    run = standing_start._core.drive

    def cancelled(*asked, **how):
        return run(*asked, **how) | {"ended": "cancelled"}

    monkeypatch.setattr(standing_start._core, "drive", cancelled)
    with pytest.raises(KeyboardInterrupt):
        geared().time_to("60 km/h")


def test_why_no_gearing_gets_there():
    with pytest.raises(ww.NoAnswer) as none:
        ww.best_gearing(geared(), mark="300 km/h", reach=1.1)
    said = str(none.value)
    assert "driveline/last/teeth_rear from 27 to 33, gets to 300 km/h: at best, with 2" in said
    fastest = geared(teeth=27, run_up=None).shortfall().driven * 3.6
    assert f"it comes to {fastest:.1f} km/h (it gets no faster before it gets there)" in said


def test_a_reach_that_is_none():
    with pytest.raises(ww.ScenarioError, match=r"reach: .* is below 1"):
        ww.best_gearing(geared(), reach=0.5)
    assert len(ww.best_gearing(geared(), reach=1.0).tried) == 1
