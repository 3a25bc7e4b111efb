"""What two scenarios differ in."""

from __future__ import annotations

from windwall.quantities.measures import SPEED
from windwall.report.text_layout import Blocks, Title, bullet, paragraph, section, table
from windwall.results.differences import Difference, Differences
from windwall.results.views import content, document

__all__ = [
    "ENTRY", "FIRST", "HEADING", "NONE", "NOTHING", "NO_ANSWER", "OTHER", "SUM",
    "differences_document", "differences_text",
]  # fmt: skip

FIRST, OTHER = "first", "other"
HEADING = "What differs, first -> other, and what each entry of the other alone makes of the first"
NONE = "nothing"
NOTHING = "Nothing differs: both files mean the same, however they are typed."
ENTRY = "{address}: {before} -> {after}{change}"
NO_ANSWER = "no answer"
SUM = "Alone they make {alone}, together {both} {unit}: the rest is what they do to each other."


@content.register(Differences)
def differences_text(found: Differences) -> Blocks:
    """Entry by entry, with what each does to the speed of the first."""
    system, unit = found.system, SPEED.shown(found.system)
    lines = [Title(found.title), *paragraph(f"beside {found.other}", "")]
    speeds = (
        NO_ANSWER if x is None else f"{SPEED.value(x, system):.1f} {unit}"
        for x in (found.speed, found.other_speed)
    )
    names = (FIRST, found.source, found.title), (OTHER, found.other_source, found.other)
    which = [(*name, speed) for name, speed in zip(names, speeds, strict=True)]
    lines += ["", *table(which, left=(0, 1, 2))]
    if not found.found:
        return [*lines, "", *paragraph(NOTHING)]
    entries = [line for one in found.found for line in bullet(_entry(one, system))]
    lines += section(HEADING, entries)
    return [*lines, *_sum(found)]


def _entry(one: Difference, system: str) -> str:
    change = ""
    if one.change is not None:
        change = f": {SPEED.change(one.change, system)} {SPEED.shown(system)}"
    elif one.refused:
        change = f": not alone, since {one.refused}"
    before, after = (NONE if x is None else x for x in (one.before, one.after))
    return ENTRY.format(address=one.address, before=before, after=after, change=change)


def _sum(found: Differences) -> Blocks:
    alone = [one.change for one in found.found if one.change is not None]
    if found.speed is None or found.other_speed is None or len(alone) < 2:
        return []
    system = found.system
    words = {
        "alone": SPEED.change(sum(alone), system),
        "both": SPEED.change(found.other_speed - found.speed, system),
    }
    return ["", *paragraph(SUM.format(unit=SPEED.shown(system), **words))]


@document.register(Differences)
def differences_document(found: Differences) -> dict[str, object]:
    """The same as plain numbers in SI."""
    return {
        "title": found.title,
        "other": found.other,
        "speed": found.speed,
        "other_speed": found.other_speed,
        "differences": [one._asdict() for one in found.found],
    }
