"""The numbers of the scenarios are those that were kept. Our own: a guard, no proof of anything."""

import pytest

from regression.compare_answers import (
    SCENARIOS,
    differences,
    kept_answers,
    rank_numbers,
    speed_numbers,
)
from regression.stored import stored


@pytest.mark.parametrize("name", SCENARIOS)
def test_a_top_speed_is_what_it_was(name, today):
    now = speed_numbers(today(name).speed, today(name).diagnosis)
    assert differences(kept_answers(name)["speed"], now) == []


@pytest.mark.timeout(400)  # the one ranking of the demo in all the tests
@pytest.mark.parametrize("name", SCENARIOS)
def test_a_ranking_is_what_it_was(name, today):
    assert differences(kept_answers(name)["rank"], rank_numbers(today(name).ranking)) == []


@pytest.mark.parametrize("name", SCENARIOS)
def test_texts_are_made_of_these_numbers(name):
    kept = kept_answers(name)
    answer, diagnosis = stored(f"speed_{name}")
    assert differences(kept["speed"], speed_numbers(answer, diagnosis)) == []
    ranking, _ = stored(f"rank_{name}")
    for number, value in rank_numbers(ranking).items():
        assert kept["rank"][number] == pytest.approx(value, rel=1e-9, abs=1e-9)


def test_a_difference_is_seen():
    assert differences({"a": 1.0, "b": 2.0}, {"a": 1.0, "b": 2.0 + 1e-8}) == [
        "b: 2.0 -> 2.00000001"
    ]
    assert len(differences({"a": 1.0}, {"b": 1.0})) == 2
