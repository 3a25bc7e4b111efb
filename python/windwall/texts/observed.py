"""The model held against what was seen, first of all."""

from __future__ import annotations

from typing import TYPE_CHECKING

from windwall.layout import paragraph, section, table
from windwall.observed import Compared

if TYPE_CHECKING:
    from windwall.top_speed import TopSpeed

FAR_OFF = 2  # standard deviations


def observed_lines(answer: TopSpeed) -> list[str]:
    """Model beside observation, in standard deviations of what was observed."""
    system = answer._asked.system
    compared = answer.against_observed
    if not compared:
        return []
    header = ("", "observed", "+/-", "model", "standard deviations off")
    rows = [_row(one, system) for one in compared]
    lines = table([header, *rows])
    far = [one.key for one in compared if one.off is not None and abs(one.off) > FAR_OFF]
    if far:
        lines += paragraph(
            f"CAUTION: the model is over {FAR_OFF} standard deviations from what was observed in "
            f"{', '.join(far)}. What follows is worth less until the inputs that it leans on are "
            "measured, the least known of them first."
        )
    return section("Held against what was observed at top speed", lines)


def _row(one: Compared, system: str) -> tuple[str, ...]:
    measure = one.measure
    known = "not stated" if one.sigma is None else measure.spread.number(one.sigma, system, 2)
    off = "" if one.off is None else f"{one.off:+.1f}"
    observed, model = (measure.short(value, system) for value in (one.observed, one.model))
    return one.key.replace("_", " "), observed, known, model, off
