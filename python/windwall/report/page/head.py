"""What a page begins with: how fast, whether that is the goal, how sure, and whether what was seen
agrees. Whoever reads no further has read the answer.
"""

from __future__ import annotations

from typing import NamedTuple

from windwall.report.page.findings import Findings
from windwall.report.page.spoken import spoken
from windwall.report.text.common import pairs
from windwall.report.text.disagreement import disagreement, is_far
from windwall.report.text.drawn import LEFT_ASIDE, behind_the_interval, interval
from windwall.report.text.speed import speeds
from windwall.report.text_layout import Blocks, paragraph
from windwall.report.wording.top_speed import in_short

__all__ = ["Head", "head"]


class Head(NamedTuple):
    """The first lines, the most important first."""

    first: str
    likely: str = ""  # between which speeds, and how often the goal is reached
    doubt: str = ""  # what was observed contradicts it
    is_far: bool = False  # by more than the model is worth
    aside: str = ""  # what that is counted by
    blocks: Blocks = []  # noqa: RUF012  # never changed
    behind: Blocks = []  # noqa: RUF012  # for whoever asks why half of them are not that fast


def head(findings: Findings) -> Head:
    """Of an answer, or the reason why there is none."""
    best = findings.best
    if not best.answered:
        return Head(best.sentence)
    drawn = findings.drawn
    counted = drawn if drawn and drawn.spread else None
    return Head(
        in_short(best),
        interval(counted, half=True),
        disagreement(findings.diagnosis, findings.scenario.system),
        is_far(findings.diagnosis),
        LEFT_ASIDE if counted and counted.observed else "",
        paragraph(best.sentence) + pairs(row for row in speeds(best) if row[0] != "goal"),
        spoken(behind_the_interval(counted)) if counted else [],
    )
