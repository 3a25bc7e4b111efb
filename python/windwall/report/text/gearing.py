"""The best gearing, and what was tried: every peak, what there is now, and both ends."""

from __future__ import annotations

from windwall.report.text_layout import Blocks, Title, bullet, headline, section, table
from windwall.report.wording.gearing import shown, tried_heading
from windwall.results.gearing import BestGearing
from windwall.results.views import content

__all__ = [
    "BEST",
    "LEFT_OUT",
    "MOST_LINES",
    "NOW",
    "NO_ANSWER",
    "PEAK",
    "gearing_text",
    "worth_a_row",
]

MOST_LINES = 15  # that stand there without any being left out
_AROUND, _BESIDE = 3, 1  # rows either side of the best, and of the others that are worth a row
BEST, NOW, PEAK, LEFT_OUT, NO_ANSWER = "best", "now", "another peak", "...", "no answer"


@content.register(BestGearing)
def gearing_text(gearing: BestGearing) -> Blocks:
    """Everything worth reading about it."""
    lines = [Title("Best gearing"), "", *headline(gearing.sentence)]
    lines += section("What to know", [line for one in gearing.sentences for line in bullet(one)])
    return lines + section(tried_heading(gearing), table(_rows(gearing), left=(0, 2)))


def worth_a_row(gearing: BestGearing) -> list[int]:
    """Places of what was tried: around the best, every other peak and what there is now, and the
    ends; all of them where they are few.
    """
    tried, last = gearing.tried, len(gearing.tried) - 1
    if len(tried) <= MOST_LINES:
        return list(range(len(tried)))
    wide = {one: _BESIDE for one in (*gearing.peaks, gearing.now) if one in tried}
    wide |= {gearing.best: _AROUND}
    middles = {tried.index(one): width for one, width in wide.items()}
    near = (range(at - width, at + width + 1) for at, width in middles.items())
    return sorted({0, last, *(at for one in near for at in one if 0 <= at <= last)})


def _rows(gearing: BestGearing) -> list[tuple[str, str, str]]:
    rows, before = [], -1
    for at in worth_a_row(gearing):
        rows += [(LEFT_OUT, "", "")] if at > before + 1 else []
        rows.append(_row(gearing, at))
        before = at
    return rows


def _row(gearing: BestGearing, at: int) -> tuple[str, str, str]:
    one, merit = gearing.tried[at], gearing.of_merit
    found = NO_ANSWER if one.merit is None else merit.text(one.merit, gearing.system, 4)
    notes = [BEST] if one == gearing.best else [PEAK] if one in gearing.peaks else []
    notes += [NOW] if one.value == gearing.now.value else []
    return shown(gearing, one.value), found, ", ".join(notes)
