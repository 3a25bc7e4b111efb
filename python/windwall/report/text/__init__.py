"""Answers as people read them, one module for each kind."""

from windwall.report.text.point import point_text
from windwall.report.text.rank import rank_text
from windwall.report.text.record import record_text
from windwall.report.text.scenario import scenario_text
from windwall.report.text.speed import speed_text

__all__ = ["point_text", "rank_text", "record_text", "scenario_text", "speed_text"]
