"""What upgrades are called in pictures: titles, with the values that their choices take."""

from __future__ import annotations

from windwall.report.plot_axes import human
from windwall.results.ranking import Ranking


def upgrade_title(label: str, ranking: Ranking) -> str:
    """`gearing: 29 teeth` with the title of the menu instead of the id."""
    key, colon, value = label.partition(": ")
    return f"{ranking.menu[key].title or human(key)}{colon}{value}"
