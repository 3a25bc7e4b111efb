"""What the fastest set lacks to the goal; at the rev limit neither power nor less drag."""

import copy
import json

import pytest

import windwall as ww
from python.samples import DOCUMENT
from windwall.report.text.rank_doubts import missing
from windwall.report.wording.ranking import capped_at
from windwall.study.goal_chances import judge

TEETH = "driveline/sprockets/teeth_rear"


def geared(goal):
    """Geared so short that the engine ends at its limit with thrust to spare."""
    document = copy.deepcopy(DOCUMENT)
    document.pop("upgrades")
    document["engine"]["rev_limit"] = "5000 rpm"
    document["driveline"][1]["teeth_rear"] = 60
    document["goal"] = {"speed": goal}
    return ww.loads(json.dumps(document))


@pytest.fixture(scope="module")
def cap():
    return geared("120 km/h").top_speed().speed * 3.6


def ranked(goal):
    car = geared(f"{goal} km/h")
    ranking = ww.rank(car, progress=False)
    return car, ranking, judge(car, ranking)


def test_the_gearing_that_reaches_it_is_named_and_does(cap):
    goal = cap + 1
    car, ranking, held = ranked(goal)
    assert capped_at(ranking) * 3.6 == pytest.approx(cap)
    said = missing(ranking, held)
    assert f"capped by the rev limit, at {cap:.1f} km/h" in said
    assert "kW" not in said
    assert "times its power" not in said
    longer = held.longer
    assert (longer.address, longer.now, longer.value) == (TEETH, 60, 59)
    assert "teeth_rear of 59 instead of 60" in said
    speed = car.set({TEETH: 59}).top_speed().goal_speed
    assert speed * 3.6 >= goal
    assert longer.speed == pytest.approx(speed, rel=1e-9)
    made = ranking.to_dict(held)
    assert made["longer_gearing"]["value"] == 59
    assert made["units"]["longer_gearing/speed"] == "m/s"


def test_it_is_said_where_no_gearing_does(cap):
    _, ranking, held = ranked(cap * 1.9)
    assert held.longer.value is None
    assert "No longer gearing reaches it either" in missing(ranking, held)


def test_without_solving_the_least_that_is_needed_is_said(cap):
    _, ranking, _ = ranked(cap * 1.02)
    assert "at least 2.0 % longer" in missing(ranking, None)


def test_a_goal_beyond_thrust_is_a_matter_of_power_and_drag():
    document = copy.deepcopy(DOCUMENT)
    document.pop("upgrades")
    document["goal"]["speed"] = "165 km/h"
    ranking = ww.rank(ww.loads(json.dumps(document)), progress=False)
    assert capped_at(ranking) is None
    assert "kW more at the flywheel" in missing(ranking, None)


def test_where_neither_helps_it_is_said_that_both_were_tried():
    """Up to its rev limit the gearing makes less than the goal, and the thrust not even that."""
    document = copy.deepcopy(DOCUMENT)
    document.pop("upgrades")
    document["goal"] = {"speed": "250 km/h"}
    ranking = ww.rank(ww.loads(json.dumps(document)), progress=False)
    assert capped_at(ranking) is None
    said = missing(ranking, None)
    assert "even with three times its power, and even with a fifth of its drag area" in said
    assert "still needs" not in said
