"""Ends a physics page with the checks it names: our value and theirs, out of docs/evidence.md."""

import ast
import re
from functools import cache
from pathlib import Path

from docutils import nodes
from inputs import table

ROOT = Path(__file__).parents[2]
TEST = re.compile(r"test_\w+")
TOLD = "One line a test, its hardest comparison, as the tests found it when they last ran."
NONE = "No test that this page names holds a number of it against one from outside the project."
MARK = re.compile(r" \(from \w+\)$")  # of what counts as nothing


@cache
def tests_in():
    """The claims of each file of tests/published, by its name and by that of the test."""
    files = sorted((ROOT / "tests/published").glob("test_*.py"))
    return {path.stem: dict(claims(path)) for path in files}


@cache
def held():
    """The line of docs/evidence.md that each test from outside has, by the name of the test."""
    lines = {
        MARK.sub("", cells[0]): cells
        for cells in map(cells_of, (ROOT / "docs/evidence.md").read_text("utf-8").splitlines())
        if len(cells) == 6
    }
    every = [one for tests in tests_in().values() for one in tests.items()]
    return {name: lines[claim] for name, claim in every if claim in lines}


def cells_of(line):
    return [cell.strip().replace("\\|", "|") for cell in re.split(r"(?<!\\)\|", line)[1:-1]]


def claims(path):
    """Each test of a file with what the evidence calls it."""
    for node in ast.walk(ast.parse(path.read_text("utf-8"))):
        if isinstance(node, ast.FunctionDef) and node.name.startswith("test_"):
            told = (ast.get_docstring(node) or "").strip().split("\n\n")[0]
            yield node.name, " ".join(told.split()) or name_as_claim(node.name)


def name_as_claim(name):
    return name.removeprefix("test_").replace("_", " ")


def checks_named(text):
    """The tests a page names, one by one or by their file, that have a line of evidence."""
    named = (test for name in TEST.findall(text) for test in tests_in().get(name, [name]))
    return [name for name in dict.fromkeys(named) if name in held()]


def append_checks(app, doctree):
    page = app.env.docname
    if not page.startswith("docs/physics/") or page.endswith("/index"):
        return
    names = checks_named((ROOT / f"{page}.md").read_text("utf-8"))
    section = nodes.section("", nodes.title("", "Checks from outside"), ids=["checks-from-outside"])
    section += nodes.paragraph("", TOLD if names else NONE)
    rows = [[nodes.Text(said(name)), *held()[name][2:]] for name in names]
    if rows:
        head = ["check", "ours", "theirs", "error", "tolerance"]
        section += table(head, rows, [60, 12, 12, 12, 12])
    doctree[0] += section


def said(name):
    claim = held()[name][0]
    plain = name_as_claim(name)
    same = MARK.sub("", claim) == plain
    return claim[0].upper() + claim[1:] if same else f"{plain.capitalize()}. {claim}"


def setup(app):
    app.connect("doctree-read", append_checks, priority=450)
    return {"parallel_read_safe": True}
