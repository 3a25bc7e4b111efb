"""Pages name files and tests that exist."""

import re
from functools import cache
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
PAGES = [*(ROOT / "docs").rglob("*.md"), ROOT / "README.md", ROOT / "DEVELOPERS.md"]
CODE = re.compile(r"`([^`\n]+)`")
FOLDERS = "bindings|charge|cpp|docs|fields|media|numerics|python|scenario|solve|study|tests|vehicle"
# The other floors begin addresses too, and what begins so is a file where it ends like one.
FILE = re.compile(rf"(?:{FOLDERS})/[\w./-]+|(?:engine|driveline|road)/[\w./-]+\.[ch]pp")
TEST = re.compile(r"(?:[A-Z]\w+\.[A-Z]\w+|test_\w+)")
LINK = re.compile(r"\]\(([^)#:]+)\)")


def exists(file):
    """A file or folder of the checkout or of the core, whose ending may be left out."""
    places = (root / file for root in (ROOT, ROOT / "cpp/windwall", ROOT / "python/windwall"))
    return any(place.exists() or any(place.parent.glob(f"{place.name}.*")) for place in places)


@cache
def names_of_tests():
    cpp = (path.read_text("utf-8") for path in (ROOT / "tests/cpp").rglob("*.?pp"))
    python = (path for path in (ROOT / "tests").rglob("*.py"))
    found = set()
    for text in cpp:
        made = re.findall(r"^\s*(?:TYPED_)?TEST(?:_[PF])?\((\w+),\s*(\w+)\)", text, re.MULTILINE)
        found |= {f"{suite}.{name}" for suite, name in made}
    for path in python:
        found |= {path.stem, *re.findall(r"^def (test_\w+)", path.read_text("utf-8"), re.MULTILINE)}
    return found


def broken(text, page=PAGES[0]):
    """What a page names and nobody finds."""
    code = CODE.findall(text)
    files = [one for one in code if FILE.fullmatch(one.rstrip("/")) and not exists(one)]
    tests = [one for one in code if TEST.fullmatch(one) and one not in names_of_tests()]
    links = [one for one in LINK.findall(text) if not (page.parent / one).exists()]
    return files + tests + links


@pytest.mark.parametrize("page", PAGES, ids=lambda page: page.relative_to(ROOT).as_posix())
def test_what_a_page_names_exists(page):
    assert broken(page.read_text("utf-8"), page) == []


@pytest.mark.parametrize(
    "text",
    [
        "`solve/no_such_room`",
        "`tests/cpp/solve/no_such.cpp`",
        "`EquilibriumSpeed.NoSuchTest`",
        "`test_no_such_thing`",
        "[page](no_such_page.md)",
    ],
)
def test_what_is_not_there_is_caught(text):
    assert len(broken(text)) == 1
