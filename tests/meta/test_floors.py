"""Dependencies point down: no floor includes a higher one, no sibling another."""

import re
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
CPP = ROOT / "cpp" / "windwall"
INCLUDE = re.compile(r'^\s*#\s*include\s*[<"]([^>"]+)[>"]', re.MULTILINE)

STORIES = [
    ["fields", "numerics"],
    ["media"],
    ["charge", "engine", "driveline", "road"],
    ["vehicle"],
    ["solve"],
    ["scenario"],
    ["study"],
    ["bindings", "web"],
]
SIBLINGS = set().union(*(story for story in STORIES if len(story) > 1))


def floors_below(floor):
    below = set()
    for story in STORIES:
        if floor in story:
            return below
        below |= set(story)
    raise AssertionError(f"cpp/windwall/{floor} is no floor")


def wrong_includes(floor, text):
    """What a file of this floor includes and must not."""
    allowed = floors_below(floor) | {floor}
    wrong = []
    for target in INCLUDE.findall(text):
        folders = target.split("/")
        ours = folders[0] == "windwall"
        if (ours and folders[1] not in allowed) or ".." in folders:
            wrong.append(target)
        if folders[0] in {"pybind11", "Python.h"} and floor != "bindings":
            wrong.append(target)
    return wrong


def sources():
    return sorted(path for path in CPP.rglob("*") if path.suffix in {".hpp", ".cpp"})


def test_includes_point_down():
    wrong = {
        (str(path.relative_to(CPP)), target)
        for path in sources()
        for target in wrong_includes(path.relative_to(CPP).parts[0], path.read_text("utf-8"))
    }
    assert wrong == set()


def test_own_headers_are_included_by_their_full_path():
    relative = {
        (str(path.relative_to(CPP)), target)
        for path in sources()
        for target in INCLUDE.findall(path.read_text("utf-8"))
        if (path.parent / target).exists()
    }
    assert relative == set()


@pytest.mark.parametrize(
    "floor, include",
    [
        ("fields", '#include "windwall/numerics/root.hpp"'),
        ("media", '#include "windwall/charge/throttle.hpp"'),
        ("charge", '#include "windwall/engine/spark.hpp"'),
        ("solve", "# include <windwall/scenario/read.hpp>"),
        ("study", '#include "windwall/bindings/arrays.hpp"'),
        ("vehicle", "#include <pybind11/pybind11.h>"),
        ("road", '#include "../engine/spark.hpp"'),
    ],
)
def test_an_arrow_up_or_sideways_is_caught(floor, include):
    assert len(wrong_includes(floor, f"#pragma once\n{include}\n")) == 1


def test_an_arrow_down_is_not():
    text = (
        '#include "windwall/media/gas.hpp"\n#include "windwall/charge/pipe.hpp"\n#include <cmath>\n'
    )
    assert wrong_includes("charge", text) == []
