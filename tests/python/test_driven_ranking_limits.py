"""Driven rankings of a vehicle that passes a limit as it is: what they must not recommend."""

import json

import pytest

import windwall as ww
from python.samples import CURVE

WHY = "the hub is rated for it"
LIMITS = {"road/speed": {"max": "100 km/h", "why": WHY}}
DIET = {"id": "diet", "title": "diet", "cost": "40 EUR", "add": {"body/mass": "-60 kg"}}
SAIL = {"id": "sail", "title": "sail", "cost": "10 EUR", "set": {"body/drag_area": "3 m2"}}


def vehicle(*menu, **goal):
    document = {**CURVE, "upgrades": list(menu), "limits": LIMITS, "goal": goal}
    return ww.loads(json.dumps(document))


def said(answer):
    return " ".join(answer.summary().split())


def test_where_everything_passes_a_limit_nothing_is_called_best():
    ranking = ww.rank(vehicle(DIET, time="60 s", over="400 m"), by="goal")
    assert ranking.stock.merit < 60
    assert (ranking.best, ranking.cheapest_for_goal) == (None, None)
    assert (ranking.best_for_price, ranking.left_aside) == ((), 1)
    assert "Nothing on the menu is better" not in said(ranking)
    assert "most cheaply" not in said(ranking)
    assert "There is no best" in said(ranking)
    assert "The goal of 60 s is reached as it is" in said(ranking)
    assert "but past limits" in said(ranking)
    assert "already passes: road/speed (the hub is rated for it)" in said(ranking)
    assert "1 set. `windwall rank FILE` says which limits" in said(ranking)
    assert ranking.to_dict()["passed"] == [{"address": "road/speed", "why": WHY}]


def test_the_plain_ranking_says_the_same_of_it():
    plain = ww.rank(vehicle(DIET), progress=False)
    driven = ww.rank(vehicle(DIET), by="time over 400 m")
    (already,) = [one for one in plain.sentences if "already passes" in one]
    assert already in driven.sentences
    assert plain.target is None


def test_a_set_that_holds_the_limit_is_best_though_it_is_slower():
    ranking = ww.rank(vehicle(DIET, SAIL), by="time over 400 m")
    assert ranking.best.fitted.upgrades == ("diet", "sail")
    assert ranking.best.merit > ranking.stock.merit
    assert [one.fitted.name for one in ranking.best_for_price] == ["sail", "diet + sail"]
    assert ranking.pruning.candidates == ranking.pruning.driven
    assert "more than as it is" in said(ranking)


@pytest.mark.parametrize("menu", [(), (DIET,)])
def test_a_vehicle_that_holds_its_limits_may_be_best_as_it_is(menu):
    car = vehicle(*menu).set({"body/drag_area": "3 m2"})
    ranking = ww.rank(car, by="time over 400 m")
    assert (ranking.passed, ranking.left_aside) == ((), 0)
    assert ranking.best is not None
