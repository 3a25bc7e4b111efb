"""Sliders in a notebook: an answer that follows a hand."""

from windwall.sliders.explore import explore

__all__ = ["explore"]
