"""Vehicles that one description allows, against the same vehicles written out one by one."""

from collections import Counter

import numpy as np
import pytest

import windwall as ww
from windwall.errors import ScenarioError
from windwall.study.compare import at_spark
from windwall.study.worlds import GOAL_SPEED, Situation, uncertain, world_answers, world_speeds

CAR = "scenarios/airfield_cyclecar.json"
SETS = [[], ["cooler"], ["gearing", "fairing"], ["cooler", "small_pulley"]]


@pytest.fixture(scope="module")
def car():
    return ww.load(CAR)


@pytest.fixture(scope="module")
def known(car):
    return uncertain(car)


@pytest.fixture(scope="module")
def worlds(known):
    moves = np.random.default_rng(5).standard_normal((6, len(known.address)))
    return np.clip(known.value + known.sigma * moves, known.low, known.high)


def place(known, address):
    return known.address.index(address)


def test_the_description_itself_is_a_world(car, known):
    found = world_speeds(car, known.value[None], SETS)
    alone = [car.install(*one).brief_top_speed().goal_speed if one else
             car.brief_top_speed().goal_speed for one in SETS]  # fmt: skip
    assert found.speed[0] == pytest.approx(alone, rel=1e-9)
    assert set(found.end.ravel()) == {"answered"}


def test_a_world_is_the_vehicle_with_these_values(car, known):
    values = known.value.copy()
    changes = {"body/mass": 341.0, "body/drag_area": 0.66, "day/temperature": 300.0}
    for address, value in changes.items():
        values[place(known, address)] = value
    found = world_speeds(car, values[None], [[], ["cooler"]])
    moved = car.set({key: ww.si(value) for key, value in changes.items()})
    for speed, one in zip(found.speed[0], (moved, moved.install("cooler")), strict=True):
        assert speed == pytest.approx(one.brief_top_speed().goal_speed, rel=1e-9)


def test_what_an_upgrade_brings_is_drawn_too(car, known):
    values = np.array([known.value, known.value])
    values[1, place(known, "upgrades/fairing/scale/body/drag_area")] = 0.80
    found = world_speeds(car, values, [[], ["fairing"]]).speed
    assert found[0, 0] == found[1, 0]
    assert found[1, 1] > found[0, 1] > found[0, 0]


def test_neither_threads_nor_company_change_a_bit(car, worlds):
    one = world_speeds(car, worlds, SETS, threads=1)
    two = world_speeds(car, worlds, SETS, threads=2)
    last = world_speeds(car, worlds[-1:], SETS[-1:])
    np.testing.assert_array_equal(one.speed, two.speed)
    assert one.speed[-1, -1] == last.speed[0, 0]


def test_a_world_that_breaks_a_rule_says_so(car):
    thick = car.set({"charge_path/throttle/shaft": "8 ± 2 mm"})
    known = uncertain(thick)
    values = known.value.copy()
    values[place(known, "charge_path/throttle/shaft")] = 0.031  # in a bore of 30 mm
    found = world_speeds(thick, values[None])
    assert Counter(found.end.ravel()) == {"broken_rule": 1}
    assert np.isnan(found.speed).all()


def test_a_set_without_what_it_requires_is_not_installable(car, known):
    found = world_speeds(car, known.value[None], [["cooler_duct"]])
    assert found.end[0, 0] == "not_installable"
    assert np.isnan(found.speed[0, 0])


def test_the_knock_anchor_is_drawn_even_where_it_is_stated_exactly(car):
    stated = car.set({"engine/knock_anchor/octane_number": 85.0})
    known = uncertain(stated)
    assert known.sigma[place(known, "engine/knock_anchor/octane_number")] == stated.knock_sigma > 0


def test_a_stop_leaves_what_was_not_reached(car, worlds):
    many = np.repeat(worlds, 40, axis=0)
    found = world_speeds(car, many, SETS, progress=lambda done, total: False)
    assert "not_reached" in set(found.end.ravel())
    assert np.isnan(found.speed[found.end == "not_reached"]).all()


def test_worlds_of_another_size_are_refused(car, known):
    with pytest.raises(ScenarioError, match="one for each number"):
        world_speeds(car, known.value[None, 1:])
    with pytest.raises(ScenarioError, match="there is no upgrade"):
        world_speeds(car, known.value[None], [["coolr"]])


READ = ("manifold/boost", "manifold/temperature", "knock/margin", "engine/torque")


@pytest.mark.parametrize("retard", [None, 0.2])
def test_held_is_the_operating_point(car, known, retard):
    asked = Situation(READ, engine_speed=420.0, road_speed=25.0, retard=retard)
    found = world_answers(car, known.value[None], [asked])
    point = at_spark(car, retard).operating_point(ww.si(420.0), road_speed=ww.si(25.0)).point
    assert found.answers[0] == pytest.approx([point[key] for key in READ], rel=1e-9)


def test_the_end_of_a_pull_is_the_top_speed(car, known):
    found = world_answers(car, known.value[None], [Situation((GOAL_SPEED, *READ))])
    speed = car.brief_top_speed()
    expected = [speed.goal_speed, *(speed.point[key] for key in READ)]
    assert found.answers[0] == pytest.approx(expected, rel=1e-9)


def test_in_a_gear_the_road_makes_the_engine_speed(car, known):
    keys = ("road/speed", "engine/speed", "manifold/boost")
    by_road = world_answers(car, known.value[None], [Situation(keys, gear=3, road_speed=25.0)])
    assert by_road.answers[0, 0] == pytest.approx(25.0, rel=1e-8)
    turning = by_road.answers[0, 1]
    by_engine = world_answers(
        car, known.value[None], [Situation(keys, gear=3, engine_speed=turning)]
    )
    assert by_engine.answers[0] == pytest.approx(by_road.answers[0], rel=1e-7)


def test_what_is_not_there_is_not_a_number(car, known):
    asked = [Situation(("nothing/here", GOAL_SPEED), engine_speed=400.0), Situation((), gear=9)]
    found = world_answers(
        car, known.value[None], [*asked, Situation(("road/speed",), gear=9, road_speed=20.0)]
    )
    assert np.isnan(found.answers).all()
    assert found.status[0, 2] == "out_of_range"
