"""An answer of `windwall new` that can mean one thing alone is taken as that, and said."""

import pytest

from python.new_answers import ANSWERS
from windwall.cli.new import accept
from windwall.cli.new_asked import explained
from windwall.cli.new_mended import mendings, unit_of
from windwall.cli.new_questions import QUESTIONS
from windwall.errors import ScenarioError

BY_NAME = {question.name: question for question in QUESTIONS}


def meant(name, text, system="metric"):
    """What is taken of an answer that is refused as it stands."""
    before = {}
    for question in QUESTIONS[: QUESTIONS.index(BY_NAME[name])]:
        before |= accept(question, ANSWERS.get(question.name, ""), before)
    with pytest.raises(ScenarioError):
        accept(BY_NAME[name], text, before)
    found = []
    for one in mendings(BY_NAME[name], text, system):
        try:
            accept(BY_NAME[name], one, before)
            found.append(one)
        except ScenarioError:
            pass
    return found


ONE_READING = [
    ("blower_ratio", "1,4", "1.4"),
    ("rev_limit", "8,000 rpm", "8000 rpm"),
    ("rev_limit", "6500", "6500 rpm"),
    ("bore", "76,5", "76.5 mm"),
    ("mass", "250kg +- 10", "250 +/- 10 kg"),
    ("mass", "250kg +/- 10kg", "250 +/- 10 kg"),
    ("mass", "250 kg +- 5 %", "250 kg +/- 5 %"),
    ("temperature", "20C", "20 degC"),
    ("temperature", "68°f", "68 degF"),
    ("rated_power", "14,5 kW at 3600", "14.5 kW at 3600 rpm"),
    ("seen_gear", "4th", "4"),
    ("drag_area", "1,1 m x 1,25 m", "1.1 m x 1.25 m"),
]


@pytest.mark.parametrize(("name", "text", "taken"), ONE_READING)
def test_the_one_thing_that_an_answer_can_mean_is_found(name, text, taken):
    assert meant(name, text) == [taken]


def test_what_may_be_of_either_system_is_both_that_of_the_talk_first():
    assert meant("mass", "250") == ["250 kg", "250 lb"]
    assert meant("mass", "250", "us") == ["250 lb", "250 kg"]


def test_what_can_mean_nothing_stays_refused():
    assert meant("throttle", "7000") == []
    assert meant("mass", "heavy") == []


def test_a_comma_of_a_list_stays_one():
    assert list(mendings(BY_NAME["gears"], "3,2", "metric")) == []
    assert list(mendings(BY_NAME["title"], "3,2", "metric")) == []
    assert accept(BY_NAME["gears"], "2,5 2,0 1,5 1,1", {}) == {
        "driveline/gearbox/ratios": [2.5, 2.0, 1.5, 1.1]
    }


def test_an_example_ends_in_its_unit():
    units = [unit_of(BY_NAME[name].example) for name in ("mass", "ethanol", "cylinders", "primary")]
    assert units == ["kg", "%", "", ""]


def test_no_share_is_spoken_of_where_none_is_asked_for():
    for name in ("compression_ratio", "fuel", "final_drive", "cylinders"):
        assert "%" not in " ".join(explained(BY_NAME[name]))
    assert "%" in " ".join(explained(BY_NAME["ethanol"]))
