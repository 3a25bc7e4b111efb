"""How columns hold each other: engine and road speed by a gear, an acceleration by the speed."""

from __future__ import annotations

import numpy as np

from windwall.logs.addresses import measure_of
from windwall.logs.gears import SLOWEST, Gear, gear_at, gears_of
from windwall.logs.guesses import Guess
from windwall.logs.units import line
from windwall.results.log import Log, Proposed
from windwall.scenario.data import ScenarioData

__all__ = ["IN_GEAR", "LEAST_TIE", "NO_ENGINE", "SPEEDS", "Chosen", "by_each_other", "by_gear"]

SPEEDS = ("km/h", "mph", "m/s")
IN_GEAR = 0.4  # share of moving rows that are in a gear where a unit of speed is right
LEAST_TIE = 0.3  # of a rank correlation, from which an acceleration goes with its speed

Chosen = tuple[list[Guess], list[Proposed]]


def by_gear(chosen: list[Guess], told: list[Proposed], scenario: ScenarioData) -> Chosen:
    """Engine and road speed hold each other: their ratio is a gear's, in one unit of speed."""
    engine, road = _find(chosen, "engine/speed"), _find(chosen, "road/speed")
    if road is None:
        return chosen, told
    if engine is None:
        return (chosen, told) if road.unit else _left_out(chosen, told, road, NO_ENGINE)
    shares = _shares(engine, road, scenario)
    unit = max(shares, key=lambda one: shares[one])
    said = f"in a gear of this vehicle in {100 * shares[unit]:.0f} of 100 rows on the move"
    if not road.unit and shares[unit] < IN_GEAR:
        return _left_out(chosen, told, road, "in what? No unit of speed fits the gears")
    of_road = said if road.unit else f"taken for {unit}: {said}"
    better = {
        id(road): road._replace(unit=unit, reasons=(*road.reasons, of_road)),
        id(engine): engine._replace(reasons=(*engine.reasons, said)),
    }
    return [better.get(id(one), one) for one in chosen], told


NO_ENGINE = "in what? No unit stands there, and no engine speed that would tell"


def _shares(engine: Guess, road: Guess, scenario: ScenarioData) -> dict[str, float]:
    """By the unit that the road speed may have, how often a gear is found."""
    turning = engine.column.values * line(engine.unit, measure_of(scenario, "engine/speed"))[0]
    measure, gears = measure_of(scenario, "road/speed"), gears_of(scenario)
    return {
        unit: _share(gears, turning, road.column.values * line(unit, measure)[0])
        for unit in ((road.unit,) if road.unit else SPEEDS)
    }


def _share(gears: tuple[Gear, ...], turning: np.ndarray, road: np.ndarray) -> float:
    moving = (road > SLOWEST) & np.isfinite(turning)
    if not moving.any():
        return 0.0
    return float(np.mean(gear_at(gears, turning[moving], road[moving]) > 0))


def by_each_other(chosen: list[Guess], told: list[Proposed], log: Log) -> Chosen:
    """An acceleration goes with the change of speed, and a pedal with the manifold."""
    road = _find(chosen, "road/speed")
    manifold = _find(chosen, "manifold/pressure") or _find(chosen, "manifold/boost")
    if road is not None:
        said = f'goes with the change of "{road.column.name}"'
        slope = _slope(road.column.values, log.time)
        chosen, told = _tied(chosen, told, "acceleration", slope, said)
    if manifold is not None:
        said = f'goes with "{manifold.column.name}"'
        chosen, told = _tied(chosen, told, "pedal", manifold.column.values, said)
    return chosen, told


def _slope(values: np.ndarray, time: np.ndarray) -> np.ndarray:
    """Over the rows either side; nothing where no time passes."""
    steps = np.r_[np.nan, time[2:] - time[:-2], np.nan]
    rise = np.r_[np.nan, values[2:] - values[:-2], np.nan]
    return np.where(steps > 0, rise / np.where(steps > 0, steps, 1), np.nan)


def _tied(
    chosen: list[Guess], told: list[Proposed], address: str, other: np.ndarray, said: str
) -> Chosen:
    one = _find(chosen, address)
    if one is None:
        return chosen, told
    tie = _tie(one.column.values, other)
    if tie < LEAST_TIE and address == "acceleration":
        return _left_out(chosen, told, one, f"it hardly {said}, by rank {tie:.2f}")
    better = one._replace(reasons=(*one.reasons, f"{said}, by rank {tie:.2f}"))
    return [better if each is one else each for each in chosen], told


def _tie(one: np.ndarray, other: np.ndarray) -> float:
    """The rank correlation of two columns; 0 where either stands still."""
    both = np.isfinite(one) & np.isfinite(other)
    if both.sum() < 3 or not np.ptp(one[both]) or not np.ptp(other[both]):
        return 0.0
    ranks = [np.argsort(np.argsort(column[both])) for column in (one, other)]
    return float(np.corrcoef(ranks)[0, 1])


def _find(chosen: list[Guess], address: str) -> Guess | None:
    return next((one for one in chosen if one.called.address == address), None)


def _left_out(chosen: list[Guess], told: list[Proposed], one: Guess, reason: str) -> Chosen:
    left = Proposed(one.column.name, "", one.column.unit, (*one.reasons, reason))
    return [other for other in chosen if other is not one], [*told, left]
