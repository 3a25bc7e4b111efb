"""The best gearing, and every value that was tried."""

from __future__ import annotations

from windwall.report.text_layout import Blocks, Title, bullet, headline, section, table
from windwall.report.wording.gearing import shown
from windwall.results.gearing import BestGearing
from windwall.results.views import content

__all__ = ["MOST_LINES", "gearing_text"]

MOST_LINES = 15


@content.register(BestGearing)
def gearing_text(gearing: BestGearing) -> Blocks:
    """Everything worth reading about it."""
    lines = [Title("Best gearing"), "", *headline(gearing.sentence)]
    lines += section("What to know", [line for one in gearing.sentences for line in bullet(one)])
    return lines + section("Tried", table(_rows(gearing)))


def _rows(gearing: BestGearing) -> list[tuple[str, str, str]]:
    """Values around the best, with those there are and the best marked."""
    merit, system = gearing.of_merit, gearing.system
    at = gearing.tried.index(gearing.best)
    first = max(0, at - MOST_LINES // 2)
    near = gearing.tried[first : first + MOST_LINES]
    notes = {gearing.best.value: "best", gearing.now.value: "now"}
    return [
        (
            shown(gearing, one.value),
            "no answer" if one.merit is None else merit.text(one.merit, system, 4),
            notes.get(one.value, "") if one != gearing.best else "best",
        )
        for one in near
    ]
