"""Ends a physics page with the checks it names: our value and theirs, out of docs/evidence.md."""

import ast
import re
from functools import cache
from pathlib import Path

from docutils import nodes
from inputs import table

ROOT = Path(__file__).parents[2]
TEST = re.compile(r"test_\w+")
MARK = re.compile(r" \(from \w+\)$")  # of what counts as nothing


@cache
def held():
    """The line of docs/evidence.md that each test from outside has, by the name of the test."""
    lines = {
        MARK.sub("", cells[0]): cells
        for cells in map(cells_of, (ROOT / "docs/evidence.md").read_text("utf-8").splitlines())
        if len(cells) == 6
    }
    found = {}
    for path in sorted((ROOT / "tests/published").glob("test_*.py")):
        for name, claim in claims(path):
            if claim in lines:
                found[name] = lines[claim]
    return found


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
    """The tests a page names that have a line of evidence, in its order."""
    return [name for name in dict.fromkeys(TEST.findall(text)) if name in held()]


def append_checks(app, doctree):
    page = app.env.docname
    if not page.startswith("docs/physics/"):
        return
    names = checks_named((ROOT / f"{page}.md").read_text("utf-8"))
    if not names:
        return
    section = nodes.section("", nodes.title("", "Checks from outside"), ids=["checks-from-outside"])
    section += nodes.paragraph(
        "", "One line a test, its hardest comparison, as the tests found it when they last ran."
    )
    rows = [[nodes.Text(said(name)), *held()[name][2:]] for name in names]
    section += table(["check", "ours", "theirs", "error", "tolerance"], rows, [60, 12, 12, 12, 12])
    doctree[0] += section


def said(name):
    claim = held()[name][0]
    plain = name_as_claim(name)
    same = MARK.sub("", claim) == plain
    return claim[0].upper() + claim[1:] if same else f"{plain.capitalize()}. {claim}"


def setup(app):
    app.connect("doctree-read", append_checks, priority=450)
    return {"parallel_read_safe": True}
