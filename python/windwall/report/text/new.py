"""What is said before the first question of `windwall new` and after the last."""

from __future__ import annotations

import shlex

from windwall.quantities.measures import SPEED
from windwall.report.text.rated import rated_lines
from windwall.report.text_layout import Blocks, as_text, bullet, paragraph, section
from windwall.results.default_sensitivity import DefaultSensitivity
from windwall.scenario.data import ScenarioData

SHOWN = 12


def opening(path: str) -> str:
    lines = paragraph(
        f"A few questions make {path}. Every number with its unit, and how well it is known behind "
        "± or +/- where that can be told. An empty answer leaves the usual value, which the model "
        "knows the spread of. Ctrl-D or Ctrl-C ends without writing anything.",
        "",
    )
    return as_text([*lines, ""])


def closing(made: ScenarioData, found: list[DefaultSensitivity], path: str) -> str:
    """The stock engine beside its figures, what was written, which defaults it leans on, and what
    to type next.
    """
    lines = [*rated_lines(made), "", f"written: {path}", *default_lines(found, made.system)]
    name = shlex.quote(path)
    nexts = [f"  windwall check {name}", f"  windwall speed {name}"]
    return as_text([*lines, *section("Next", nexts)])


def default_lines(found: list[DefaultSensitivity], system: str) -> Blocks:
    """The defaults that matter, by what one standard deviation of each is worth."""
    if found and found[0].speed is None:
        sentence = "No top speed is found with these answers; windwall speed says why."
        return section("Defaults", paragraph(sentence))
    rows = found[:SHOWN]
    lines = [line for one in rows for line in bullet(_text(one, system))]
    more = len(found) - len(rows)
    lines += paragraph(
        "The speed is what one +/- of the value is worth, found by solving again. Measuring the "
        "first ones is the cheapest way to a better answer."
        + (f" Another {more} usual values matter less." if more > 0 else "")
    )
    return section("Values that were not stated and that the answer leans on", lines)


def _text(one: DefaultSensitivity, system: str) -> str:
    known = one.input
    measure = known.measure
    value = measure.short(known.value, system, 3)
    sigma = measure.spread.short(known.sigma, system, 2)
    worth = SPEED.short(one.speed or 0, system, 2)
    return f"{worth}: {known.address}, {value} +/- {sigma}. {known.sentence}."
