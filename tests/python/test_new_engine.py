"""The engine from what its maker printed: asked first, answered first, slips mended."""

import json
import re

import pytest

import windwall as ww
from python.new_answers import ANSWERS, LEAST, typed
from windwall.cli.new_asked import asked, explained
from windwall.cli.new_questions import QUESTIONS
from windwall.report.text.rated import rated_lines
from windwall.report.text_layout import as_text

PRINTED = {
    "duty": "work",
    "chamber": "wedge",
    "cooling": "Air",
    "mixture": "carburettor",
    "exhaust": "muffled",
    "displacement": "624 cm3",
    "compression_ratio": "8.0",
    "rated_torque": "43 N m at 2500 rpm",
    "rated_power": "14.5 kW @ 3600 rpm",
    "maker_fuel": "91/83",
    "compression_now": "7.6",
}


@pytest.fixture
def path(tmp_path):
    return tmp_path / "mine.json"


def test_what_is_easy_is_asked_first_and_what_the_maker_printed_next(windwall, path):
    said = windwall("new", path, input=typed(ANSWERS | PRINTED))
    assert (said.returncode, said.stderr) == (0, "")
    names = {one.name for one in QUESTIONS}
    starts = (line.partition(": ")[0] for line in said.stdout.splitlines())
    first = [start for start in starts if start in names][:16]
    assert first[:4] == ["title", "units", "cylinders", "displacement"]
    assert sorted(first) == sorted([*PRINTED, "title", "units", "cylinders", "bore", "stroke"])
    made = json.loads(path.read_text("utf-8"))["engine"]
    assert list(made["design"].values()) == [
        "two_valve_wedge", "air", "work", "carburettor", "muffled",
    ]  # fmt: skip
    assert made["rated"] == {
        "torque": "43 N m",
        "torque_speed": "2500 rpm",
        "power": "14.5 kW",
        "power_speed": "3600 rpm",
        "compression_ratio": 8.0,
        "research_octane": 91,
        "motor_octane": 83,
    }
    assert made["compression_ratio"] == 7.6
    assert not {"breathing", "valves", "knock_anchor"} & set(made)  # nothing that was not answered
    _, heading, answer = said.stdout.partition("\nThe stock engine against its rated figures\n")
    assert heading
    assert answer.startswith("  - torque: 43 N m printed, ")
    assert answer.index("sigma") < answer.index("written: ") < answer.index("Values that were")
    assert as_text(rated_lines(ww.load(path))) in said.stdout


def test_a_figure_that_cannot_be_is_told_before_anything_else(windwall, path):
    said = windwall(
        "new", path, input=typed(ANSWERS | PRINTED | {"rated_torque": "80 N m at 2500 rpm"})
    )
    (line,) = [one for one in said.stdout.split("\n  - ") if one.startswith("torque: ")]
    assert "which cannot be reconciled" in " ".join(line.split())


SLIPS = {
    "chamber": ("rotary", "two_valve_wedge"),
    "rated_torque": ("43 N m", "at which engine speed?"),
    "rated_power": ("14.5 kW at 36 rpm", "36 rpm is outside"),
    "maker_fuel": ("super", "super"),
    "stroke": ("86.8 mm", "2 x 76 mm x 86.8 mm make 788 cm3, and 624 cm3 were printed"),
}


def test_slips_are_told_and_asked_again(windwall, path):
    answers, lines = ANSWERS | PRINTED, []
    for one in QUESTIONS:
        lines += [SLIPS[one.name][0]] if one.name in SLIPS else []
        lines.append(answers.get(one.name, ""))
    said = windwall("new", path, input="\n".join([*lines, ""]))
    assert said.returncode == 0
    for name, (slip, told) in SLIPS.items():
        _, typed_again, behind = said.stdout.partition(f"> {slip}\n")
        assert typed_again, name
        assert told in " ".join(behind.partition("\n> ")[0].split()), name
    assert ww.load(path).rated_fit["figures"][1]["rated"] == pytest.approx(14500)


@pytest.mark.parametrize("figure", ["70 kW at 6000 rpm turbocharged", "blown 50 N m at 3000 rpm"])
def test_figures_with_a_blower_of_the_makers_are_refused_by_name(windwall, path, figure):
    pairs = LEAST | {"rated_power": figure}
    sets = [word for name, text in pairs.items() for word in ("--set", f"{name}={text}")]
    said = windwall("new", path, *sets)
    assert said.returncode == 2
    assert "figures with a blower of the maker's are not met" in said.stderr
    assert not path.exists()


def test_what_skipping_costs_is_said_behind_a_question_mark_alone():
    for question in QUESTIONS:
        if question.has_prior:
            line = " ".join(explained(question))
            skipped, answered = re.search(
                r"known to \+/- (\d+(?:\.\d+)?)[^+]* instead of \+/- (\d+(?:\.\d+)?)", line
            ).groups()
            assert float(skipped) > 1.02 * float(answered), question.name
        assert "known to" not in asked(question)


@pytest.mark.parametrize(("skipped", "expected"), [("stroke", 68.78e-3), ("bore", 75.99e-3)])
def test_a_displacement_stands_for_one_size(windwall, path, skipped, expected):
    said = windwall("new", path, input=typed(LEAST | {"displacement": "624 cm3", skipped: ""}))
    assert said.returncode == 0
    assert ww.load(path).get(f"engine/{skipped}") == pytest.approx(expected, rel=2e-4)


def test_a_displacement_cannot_stand_for_both_sizes(windwall, path):
    answers = LEAST | {"displacement": "624 cm3", "bore": "", "stroke": ""}
    lines = typed(answers).split("\n")
    at = [one.name for one in QUESTIONS].index("stroke")
    said = windwall("new", path, input="\n".join([*lines[: at + 1], "68.8 mm", *lines[at + 1 :]]))
    assert said.returncode == 0
    assert "  engine/stroke: is missing" in said.stdout
    assert ww.load(path).get("engine/bore") == pytest.approx(75.99e-3, rel=2e-4)
