"""What an answer leans on, as a table."""

from __future__ import annotations

from windwall.quantities.measures import SPEED
from windwall.report.text_layout import bullet, paragraph, section, table
from windwall.report.wording.leans_on import set_name, share
from windwall.results.leans_on import Lean, Leaning, LeansOn, LeansPlan
from windwall.results.views import summary

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


@summary.register(LeansOn)
def leans_text(found: LeansOn) -> str:
    """Everything worth reading about it."""
    lines = [found.title, *paragraph("Asked: what the answer leans on.", "")]
    lines += ["", *paragraph(found.sentence)]
    lines += section("What to know", [line for one in found.sentences for line in bullet(one)])
    for leaning in found.leanings:
        lines += _section(found, leaning)
    return "\n".join([*lines, "", *paragraph(NOTE)])


@summary.register(LeansPlan)
def plan_text(plan: LeansPlan) -> str:
    """What it will cost."""
    return plan.sentence


def _section(found: LeansOn, leaning: Leaning) -> list[str]:
    if not leaning.leans:
        return []
    names = dict(zip(("first", "second"), map(set_name, found.pair), strict=False))
    unit = SPEED.shown(found.system)
    head = tuple(one.format(unit=unit) for one in COLUMNS)
    rows = [_row(one, found.system) for one in leaning.leans if _worth(one)]
    return section(HEADS[leaning.of].format(**names), table([head, *rows]))


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
