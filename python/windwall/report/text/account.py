"""Where the watts go, as a table."""

from __future__ import annotations

from typing import Any

from windwall.quantities.measures import POWER
from windwall.report.text_layout import section, table
from windwall.report.wording.names import watts_by_use

SMALLEST = 0.5  # W; a smaller entry is printed as 0


def account_table(heading: str, entries: list[dict[str, Any]], system: str) -> list[str]:
    """The total, then every entry in the unit of the system and as a share of the total."""
    total = entries[0]["watts"] if entries else 0
    unit = POWER.shown(system)
    decimals = 0 if unit == "W" else 2

    def cells(name: str, watts: float) -> tuple[str, str, str]:
        value = POWER.value(watts, system) if abs(watts) >= SMALLEST else 0.0
        share = round(100 * watts / total, 1) if total else 0.0
        return name, f"{value:,.{decimals}f}".replace(",", " "), f"{share + 0.0:.1f}"

    rows = [cells(*one) for one in watts_by_use(entries).items()]
    return section(heading, table([("", unit, "%"), *rows]))
