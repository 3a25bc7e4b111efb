"""Answers as people read them, one module for each kind."""

from typing import Any

from windwall.report.text.account import account_text
from windwall.report.text.coast_down import coast_down_text
from windwall.report.text.day import corrected_text, forecast_text
from windwall.report.text.differences import differences_text
from windwall.report.text.drawn import drawn_ranking_text, drawn_speed_text
from windwall.report.text.drive import drive_text
from windwall.report.text.driven_gains import driven_gains_text
from windwall.report.text.driven_ranking import driven_ranking_text
from windwall.report.text.faults import faults_text
from windwall.report.text.flyweights import flyweights_text
from windwall.report.text.gearing import gearing_text
from windwall.report.text.leans_on import leans_text
from windwall.report.text.learned import learned_text
from windwall.report.text.log import log_text
from windwall.report.text.measure import measure_text
from windwall.report.text.part_load import part_load_text
from windwall.report.text.point import point_text
from windwall.report.text.rank import rank_text
from windwall.report.text.record import record_text
from windwall.report.text.scenario import scenario_text
from windwall.report.text.speed import speed_text
from windwall.report.text_layout import as_text
from windwall.results.views import content, summary


@summary.register(object)
def text(result: Any, **further: Any) -> str:
    """A result in a terminal."""
    return as_text(content(result, **further))


__all__ = [
    "account_text",
    "coast_down_text",
    "corrected_text",
    "differences_text",
    "drawn_ranking_text",
    "drawn_speed_text",
    "drive_text",
    "driven_gains_text",
    "driven_ranking_text",
    "faults_text",
    "flyweights_text",
    "forecast_text",
    "gearing_text",
    "leans_text",
    "learned_text",
    "log_text",
    "measure_text",
    "part_load_text",
    "point_text",
    "rank_text",
    "record_text",
    "scenario_text",
    "speed_text",
    "text",
]
