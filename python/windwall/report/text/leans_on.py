"""What an answer leans on, as a table."""

from __future__ import annotations

from windwall.quantities.measures import SPEED
from windwall.report.text_layout import (
    Bars,
    Blocks,
    Title,
    bullet,
    headline,
    paragraph,
    section,
    table,
)
from windwall.report.wording.leans_on import set_name, share
from windwall.results.leans_on import Lean, Leaning, LeansOn, LeansPlan
from windwall.results.views import content

__all__ = ["COLUMNS", "HEADS", "LEAST", "NOTE", "REST", "leans_text", "plan_text"]

HEADS = {
    "speed": "The speed as it is",
    "difference": "The difference of {first} and {second}",
}
COLUMNS = ("", "alone", "with others", "±", "one sigma, {unit}")
REST = "all {count} others together"
NOTE = (
    "Shares are of the variance: alone, what would go if this number were known exactly; with "
    "others, what would stay if only this number were not. ± is one standard error of the second."
)
LEAST = 0.005


@content.register(LeansOn)
def leans_text(found: LeansOn) -> Blocks:
    """Everything worth reading about it."""
    lines = [Title(found.title), *paragraph("Asked: what the answer leans on.", "")]
    lines += ["", *headline(found.sentence)]
    lines += section("What to know", [line for one in found.sentences for line in bullet(one)])
    for leaning in found.leanings:
        lines += _section(found, leaning)
    return [*lines, "", *paragraph(NOTE)]


@content.register(LeansPlan)
def plan_text(plan: LeansPlan) -> Blocks:
    """What it will cost."""
    return [plan.sentence]


def _section(found: LeansOn, leaning: Leaning) -> Blocks:
    if not leaning.leans:
        return []
    names = dict(zip(("first", "second"), map(set_name, found.pair), strict=False))
    unit = SPEED.shown(found.system)
    head = tuple(one.format(unit=unit) for one in COLUMNS)
    leans = [one for one in leaning.leans if _worth(one)]
    rows = [_row(one, found.system) for one in leans]
    bars = Bars(COLUMNS[2], tuple(map(_bar, leans)))
    return section(HEADS[leaning.of].format(**names), table(rows, head=head, bars=bars))


def _bar(one: Lean) -> tuple[float, float, float]:
    return one.total - one.total_error, one.total, one.total + one.total_error


def _worth(one: Lean) -> bool:
    return bool(one.addresses) and (not one.title or max(one.total, one.first) >= LEAST)


def _row(one: Lean, system: str) -> tuple[str, ...]:
    return (
        one.title or REST.format(count=len(one.addresses)),
        share(one.first),
        share(one.total),
        share(one.total_error),
        SPEED.number(one.step, system, 2),
    )
