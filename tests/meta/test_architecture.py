"""The page that follows one number leads to files that exist and to functions that are in them."""

import re
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
PAGE = ROOT / "docs" / "architecture.md"
LINK = re.compile(r"\[(`?)([^\]`]+)`?\]\(([^)#]+)\)")


def broken(text):
    """Links to nothing, and names that are not in the file they are said to be in."""
    found = []
    for code, name, target in LINK.findall(text):
        path = PAGE.parent / target
        if not path.exists():
            found.append(target)
        elif code and not re.search(rf"\b{re.escape(name)}\b", path.read_text("utf-8")):
            found.append(f"{name} in {target}")
    return found


def test_every_link_leads_to_what_it_names():
    assert broken(PAGE.read_text("utf-8")) == []


def test_most_floors_are_passed():
    text = PAGE.read_text("utf-8")
    for folder in ("cpp/windwall", "python/windwall"):
        passed = set(re.findall(rf"{folder}/(\w+)/", text))
        floors = {path.name for path in (ROOT / folder).iterdir() if path.is_dir()}
        assert len(passed & floors) > len(floors) / 2


@pytest.mark.parametrize(
    "text",
    [
        "[page](no_such_page.md)",
        "[`load`](../cpp/windwall/no_such.hpp)",
        "[`no_such_function`](../python/windwall/api.py)",
    ],
)
def test_a_broken_link_is_caught(text):
    assert len(broken(text)) == 1
