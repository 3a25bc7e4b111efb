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
    assert "No answer (no_survivable_state)" in repr(point)
