"""The questions of `windwall new` as a talk: back, explained, in other words, and doubted."""

import re

import pytest

from python.new_answers import ANSWERS
from windwall.cli import new_talk
from windwall.cli.new import accept
from windwall.cli.new_asked import asked, example_in, explained
from windwall.cli.new_doubts import doubts, told
from windwall.cli.new_questions import QUESTIONS, example, readings, trial
from windwall.cli.new_talk import LeftEarly, Talk
from windwall.cli.new_upgrades import MENU
from windwall.errors import ScenarioError
from windwall.scenario.data import ScenarioData

BY_NAME = {question.name: question for question in QUESTIONS}


def meant(changes):
    """What these answers mean, each after those before it."""
    values = {}
    for question in QUESTIONS:
        values |= accept(question, (ANSWERS | changes).get(question.name, ""), values)
    return values


def refused(name, text):
    with pytest.raises(ScenarioError) as caught:
        accept(BY_NAME[name], text, {})
    return str(caught.value)


@pytest.fixture
def talk(monkeypatch):
    """A talk in which these lines are typed, up to where they end."""

    def run(*lines, kept=(), stated=()):
        left = iter(lines)

        def typed():
            try:
                return next(left)
            except StopIteration:
                raise LeftEarly from None

        monkeypatch.setattr(new_talk, "typed", typed)
        made = Talk(accept, dict(kept), dict(stated), "metric")
        with pytest.raises(LeftEarly):
            made.values()
        return made

    return run


def test_back_returns_and_keeps_what_was_answered(talk, capsys):
    made = talk("Wasp", "us", "back", "", "2")
    assert made.answers == {"title": "Wasp", "units": "us", "cylinders": "2"}
    assert 'So far "us"' in capsys.readouterr().out
    made = talk("Wasp", "us", "back", "back", "Bee", "metric")
    assert made.answers == {"title": "Bee", "units": "metric"}
    made = talk("back", "Wasp", "back", "-")
    assert made.answers == {"title": ""}
    assert "This is the first question." in capsys.readouterr().out


def test_kept_answers_are_not_asked_again(talk, capsys):
    made = talk("2", kept={"title": "Wasp", "units": ""})
    assert made.meant["cylinders"] == {"engine/cylinders": 2}
    out = capsys.readouterr().out
    assert "title:" not in out
    assert "cylinders:" in out


def test_a_kept_answer_that_no_longer_holds_is_asked(talk, capsys):
    talk(kept={"title": "Wasp", "units": "nonsense"})
    assert "units:" in capsys.readouterr().out


def test_units_that_are_answered_hold_from_there_on(talk, capsys):
    talk("", "us", "2")
    assert "such as 38 in3" in capsys.readouterr().out
    talk("", "us", "back", "-", "2")
    assert capsys.readouterr().out.rindex("624 cm3") > 0


def test_the_talk_says_how_far_it_has_come(talk, capsys):
    talk("", "", "2")
    out = " ".join(capsys.readouterr().out.split())
    assert f"(1 of {len(QUESTIONS)})" in out
    assert f"(4 of {len(QUESTIONS)})" in out
    answers = {name: text for name, text in ANSWERS.items() if not name.startswith("blower")}
    talk(kept={one.name: answers.get(one.name, "") for one in QUESTIONS[:-4]})
    apply = sum(not one.after or one.after == "seen_speed" for one in QUESTIONS)
    assert f"({apply} of {apply + 3})" in " ".join(capsys.readouterr().out.split())


def test_end_leaves_the_rest_at_its_usual_values_and_asks_what_is_needed(talk, capsys):
    made = talk("end", "2", "76 mm", "68.8 mm", "8.0", "5000 rpm")
    asked_for = [line.partition(":")[0] for line in capsys.readouterr().out.splitlines()
                 if line.partition(":")[0] in BY_NAME]  # fmt: skip
    assert asked_for == [
        "title", "cylinders", "bore", "stroke", "compression_ratio", "rev_limit", "throttle",
    ]  # fmt: skip
    assert made.answers["duty"] == ""
    again = talk("end", "back", "back", "Wasp", "us")
    assert again.answers == {"title": "Wasp", "units": "us"}


def test_a_question_mark_explains_and_takes_nothing(talk, capsys):
    made = talk("?")
    assert made.answers == {}
    assert "In the file it stands at title." in capsys.readouterr().out
    words = " ".join(explained(BY_NAME["mass"]))
    assert "A mass in g, kg, lb" in words
    assert "From 20 to 5000 kg." in words
    assert "Usually 95" in " ".join(explained(BY_NAME["fuel"]))


def test_what_is_taken_for_something_is_said_and_what_may_be_two_things_is_offered(talk, capsys):
    before = {one.name: ANSWERS.get(one.name, "") for one in QUESTIONS}
    kept = dict(list(before.items())[: list(before).index("mass")])
    made = talk("250", "?", "", kept=kept)
    assert made.answers["mass"] == "250 kg"
    assert 'Did you mean "250 kg"? An empty answer takes it.' in capsys.readouterr().out
    made = talk("250kg +- 10", kept=kept)
    assert made.answers["mass"] == "250 +/- 10 kg"
    assert 'Taken as "250 +/- 10 kg".' in capsys.readouterr().out
    made = talk("250", "heavy", "", kept=kept)  # nothing is left of an offer behind another answer
    assert "mass" not in made.answers


def test_every_question_is_explained_in_whole_sentences():
    for question in QUESTIONS:
        lines = [*explained(question), asked(question), asked(question, "us")]
        assert all(line.endswith(".") for line in lines), question.name
        assert not any(" ." in line or ".." in line for line in lines), question.name


def test_words_are_not_broken_at_a_narrow_terminal(monkeypatch, capsys):
    monkeypatch.setenv("COLUMNS", "50")
    question = asked(BY_NAME["duty"])
    new_talk.shown(question)
    out = capsys.readouterr().out
    assert max(map(len, out.splitlines())) <= 50
    assert out.split() == question.split()


def test_us_examples_are_taken_and_say_about_the_same():
    for question in QUESTIONS:
        text = example_in(question, "us")
        if text != question.example and question.address != MENU:
            metric, foreign = (
                ScenarioData.read(trial(one))
                for one in (example(question), readings(question, text)[0])
            )
            for address in readings(question, text)[0]:
                if not address.startswith(("stock/", "observed/")):
                    assert foreign.get(address) == pytest.approx(metric.get(address), rel=0.03)
            assert not re.search(
                r"\b(kg|mm|km/h|kPa|degC)\b", asked(question, "us").partition("Empty")[0]
            )


MEANT = [
    ("chamber", "hemi", "two_valve_hemispherical"),
    ("chamber", "pent", "four_valve_pent_roof"),
    ("mixture", "carb", "carburettor"),
    ("cooling", "Water", "liquid"),
    ("exhaust", "no", "open"),
    ("altitude", "sea level", "0 m"),
    ("units", "US", "us"),
    ("compression_ratio", "8.5:1", 8.5),
    ("final_drive", "4.1 to 1", 4.1),
    ("ethanol", "E10", "10 %"),
    ("tyre", "radius 135 mm", "135 mm"),
]


@pytest.mark.parametrize(("name", "text", "value"), MEANT)
def test_an_answer_is_taken_as_it_is_meant(name, text, value):
    assert value in accept(BY_NAME[name], text, {}).values()


def test_no_blower_is_no_blower():
    assert accept(BY_NAME["blower"], "no", {}) == {}


REFUSED = [
    ("chamber", "two", "two_valve_wedge or two_valve_hemispherical"),
    ("compression_ratio", "8,5", 'write "8.5"'),
    ("mass", "348,5 kg", 'write "348.5 kg"'),
    ("rev_limit", "8,000 rpm", 'write "8.000 rpm" or "8000 rpm"'),
    ("gears", "8,5", 'write "8, 5" or "8.5"'),
    ("tyre", "135", '"135/80 R13", or a rolling radius, of a wheel 270 mm tall'),
    ("tyre", "135 mm", '"radius 135 mm"'),
    ("tyre", "", "is missing (Size on the sidewall of the driven tyres); write for example"),
    ("maker_fuel", "super", "is no octane number"),
    ("seen_knock", "no", '"no" may be not listened for or not heard'),
    ("altitude", "somewhere", 'write for example "120 m"'),
    ("temperature", "90 mph", 'write for example "25 degC"'),
    ("cylinders", "38 N m", "a plain number is expected; 38 would be outside the whole numbers"),
]


@pytest.mark.parametrize(("name", "text", "said"), REFUSED)
def test_what_may_mean_two_things_is_refused_with_both(name, text, said):
    message = refused(name, text)
    assert said in message
    assert "(%)" not in message
    assert not message.endswith(" ")


def test_the_gearing_is_told_where_it_is_answered():
    (line,) = told("final_drive", meant({}), "metric")
    # 5000 rpm over 2 x 30/18 x 1.1, on a tyre of 546 mm and a factor of 0.969
    assert line == "at 5000 rpm that makes 46.8 km/h in the lowest gear and 136 km/h in the highest"


DOUBTED = [
    ({"primary": "", "final_drive": "", "gears": "1"}, "nothing reduces the speed of the engine"),
    ({"primary": "", "final_drive": "13", "gears": "1"}, "the goal of 140 km/h would be"),
    ({"blower_ratio": "13"}, "the blower moves 9.6 times what the engine draws"),
]


@pytest.mark.parametrize(("changes", "said"), DOUBTED)
def test_what_ratios_make_together_is_doubted(changes, said):
    assert any(said in one for one in doubts(meant(changes), "metric"))
    assert list(doubts(meant({}), "metric")) == []


def test_what_is_wrong_with_a_ratio_is_told_at_the_end(windwall, tmp_path):
    sets = [word for key, text in (ANSWERS | {"blower_ratio": "13"}).items()
            for word in ("--set", f"{key}={text}")]  # fmt: skip
    said = windwall("new", tmp_path / "mine.json", *sets)
    assert said.returncode == 0
    text = " ".join(said.stdout.split())
    assert "With these answers no top speed is found" in text
    assert "Look at these answers again - At 13 turns for one of the crank the blower" in text
