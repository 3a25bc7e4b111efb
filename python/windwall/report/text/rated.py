"""How the stock engine meets the figures that its maker printed, and what was moved for it."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from windwall.quantities.measures import KILOWATTS, TORQUE
from windwall.report.text_layout import Block, Blocks, bullet, section
from windwall.scenario.data import KNOCK_ANCHOR, ScenarioData

__all__ = ["MEASURES", "rated_lines"]

MEASURES = {"torque": TORQUE, "power": KILOWATTS}


def rated_lines(scenario: ScenarioData) -> Blocks:
    """The figures, what was moved by how many sigma, and what cannot be reconciled."""
    fit = scenario.rated_fit
    if not fit:
        return []
    said = [*_figures(scenario, fit), *_moved(scenario, fit)]
    if fit["anchored"]:
        number = scenario.readable(KNOCK_ANCHOR, 3)
        said.append(
            f"{KNOCK_ANCHOR}: {number} +/- {scenario.knock_sigma:.0f}, by the fuel that the maker "
            "asks for and a reserve of 3"
        )
    return section("The stock engine against its rated figures", _bullets(said))


def _bullets(said: list[str]) -> Iterator[Block]:
    for one in said:
        yield from bullet(one)


def _figures(scenario: ScenarioData, fit: dict[str, Any]) -> Iterator[str]:
    for one in fit["figures"]:
        measure, system = MEASURES[one["key"]], scenario.system
        rated, met = (measure.short(one[key], system, 3) for key in ("rated", "met"))
        before = measure.short(one["before"], system, 3)
        text = f"{one['key']}: {rated} printed, {met} solved, {before} by its class"
        yield text + (", which cannot be reconciled" if one["unreconciled"] else "")


def _moved(scenario: ScenarioData, fit: dict[str, Any]) -> Iterator[str]:
    for one in fit["inputs"]:
        measure, system = scenario.measure(one["address"]), scenario.system
        known, value = (measure.short(one[key], system, 3) for key in ("known", "value"))
        spread = measure.spread.short(one["sigma"], system, 2)
        yield (
            f"{one['address']}: {known} became {value} +/- {spread}, {one['sigmas']:+z.1f} sigma"
        )
