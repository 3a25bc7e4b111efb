"""What the words of the core's closed lists are called in tables."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any

from windwall.results.entry import Gain

CHANGES = {
    "power_up": "power +1 %",
    "drag_area_down": "drag area -1 %",
    "mass_down": "mass -1 %",
    "charge_cooler": "charge -10 K",
    "octane_up": "octane number +1",
    "gearing_shorter": "gearing 1 % shorter",
    "gearing_longer": "gearing 1 % longer",
}
# Uses of power that are called otherwise than by their word.
USES = {
    "crank_slowing": "crank slowing",
    "tyre_slip": "tyre slip",
    "unburnt_fuel": "unburnt fuel",
    "part": "{part}",
    "belt": "{part} belt",
    "shaft": "{part} shaft",
    "casing": "{part} casing",
}


def use_of(entry: dict[str, Any]) -> str:
    """What a line of an account is called."""
    return USES.get(entry["use"], entry["use"]).format(part=entry["part"])


def watts_by_use(entries: Iterable[dict[str, Any]]) -> dict[str, float]:
    """An account by the names of its lines."""
    return {use_of(one): one["watts"] for one in entries}


def gains_by_change(gains: Iterable[Gain]) -> dict[str, float | None]:
    """What small changes add, by their names."""
    return {CHANGES[one.change]: one.speed for one in gains}
