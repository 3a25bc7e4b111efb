"""Sliders for a page that is sent: the answer follows them in a browser, without any install."""

from windwall.report.live.block import live_block

__all__ = ["live_block"]
