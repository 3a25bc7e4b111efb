"""A builder reads of gears only where there are several, and of the belt where there is one."""

from pathlib import Path

import matplotlib as mpl
import pytest

import windwall as ww

mpl.use("Agg")
BOX = {"driveline/box/ratios": [2.0]}


@pytest.fixture(scope="module")
def belt():
    return ww.load(Path(__file__).parents[2] / "scenarios/lakebed_streamliner.json")


def speed_lines(scenario):
    text = repr(scenario.top_speed())
    return [line for line in text.splitlines() if "balance speed" in line or "from rest" in line]


def test_one_ratio_has_no_gear(car):
    single = car.set(BOX)
    assert " gear" not in "".join(speed_lines(single))
    assert "gear" not in single.top_speed().sentence
    assert "no time lost in shifts" not in repr(single.top_speed())
    assert single.top_speed().to_dict()["point"]["road"]["gear"] == 1
    assert ww.plot.force_against_speed(single).lines[0].get_label() == "thrust"


def test_of_a_belt_it_is_said_where_it_stands(belt):
    run, balance = speed_lines(belt)
    assert " gear" not in run
    assert "with the belt at 1.4" in balance
    assert "gear" not in belt.top_speed().next_limit


def test_the_overall_ratio_is_a_result(belt, car):
    """Crank turns for one of the wheels, by gear and teeth."""
    best = car.top_speed()
    assert best.point.units()["road/ratio"] == "1"
    gear = car.get("driveline/box/ratios")[best.gear - 1]
    assert best.point.road.ratio == pytest.approx(gear * 42 / 15, rel=1e-12)
    assert 0.75 * 52 / 17 < belt.top_speed().point.road.ratio < 2.9 * 52 / 17


def test_the_gear_to_start_in_is_told(car):
    best = car.top_speed()
    assert best.run_up.start_gear == best.to_dict()["run_up"]["start_gear"] == 1
    assert "gear to start in" in repr(best)
    slippery = car.set({"tyres/grip": 0.2})
    assert slippery.top_speed().run_up.start_gear > 1
