"""How the stock engine meets what its maker printed, in a few lines of another answer."""

from __future__ import annotations

from windwall.report.text.rated import MEASURES
from windwall.report.text_layout import Blocks, paragraph, section, table
from windwall.results.scenario_info import RatedFigure, ScenarioInfo

__all__ = ["stock_engine_lines"]


def stock_engine_lines(info: ScenarioInfo) -> Blocks:
    """Each figure as printed, as solved and as its class alone would have it."""
    if not info.rated:
        return []
    header = ["", "printed", "solved", "by its class alone"]
    lines = table((_row(one, info.system) for one in info.rated), head=header)
    for one in info.rated:
        if one.unreconciled:
            lines += paragraph(f"The {one.key} cannot be reconciled with the rest of the file.")
    return section("The stock engine against its rated figures", lines)


def _row(one: RatedFigure, system: str) -> list[str]:
    measure = MEASURES[one.key]
    return [one.key, *(measure.short(si, system, 3) for si in (one.rated, one.met, one.before))]
