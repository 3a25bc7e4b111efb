"""What a page begins with: how fast, whether that is the goal, how sure, and whether what was seen
agrees. Whoever reads no further has read the answer.
"""

from __future__ import annotations

from typing import NamedTuple

from windwall.report.page.findings import Findings
from windwall.report.text.common import pairs
from windwall.report.text.disagreement import disagreement, is_far
from windwall.report.text.drawn import LEFT_ASIDE, behind_the_interval, interval
from windwall.report.text.speed import speeds
from windwall.report.text_layout import Blocks, paragraph
from windwall.report.wording.top_speed import in_short

__all__ = ["Head", "head"]


class Head(NamedTuple):
    """The first lines, the most important first."""

    lead: str
    likely: str = ""  # between which speeds, and how often the goal is reached
    doubt: str = ""  # what was observed contradicts it
    is_far: bool = False  # by more than the model is worth
    blocks: Blocks = []  # noqa: RUF012  # never changed


def head(findings: Findings) -> Head:
    """Of an answer, or the reason why there is none."""
    best = findings.best
    if not best.answered:
        return Head(best.sentence)
    return Head(
        in_short(best),
        interval(findings.drawn),
        disagreement(findings.diagnosis, findings.scenario.system),
        is_far(findings.diagnosis),
        _behind(findings),
    )


def _behind(findings: Findings) -> Blocks:
    """Where the climb ends, each speed, and why half of all are not that fast."""
    best, drawn = findings.best, findings.drawn
    lines = paragraph(best.sentence)
    lines += pairs(row for row in speeds(best) if row[0] != "goal")  # which leads already
    if drawn is None or drawn.spread is None:
        return lines
    aside = paragraph(LEFT_ASIDE) if drawn.observed else []
    return lines + aside + behind_the_interval(drawn)
