"""Answers as JSON: one document that every reader can read."""

import json

import pytest

from windwall.report import documents


def strict(text):
    def refuse(name):
        raise AssertionError(f"{name} is no JSON")

    return json.loads(text, parse_constant=refuse)


def test_a_speed_is_one_document(car, best):
    made = strict(documents.to_text(best.to_dict(car.diagnose())))
    assert made["speed"] == best.speed
    assert made["run_up"]["speed"] == best.run_up_speed
    assert made["shaft"]["indicated"] == pytest.approx(
        sum(watts for name, watts in made["shaft"].items() if name != "indicated")
    )
    assert made["knock"]["detonation"] in {"likely", "marginal", "unlikely"}
    assert made["units"]["point/manifold/boost"] == "Pa"
    assert {one["key"] for one in made["observed"]} == {"speed", "gear", "boost"}


def test_no_answer_is_a_document_too(stuck):
    made = strict(documents.to_text(stuck.top_speed().to_dict()))
    assert made["answered"] is False
    assert made["sentence"]
    assert "speed" not in made


def test_a_point_is_one_document(car):
    made = strict(documents.to_text(car.operating_point("4200 rpm").to_dict()))
    assert made["point"]["engine"]["torque"] > 0
    assert made["units"]["point/engine/torque"] == "N m"


def test_a_ranking_is_one_document(ranking):
    made = strict(documents.to_text(ranking.to_dict()))
    assert [one["id"] for one in made["upgrades"]] == ["intercooler", "small_pulley", "fairing"]
    assert made["target"]["upgrades"] == list(ranking.target.upgrades)
    assert made["target"]["choices"] == {}
    assert len(made["sets"]) == 8
    # An upgrade outside the target has no share: nothing, not a number that is none.
    assert all(one["in_target"] or one["share"] == [None, None, None] for one in made["upgrades"])


def test_a_check_is_the_document_that_is_promised(car):
    made = strict(documents.to_text(documents.check_document(car)))
    assert made["problems"] == []
    assert all(set(one) == {"address", "message"} for one in made["cautions"])


def test_numbers_that_are_none_become_null():
    text = documents.to_text({"a": float("nan"), "b": [float("inf"), 1.0], "c": {"d": (2.0,)}})
    assert strict(text) == {"a": None, "b": [None, 1.0], "c": {"d": [2.0]}}


def test_without_a_diagnosis_nothing_is_said_of_observations(best):
    assert best.to_dict()["observed"] is None
