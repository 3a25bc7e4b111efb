"""A set that meets the goal as stated is told with how many such vehicles reach it."""

import json

import numpy as np
import pytest

import windwall as ww
from python.samples import DOCUMENT
from windwall.study.challenge import challenge
from windwall.study.draws import FEWEST
from windwall.study.goal_chances import goal_chances


@pytest.fixture(scope="module")
def car():
    return ww.loads(json.dumps(DOCUMENT))


@pytest.fixture(scope="module")
def ranking(car):
    return ww.rank(car, progress=False)


def test_chances_are_those_of_the_vehicle_with_the_set_fitted(car, ranking):
    found = goal_chances(car, ranking)
    assert [one.which for one in found] == list(ranking.judged)
    for one in found:
        fitted = car.install(ranking.judged[one.which]).drawn_speed(FEWEST, progress=False)
        known = fitted.speeds[np.isfinite(fitted.speeds)]
        goal = car.get("goal/speed")
        assert one.chance == pytest.approx(np.mean(known >= goal))
        assert one.middle == pytest.approx(np.median(known))


def test_they_stand_beside_the_verdict_and_in_the_document(car, ranking):
    held = challenge(car, ranking)._replace(reached=goal_chances(car, ranking))
    assert held.reached
    said = " ".join(ranking.summary(held).split())
    plain = " ".join(ranking.summary(challenge(car, ranking)).split())
    assert said.count("vehicles described like this one reach it with that set") == len(
        held.reached
    )
    assert "reach it with that set" not in plain
    made = ranking.to_dict(held)["reached"]
    assert [one["which"] for one in made] == list(ranking.judged)


def test_without_a_goal_nothing_is_counted(car):
    free = car.document()
    free["goal"].pop("speed")
    free = ww.loads(json.dumps(free))
    assert goal_chances(free, ww.rank(free, progress=False)) == ()
