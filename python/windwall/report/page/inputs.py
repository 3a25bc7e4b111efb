"""How well each input is known, what counts most first."""

from __future__ import annotations

from windwall.quantities.measures import SPEED
from windwall.quantities.uncertain_input import UncertainInput
from windwall.report.page.findings import Findings
from windwall.report.page.provenance import known_by
from windwall.report.text_layout import Blocks, paragraph, table

__all__ = ["EXACT", "FIRST", "HEAD", "IN_THE_FILE", "NOTE", "input_blocks"]

FIRST = 6  # inputs that are not folded away
IN_THE_FILE = "in the file"
HEAD = ("", "value", "±", "worth, {unit}", "known by")
NOTE = (
    "Worth: the most that one standard deviation of it, either way, does to the speed. What the "
    "file states exactly is taken to be exact."
)
EXACT = "Every input is stated exactly, which no tape measure is: state each with its ±."


def input_blocks(findings: Findings) -> tuple[Blocks, Blocks]:
    """The first few, and all of them."""
    weighed = findings.weighed
    if not weighed:
        return paragraph(EXACT), []
    head = [one.format(unit=SPEED.shown(findings.scenario.system)) for one in HEAD]
    known = known_by(findings.scenario)
    system = findings.scenario.system
    rows = [(*_row(one, worth, system), _source_below(known(one))) for one, worth in weighed]
    first = table(rows[:FIRST], head=head, left=(0, 4)) + paragraph(NOTE)
    if len(rows) <= FIRST:
        return first, []
    named = [(*row, one.address) for row, (one, _) in zip(rows, weighed, strict=True)]
    return first, table(named, head=[*head, IN_THE_FILE], left=(0, 4, 5))


def _source_below(known: str) -> str:
    """The source on a line of its own."""
    return known.replace(": ", "\n: ", 1)


def _row(one: UncertainInput, worth: float | None, system: str) -> tuple[str, ...]:
    value = one.measure.short(one.value, system)
    spread = one.measure.spread.number(one.sigma, system, 2)
    change = "-" if worth is None else f"{SPEED.value(worth, system):.1f}"
    return one.sentence, value, spread, change
