"""Which gear a moment was in, by engine speed over road speed."""

from __future__ import annotations

from typing import NamedTuple

import numpy as np

from windwall import _core
from windwall.scenario.data import ScenarioData

__all__ = ["SLOWEST", "WITHIN", "Gear", "gear_at", "gears_of"]

WITHIN = 0.06  # of a gear's own ratio, tyre slip and an odd speedometer included
SLOWEST = 3.0  # m/s, below which a ratio is noise


class Gear(NamedTuple):
    """The engine speed over the road speed, rad/m, between which a gear lies at full throttle."""

    number: int
    low: float
    high: float
    mass: float  # kg, with all that turns

    @property
    def varies(self) -> bool:
        """Whether a belt holds another ratio at every moment, so that none tells the gear."""
        return self.high > (1 + WITHIN) * self.low * 1.1


def gears_of(scenario: ScenarioData) -> tuple[Gear, ...]:
    """Every gear of a vehicle."""
    masses = _core.accelerated_masses(scenario.core)
    found = []
    for number, mass in enumerate(masses, 1):
        curve = _core.full_throttle_curve(scenario.core, number, 12)
        columns = dict(zip(curve["addresses"], map(np.asarray, curve["columns"]), strict=True))
        ratio = columns["engine/speed"] / columns["road/speed"]
        ratio = ratio[np.isfinite(ratio)]
        if len(ratio):
            found.append(Gear(number, float(ratio.min()), float(ratio.max()), mass))
    return tuple(found)


def gear_at(
    gears: tuple[Gear, ...], engine_speed: np.ndarray, road_speed: np.ndarray
) -> np.ndarray:
    """The number of the gear at each moment; 0 where the ratio is that of none."""
    with np.errstate(divide="ignore", invalid="ignore"):
        ratio = np.where(road_speed > SLOWEST, engine_speed / road_speed, np.nan)
    found = np.zeros(len(ratio), int)
    nearest = np.full(len(ratio), np.inf)
    for gear in gears:
        middle = np.sqrt(gear.low * gear.high)
        off = np.abs(np.log(ratio / middle)) - np.log(gear.high / gear.low) / 2
        better = (off < np.log1p(WITHIN)) & (off < nearest)
        found[better], nearest[better] = gear.number, off[better]
    return found
