"""What pictures say of a menu: upgrades by their titles with what they chose, or why none."""

from __future__ import annotations

from windwall.report.plot_axes import human
from windwall.results.ranking import Ranking

__all__ = ["no_base", "upgrade_title"]


def upgrade_title(label: str, ranking: Ranking) -> str:
    """`gearing: 29 teeth` with the title of the menu instead of the id."""
    key, colon, value = label.partition(": ")
    return f"{ranking.menu[key].title or human(key)}{colon}{value}"


def no_base(ranking: Ranking) -> str:
    """Why there is no speed to rank against."""
    return next((one.reason for one in ranking.sets[:1] if one.reason), ranking.sentence)
