"""Weights and spring of a belt drive."""

from __future__ import annotations

from windwall.report.text_layout import Blocks
from windwall.results.flyweights import Flyweights
from windwall.results.views import content

__all__ = ["flyweights_text"]


@content.register(Flyweights)
def flyweights_text(answer: Flyweights) -> Blocks:
    """Their sentence is all there is to say."""
    return [answer.sentence]
