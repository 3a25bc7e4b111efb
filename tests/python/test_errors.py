"""What goes wrong is said in words, with its place."""

import pickle

import pytest

import windwall as ww
from windwall.errors import Problem


def test_one_problem_is_one_line():
    wrong = ww.ScenarioError([Problem("body/mass", 4, 12, "348 what?")], "car.json")
    assert str(wrong) == "car.json:4:12 body/mass: 348 what?"


def test_several_problems_are_counted_and_listed():
    wrong = ww.ScenarioError([Problem("a", 0, 0, "one"), Problem("b", 0, 0, "two")])
    assert str(wrong).splitlines() == ["2 problems", "  a: one", "  b: two"]


def test_plain_tuples_become_problems():
    wrong = ww.ScenarioError([("a", 1, 2, "one")])
    assert wrong.problems[0].line == 1
    assert isinstance(wrong, ValueError)


@pytest.mark.parametrize(
    "error",
    [
        ww.ScenarioError([Problem("a", 1, 2, "one")], "car.json"),
        ww.NoAnswer("No gear moves it.", "no_balance"),
    ],
)
def test_errors_survive_a_pickle(error):
    again = pickle.loads(pickle.dumps(error))
    assert type(again) is type(error)
    assert str(again) == str(error)
    assert vars(again) == vars(error)


def test_all_problems_of_a_file_are_reported_at_once(document):
    import json

    document["body"]["mass"] = "348 m"
    document["engine"]["bore"] = "80"
    document["tyres"]["sise"] = "4.40-10"
    with pytest.raises(ww.ScenarioError) as caught:
        ww.loads(json.dumps(document, indent=1), "car.json")
    addresses = {problem.address for problem in caught.value.problems}
    assert addresses == {"body/mass", "engine/bore", "tyres/sise"}
    assert all(problem.line and problem.column for problem in caught.value.problems)
