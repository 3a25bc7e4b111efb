"""A result's name stands in its row, where it is filled, and where somebody chooses on it.

Everything else follows from the rows: attributes, items, JSON, tables, units. A name counts once
for each room that spells it, a room being a header with its source, or a Python module. Prose,
comments and the names of included files do not count, and neither do the floors below results,
which cannot know one: there the word is the quantity itself.

Two sorts of names are not counted at all, since they are more than a result's: single words that
the floors below use too (`speed`, `torque`), and keys that are also asked for (`engine_speed`).
"""

import ast
import json
import re
from functools import cache
from pathlib import Path

import pytest

from windwall import _core

ROOT = Path(__file__).parents[2]
ALLOWED = 3  # its row, who fills it, who words it
EXCEPTIONS = {
    "chosen_lower": (4, "a solved set is packed member by member"),
    "chosen_upper": (4, "a solved set is packed member by member"),
    "cut_short": (4, "a solved set is packed member by member"),
    "least_margin": (4, "a solved set is packed member by member"),
    "refused_for": (4, "a solved set is packed member by member"),
    "balance_speed": (7, "of sweeps and of sets; whether the rev limit is met is read off it"),
    "best_by_cost": (
        10,
        "a plot and a page show it beside the text; its sets are told with their ends",
    ),
    "best_by_hours": (4, "its sets are told with their ends"),
    "binding": (6, "the core's own word for what is answered as limited_by"),
    "blower_outlet_temperature": (4, "a column of a table, and a sentence below another"),
    "cautions": (16, "a file that is checked has some; those of each answer have their own rooms"),
    "cheapest_to_goal": (7, "what a reader may go by is judged under every assumption"),
    "considered": (7, "the core's own word for the upgrades that are ranked"),
    "ending": (14, "every answer has one, and a condition that was tried has one as well"),
    "ends_of_pulls": (4, "read by the sets that they belong to"),
    "exhaust_temperature": (7, "a caution looks at it; it is observed under this name"),
    "inlet_depression": (
        8,
        "a caution looks at it; part load answers it beside the station; it is observed",
    ),
    "integral_margin": (4, "a ranking holds it against the rule for the sets that are named"),
    "knock_anchors": (6, "named above the table and again where it is said how sure that is"),
    "lead": (
        5,
        "common draws have leads of their own, world by world; a page leads with a sentence",
    ),
    "leaders": (6, "the function that finds them is called so; they are followed everywhere"),
    "limited_by": (8, "a set of a ranking ends by something as every top speed does"),
    "liquid_flow": (6, "two cautions look at it, and the study of smaller jets"),
    "margin_without_spray": (
        8,
        "of a top speed and of each set that is told, in a table and in sentences",
    ),
    "margins": (7, "matplotlib has margins too; the room that finds them is called so"),
    "oil_temperature": (4, "a gauge reads it, and a logger"),
    "pressure_difference": (6, "a dimension is called so"),
    "recommended": (10, "a plot leaves the other sets out; the target is called so"),
    "sets": (33, "what a study solves and ranks is called so in every room of it"),
    "sensitivities": (5, "the function that finds them is called so; entries with a number"),
    "smallest_lead": (7, "what can be told on the road is said of gains and of first places, too"),
    "together": (4, "sliders of a page add up alone and in pairs"),
    "unrated": (9, "asked of a file before anything is solved"),
    "water_per_fuel": (7, "a caution looks at it; of a point and of each set that is told"),
    "exhaust_gas_temperature": (6, "a gauge reads it, and a logger; a caution looks at it"),
    "fuel_flow": (5, "a gauge reads it; smaller jets are asked for by a share of it"),
    "pressure_drop": (4, "a gauge reads it"),
}
KNOWS_RESULTS = ("solve/results", "solve/answer", "study", "bindings")
TEXT = re.compile(r'"(?:[^"\\\n]|\\.)*"')
FORMULAS = "bindings/physics_"  # handbook formulas bound as they are


def below(rows):
    """Every key of rows and of the rows inside them."""
    for key, row in rows.items():
        yield key
        yield from below(row.get("rows", {}))
        for kind in row.get("kinds", {}).values():
            yield from below(kind["rows"])


@cache
def names():
    return set(
        below(
            {key: row for one in _core.answer_rows().values() for key, row in one["rows"].items()}
        )
    )


@cache
def asked_for():
    """Keys of files, of what was observed, and of questions."""
    found = set(_core.question_rows()["rows"]) | set(_core.observed_rows()["rows"])

    def properties(node):
        if isinstance(node, dict):
            found.update(node.get("properties", {}))
            for inside in node.values():
                properties(inside)
        elif isinstance(node, list):
            for inside in node:
                properties(inside)

    properties(json.loads(_core.schema_text()))
    return found


def words_of_cpp(text):
    """Words of code, and of texts in which there is no space."""
    code = re.sub(r"//[^\n]*|^\s*#include[^\n]*", "", text, flags=re.MULTILINE)
    code = TEXT.sub(lambda one: "" if " " in one[0] else one[0], code)
    return set(re.findall(r"\w+", code))


def words_of_python(text):
    """Likewise; what is imported is named there, not spelt again."""
    found = set()
    for node in ast.walk(ast.parse(text)):
        spelt = [getattr(node, name, None) for name in ("id", "attr", "arg", "name", "value")]
        if isinstance(node, ast.alias):
            continue
        found |= {one for one in spelt if isinstance(one, str) and not re.search(r"\s", one)}
    return {word for one in found for word in re.findall(r"\w+", one)}


def floor(path):
    return path.relative_to(ROOT / "cpp/windwall").as_posix()


def knows_results(path):
    if path.suffix == ".py":
        return True
    return floor(path).startswith(KNOWS_RESULTS) and not floor(path).startswith(FORMULAS)


@cache
def words():
    """Of each file of the core and of the package."""
    cpp = [*(ROOT / "cpp").rglob("*.?pp")]
    python = [*(ROOT / "python").rglob("*.py")]
    return {path: words_of_cpp(path.read_text("utf-8")) for path in cpp} | {
        path: words_of_python(path.read_text("utf-8")) for path in python
    }


@cache
def words_below():
    return set().union(*(found for path, found in words().items() if not knows_results(path)))


def is_counted(name):
    ordinary = "_" not in name and name in words_below()
    return not ordinary and name not in asked_for()


def rooms(name):
    """Where a name is spelt, each header with its source."""
    spelt = (path for path, found in words().items() if knows_results(path) and name in found)
    return sorted({path.relative_to(ROOT).with_suffix("").as_posix() for path in spelt})


def test_a_name_stands_in_few_rooms():
    many = {name: rooms(name) for name in sorted(names()) if is_counted(name)}
    allowed = {name: number for name, (number, _) in EXCEPTIONS.items()}
    assert {
        name: found for name, found in many.items() if len(found) > allowed.get(name, ALLOWED)
    } == {}


def test_no_more_is_excused_than_there_is():
    assert {name: len(rooms(name)) for name in EXCEPTIONS} == {
        name: number for name, (number, _) in EXCEPTIONS.items()
    }
    assert all(reason for _, reason in EXCEPTIONS.values())


def test_most_names_are_counted():
    counted = [name for name in names() if is_counted(name)]
    assert {"limited_by", "cheapest_to_goal", "recommended", "start_gear"} <= set(counted)
    assert not {"speed", "torque", "engine_speed"} & set(counted)
    assert all(rooms(name) for name in counted)


@pytest.mark.parametrize(
    "words_in, text",
    [
        (words_of_cpp, 'fact("limited_by", at<&R::binding>, "What is limited_by whom"),'),
        (words_of_python, "answer.limited_by"),
        (words_of_python, "numbers['limited_by']"),
        (words_of_python, "def limited_by(self): ..."),
        (words_of_python, "dict(limited_by=1)"),
    ],
)
def test_a_spelling_is_seen(words_in, text):
    assert "limited_by" in words_in(text)


@pytest.mark.parametrize(
    "words_in, text",
    [
        (words_of_cpp, '// limited_by\n#include "limited_by.hpp"\nreturn "is limited_by it";'),
        (words_of_python, '"""What limited_by says."""\nfrom limited_by import f  # limited_by'),
    ],
)
def test_prose_is_not(words_in, text):
    assert "limited_by" not in words_in(text)
