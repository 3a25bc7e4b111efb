"""Coasting down: what it refuses, what it says, and how its answer goes back into a vehicle."""

import json

import numpy as np
import pandas as pd
import pytest

import windwall as ww
from published.coasting import both_ways, rolled, table
from python.samples import CURVE
from windwall.results.coast_down import Rolling
from windwall.study.coast_down import coast_down

SI = {"time": "s", "speed": "m/s"}
LIGHT = {"mass": "300 kg", "rotating_share": "10 %", "air_density": "1.2 kg/m3"}


def one_way(start, end):
    time, _, speed = rolled(start, end)
    return table((1, time, speed))


def refused(wrong, **arguments):
    with pytest.raises(ww.ScenarioError) as caught:
        ww.coast_down_fit(wrong, **LIGHT | {"units": SI} | arguments)
    return {problem.address: problem.message for problem in caught.value.problems}


def test_too_small_a_span_is_not_separated():
    fit = ww.coast_down_fit(one_way(20, 10), **LIGHT, units=SI)
    assert not fit.separated
    assert (fit.drag_area, fit.rolling_resistance, fit.correlation) == (None, None, None)
    assert fit.changes() == {}
    assert "cannot be told apart" in fit.sentence
    still = 300 * 9.80665 * 0.015 + 0.27 * 15**2
    assert fit.force.value == pytest.approx(still, abs=2 * fit.force.sigma)


def test_a_wind_one_way_is_a_doubt_of_the_force():
    doubts = [
        ww.coast_down_fit(one_way(20, 10), **LIGHT, units=SI, headwind=wind, grade=0).force
        for wind in ("0 m/s", "0 ± 1 m/s")
    ]
    of_wind = (doubts[1].sigma ** 2 - doubts[0].sigma ** 2) ** 0.5
    assert of_wind == pytest.approx(0.6 * doubts[1].value * 2 / 15, rel=1e-6)


def test_a_clock_that_does_not_begin_at_nothing():
    runs = both_ways()
    fit = ww.coast_down_fit(runs, **LIGHT, units=SI)
    late = ww.coast_down_fit(runs | {"time": [t + 500 for t in runs["time"]]}, **LIGHT, units=SI)
    assert late.drag_area.value == pytest.approx(fit.drag_area.value, rel=1e-6)
    assert late.start_speeds == pytest.approx((30, 30), rel=1e-6)


def test_just_enough_is():
    assert ww.coast_down_fit(one_way(25, 10), **LIGHT, units=SI).separated


def test_one_way_hides_a_grade_in_the_rolling_resistance():
    fit = ww.coast_down_fit(one_way(30, 6), **LIGHT, units=SI)
    assert fit.rolling_resistance.sigma == pytest.approx(0.001, rel=0.05)
    assert any("One way only" in one for one in fit.sentences)
    level = ww.coast_down_fit(one_way(30, 6), **LIGHT, units=SI, grade="0 ± 0.02 %")
    assert level.rolling_resistance.sigma == pytest.approx(0.0002, rel=0.05)


def test_the_force_is_better_known_than_either():
    fit = ww.coast_down_fit(both_ways(15, 6), **LIGHT, units=SI)
    assert fit.correlation < -0.9
    relative = fit.force.sigma / fit.force.value
    assert relative < fit.rolling_resistance.sigma / fit.rolling_resistance.value


def test_mass_and_air_scale_the_answer():
    doubtful = LIGHT | {"mass": "300 ± 6 kg", "air_density": "1.2 ± 0.012 kg/m3"}
    fit = ww.coast_down_fit(both_ways(), **doubtful, units=SI)
    assert fit.drag_area.sigma / fit.drag_area.value == pytest.approx(0.0224, rel=0.01)
    assert fit.force.sigma / fit.force.value == pytest.approx(0.02, rel=0.01)


def test_units_of_the_table():
    runs = both_ways()
    runs["speed"] = [3.6 * one for one in runs["speed"]]
    fit = ww.coast_down_fit(runs, **LIGHT, units={"time": "s", "speed": "km/h"})
    assert fit.drag_area.value == pytest.approx(0.45, rel=1e-6)
    frame = pd.DataFrame(runs)
    frame.attrs["units"] = {"time": "s", "speed": "km/h"}
    assert ww.coast_down_fit(frame, **LIGHT).drag_area == fit.drag_area


def test_a_file(tmp_path):
    path = tmp_path / "evening.csv"
    pd.DataFrame(both_ways()).to_csv(path, index=False)
    fit = ww.coast_down_fit(path, **LIGHT, units=SI)
    assert fit.rolling_resistance.value == pytest.approx(0.015, rel=1e-6)


def test_bad_cells_are_named_by_row_and_column():
    wrong = {"time": [0, 1, "x", 3], "speed": [20, -1, 15, float("nan")], "way": ["there"] * 4}
    found = refused(wrong)
    assert set(found) == {"row 3, column time", "row 2, column speed", "row 4, column speed"}


def test_bad_runs_are_named_by_row_and_column():
    wrong = {
        "run": ["a", "a", "a", "b", "b", "c"],
        "way": ["there", "there", "back", "back", "back", "there"],
        "time": [0, 2, 2, 0, 1, 0],
        "speed": [20, 19, 18, 15, 16, 12],
    }
    found = refused(wrong)
    assert "not later" in found["row 3, column time"]
    assert "began the other way" in found["row 3, column way"]
    assert "no slower" in found["row 5, column speed"]
    assert "one row" in found["row 6, column run"]


def test_a_way_that_is_none():
    found = refused({"time": [0, 1], "speed": [20, 19], "way": ["there", "forth"]})
    assert '"there" or "back"' in found["row 2, column way"]


@pytest.mark.parametrize(
    "columns, units, address",
    [
        ({"time": [0, 1]}, SI, "column speed"),
        ({"time": [0, 1], "speed": [2, 1]}, {"time": "s"}, "column speed"),
        ({"time": [0, 1], "speed": [2, 1]}, {"time": "s", "speed": "kg"}, "column speed"),
        ({"time": [0], "speed": [2]}, SI, "rows"),
    ],
)
def test_bad_columns(columns, units, address):
    assert address in refused(columns, units=units)


@pytest.mark.parametrize(
    "argument, value",
    [
        ("mass", 300),
        ("mass", "-3 kg"),
        ("air_density", "1.2"),
        ("headwind", "2 m"),
        ("grade", "1 K"),
    ],
)
def test_bad_arguments(argument, value):
    assert argument in refused(both_ways(), **{argument: value})


def test_text_and_document():
    fit = ww.coast_down_fit(both_ways(wind=1), **LIGHT, units=SI)
    text = fit.summary()
    assert "Drag area 0.45" in text
    assert "both ways" in text
    document = json.loads(json.dumps(fit.to_dict()))
    assert document["drag_area"]["value"] == pytest.approx(0.45)
    assert document["names"] == ["drag_area", "rolling_resistance", "headwind", "grade"]
    assert len(document["covariance"]) == 4
    assert document["units"]["drag_area"] == "m2"


def test_a_slope_that_holds_the_speed_is_no_answer():
    car = ww.loads(json.dumps(CURVE))
    with pytest.raises(ww.NoAnswer, match="never slows down"):
        car.coast_down("100 km/h", grade="-10 %")


@pytest.mark.parametrize(
    "fast, slow", [("50 km/h", "60 km/h"), ("50 km/h", "0 km/h"), (50, "10 km/h")]
)
def test_bad_speeds(fast, slow):
    with pytest.raises(ww.ScenarioError):
        ww.loads(json.dumps(CURVE)).coast_down(fast, slow)


def test_a_leg_that_coasts_has_the_driveline():
    legs = [
        {"kind": "full_throttle", "to_speed": "81 km/h"},
        {"kind": "coast", "to_speed": "40 km/h"},
    ]
    car = ww.load("scenarios/airfield_cyclecar.json")
    car = car.restated(car.document() | {"outings": [{"id": "out", "legs": legs}]})
    alone = car.coast_down("80 km/h", "40 km/h")["time"].iloc[-1]

    def leg(car):
        drive = car.drive(progress=False)
        its = [at for at, phase in enumerate(drive.phases) if phase == "coasting"]
        speed, time = -drive["road/speed"][its], drive["time"][its]
        return float(np.interp(-40 / 3.6, speed, time) - np.interp(-80 / 3.6, speed, time))

    assert 0.85 * alone < leg(car) < 0.99 * alone
    free = {f"driveline/{id}/drag_torque": 0.0 for id in ("gearbox", "final_chain")}
    free |= {"driveline/gearbox/churning_torque": 0.0}
    assert leg(car.set(free)) == pytest.approx(alone, rel=0.005)
    assert "drags along what lies behind the clutch" in " ".join(
        Rolling(car.name, "metric", coast_down(car, "80 km/h")).summary().split()
    )
