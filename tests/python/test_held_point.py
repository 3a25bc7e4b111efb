"""The engine held at one condition."""

import pickle

import pytest

import windwall as ww
from windwall.results.operating_point import OperatingPoint


def test_the_rows_are_its_attributes(car):
    point = car.operating_point("4200 rpm")
    assert point.status in {"solved", "knock_limited"}
    assert point.manifold.boost == point.point.manifold.boost
    assert point.engine.power == pytest.approx(point.engine.torque * point.engine.speed)
    assert "manifold" in dir(point)
    with pytest.raises(AttributeError):
        _ = point.manyfold


def test_less_opening_is_less_torque(car):
    torques = [car.operating_point("4200 rpm", opening=o).engine.torque for o in (0.2, 0.4, 1.0)]
    assert torques == sorted(torques)


def test_it_has_no_road_and_says_so(car):
    assert car.operating_point("4200 rpm").road is None


def test_it_prints_what_was_asked_first(car):
    text = repr(car.operating_point("4200 rpm", road_speed="90 km/h"))
    assert text.startswith("Garden roadster, blown twin\nAsked: the engine held at 4200 rpm")
    assert "90.0 km/h" in text
    assert "Care" in text
    assert text.isascii()


def test_it_pickles(car):
    point = car.operating_point("4200 rpm")
    assert pickle.loads(pickle.dumps(point)) == point


def test_without_an_answer_every_row_raises(car):
    point = car.operating_point("4200 rpm")
    ending = point.numbers["ending"] | {"answered": False, "status": "no_survivable_state"}
    numbers = point.numbers | {"ending": ending, "point": None}
    point = OperatingPoint(numbers, point.scenario_info)
    with pytest.raises(ww.NoAnswer):
        _ = point.manifold
    assert "\nNo answer\n" in repr(point)


def test_a_shut_throttle_can_be_asked_for(car):
    shut = car.operating_point("2000 rpm", opening=0)
    assert shut.opening == 0
    assert shut.answered
    assert shut.engine.torque < car.operating_point("2000 rpm", opening=0.1).engine.torque


def test_an_answer_knows_its_opening_and_what_was_asked(car):
    for asked in (0.3, 1.0):
        point = car.operating_point("4200 rpm", opening=asked)
        assert point.opening == asked
        held_back = point.status == "knock_limited"
        assert (point.engine.opening < asked) == held_back


def test_the_seals_of_a_throttled_blower_are_warned_of(car):
    lifted = car.operating_point("4200 rpm", opening=0.2)
    (seals,) = [one for one in lifted.cautions if one.about == "inlet_depression"]
    assert seals.found > 30e3
    wide = car.operating_point("4200 rpm")
    assert not [one for one in wide.cautions if one.about == "inlet_depression"]


def test_a_spark_may_be_one_stated_value(car):
    late = car.set({"engine/spark/retard": "6 deg", "engine/spark/policy": "as_given"})
    for speed in ("2000 rpm", "5000 rpm"):
        assert late.operating_point(speed).knock.retard == pytest.approx(0.10472, abs=1e-5)
    with pytest.raises(ww.ScenarioError):
        car.set({"engine/spark/policy": "as_given"})
