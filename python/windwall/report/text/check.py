"""What is to be known about a file: what is wrong with it, and what it leaves open."""

from __future__ import annotations

import unicodedata
from collections.abc import Iterator

from windwall.errors import Problem, ScenarioError
from windwall.report.text.design import design_lines
from windwall.report.text.limits import plainly
from windwall.report.text.rated import rated_lines
from windwall.report.text_layout import as_text, bullet, paragraph, section
from windwall.scenario.data import KNOCK_ANCHOR, ScenarioData

__all__ = [
    "BEGINS", "UNRATED", "WIDEST", "check_text", "left_open", "offending", "plain", "problems_text",
    "stand_in",
]  # fmt: skip

UNRATED = "{what}; how much the parts bear is not stated, so nothing will be said about it"
BEGINS = "the octane number at which this engine begins to knock"
WIDEST = 100  # characters of a line of a file that are shown


def check_text(scenario: ScenarioData) -> str:
    """A file without problems."""
    lines = [f"{scenario.source}: no problems", *paragraph(f"digest {scenario.digest}")]
    found = [line for address, text in left_open(scenario) for line in bullet(f"{address}: {text}")]
    lines += section("Cautions", found)
    return as_text([*lines, *rated_lines(scenario), *design_lines(scenario)])


def left_open(scenario: ScenarioData) -> Iterator[tuple[str, str]]:
    """What a file leaves open, by address."""
    if not scenario.has_knock_anchor:
        yield "engine", "a torque curve says nothing of knock and heat"
    elif not scenario.given(KNOCK_ANCHOR):
        yield (
            KNOCK_ANCHOR,
            f"{BEGINS} is not stated, so {stand_in(scenario)} stands in; every knock margin is "
            "known to "
            f"+/- {scenario.sigma(KNOCK_ANCHOR):.0f} octane numbers only",
        )
    elif scenario.sigma(KNOCK_ANCHOR) == 0:
        yield (
            KNOCK_ANCHOR,
            f"{BEGINS} is stated without its spread, and taken as known to +/- "
            f"{scenario.knock_sigma:.0f} octane numbers",
        )
    for address in scenario.unrated:
        yield address, UNRATED.format(what=plainly(address))
    if scenario.get("goal/speed") is None:
        yield "goal/speed", "no goal is stated, so no set of upgrades can be said to reach it"
    if not scenario.observed:
        yield "observed", "nothing observed is stated, so the model is not held against the vehicle"


def stand_in(scenario: ScenarioData) -> str:
    """What tells where the engine knocks."""
    if scenario.rated_fit and scenario.rated_fit["anchored"]:
        return "the fuel that its maker asks for"
    return "the class of engine" if scenario.class_values else "a table of old engines"


def problems_text(wrong: ScenarioError, text: str) -> str:
    """Everything that is wrong, each with the line of the file it stands in."""
    lines = text.splitlines()
    shown = []
    for problem in wrong.problems:
        shown.append(f"{problem.where(wrong.source)}: {problem.message}".lstrip(": "))
        shown += offending(problem, lines)
    count = len(wrong.problems)
    return as_text([*shown, f"{count} problem{'' if count == 1 else 's'}"])


def offending(problem: Problem, lines: list[str]) -> list[str]:
    """The line, and a mark under the place."""
    if not 0 < problem.line <= len(lines):
        return []
    at = max(problem.column - 1, 0)
    start = max(0, at - WIDEST // 2)
    line = plain(lines[problem.line - 1])[start : start + WIDEST]
    return [f"    {line}", "    " + " " * (at - start) + "^"]


def plain(line: str) -> str:
    """One character for each, none of which can move the cursor or change a terminal."""
    return "".join(" " if unicodedata.category(one) in {"Cc", "Cf"} else one for one in line)
