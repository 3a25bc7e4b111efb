"""Plots as textbooks draw them. Each returns the axes, and draws into `ax` where one is given.

Lines differ by style and marker as well as by colour, every axis names its unit, and where
nothing can be drawn one sentence says why.
"""

from windwall.report.plots.account import accounts
from windwall.report.plots.charge import stations
from windwall.report.plots.drive import over_distance, over_time, runs_overlaid
from windwall.report.plots.force import force_against_speed
from windwall.report.plots.knock import knock_over_engine_speed
from windwall.report.plots.money import best_by_cost
from windwall.report.plots.ranking import gains
from windwall.report.plots.sure import forecast, leans_on
from windwall.report.plots.sweep import sweep_curve
from windwall.report.plots.sweep_map import sweep_map

__all__ = [
    "accounts",
    "best_by_cost",
    "force_against_speed",
    "forecast",
    "gains",
    "knock_over_engine_speed",
    "leans_on",
    "over_distance",
    "over_time",
    "runs_overlaid",
    "stations",
    "sweep_curve",
    "sweep_map",
]


def __dir__() -> list[str]:
    return __all__
