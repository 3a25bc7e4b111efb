"""Limits that a drive passes: where first, how far and for how long."""

import numpy as np
import pytest

from python.two_runs import RUNS, scenario
from windwall.report.wording.drive import beyond_for
from windwall.results.drive_summary import passed


@pytest.fixture(scope="module")
def found():
    limit = {"road/speed": {"max": "60 km/h", "why": "the spokes"}}
    return scenario(RUNS, limits=limit).drive(progress=False)


@pytest.fixture(scope="module")
def speed(found):
    (speed,) = (one for one in found.passed if one.address == "road/speed")
    return speed


def test_a_limit_is_told_where_it_is_first_passed(found, speed):
    assert speed.road_speed == pytest.approx(60 / 3.6, rel=0.05)
    assert speed.road_speed > 60 / 3.6
    assert speed.worst == found["road/speed"].max()
    assert "the spokes" in found.text()


def test_what_is_within_its_limits_or_nowhere_is_passed_by_nothing():
    nan = float("nan")
    columns = {
        "time": np.array([0.0, 1.0, 2.0]),
        "distance": np.array([0.0, 1.0, 2.0]),
        "road/speed": np.array([0.0, 2.0, 1.0]),
        "x": np.array([nan, 5.0, 7.0]),
    }
    limit = {"address": "x", "max": None, "min": None, "why": "so"}
    assert passed(limit | {"max": 7.0}, columns) is None
    assert passed(limit | {"address": "y", "max": 0.0}, columns) is None
    under = passed(limit | {"min": 6.0}, columns)
    assert (under["time"], under["worst"]) == (1.0, 5.0)


def test_how_long_a_limit_is_passed_goes_by_straight_lines():
    """Up through it half way, down through it after a quarter; nothing where it is not known."""
    nan = float("nan")
    columns = {
        "time": np.array([0.0, 1.0, 3.0, 7.0, 8.0]),
        "distance": np.zeros(5),
        "road/speed": np.zeros(5),
        "x": np.array([4.0, 6.0, 6.0, 2.0, nan]),
    }
    limit = {"address": "x", "max": 5.0, "min": None, "why": "so"}
    assert passed(limit, columns)["lasting"] == pytest.approx(0.5 + 2 + 1)
    columns["x"][1:3] = nan
    columns["x"][4] = 5.5
    assert passed(limit, columns)["lasting"] == pytest.approx(0.5 / 3.5)


@pytest.mark.parametrize(
    "lasting, said",
    [
        (0.0, "for an instant, under 0.1 s in all"),
        (0.6, "for an instant, 0.6 s in all"),
        (3.0, "beyond it for 3.0 s in all"),
        (600.0, "beyond it for 10 min in all"),
    ],
)
def test_a_limit_passed_for_an_instant_is_called_so(lasting, said):
    assert said in beyond_for(lasting)


def test_for_how_long_a_limit_is_passed_is_told(found, speed):
    beyond = np.diff(found["time"])[found["road/speed"][1:] > 60 / 3.6].sum()
    assert speed.lasting == pytest.approx(beyond, rel=0.1)
    assert beyond_for(speed.lasting) in " ".join(found.text().split())
    (told,) = (one for one in found.to_dict()["passed"] if one["address"] == "road/speed")
    assert told["lasting"] == speed.lasting
