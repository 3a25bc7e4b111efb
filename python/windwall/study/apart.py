"""What is observed where no engine speed is held: the fuel of a held speed, the time of a run from
standstill, how the vehicle slows down, a nozzle into a jar. A run is driven over time.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING, Any

from windwall import _core
from windwall.errors import NoAnswer
from windwall.results.gearing import Mark
from windwall.results.situation import Alone, Apart
from windwall.scenario.data import ScenarioData
from windwall.study.coast_down import conditions, rolled
from windwall.study.coast_down_solve import Road, Vehicle, speeds
from windwall.study.standing_start import DONE, driven, until, with_run

if TYPE_CHECKING:
    import numpy as np

__all__ = [
    "ANSWERS", "READ_TO", "SMOOTH", "answer_apart", "answer_prepared", "coast_speeds", "coasted",
    "on_its_way", "prepared", "scatter", "slowed",
]  # fmt: skip

READ_TO = 0.2 / 3.6  # m/s, to which a speed of a table is read at best; chosen by the project
SMOOTH = 3  # degree of the polynomial over time that the scatter of a table is counted from


def answer_apart(apart: Apart, scenario: ScenarioData) -> Alone | None:
    """What a scenario has for it, SI; None where there is no answer."""
    value = answer_prepared(apart, prepared(apart, scenario))
    return None if value is None else Alone(value)


def answer_prepared(apart: Apart, scenario: ScenarioData) -> float | None:
    """The same of a scenario that was prepared."""
    return ANSWERS[apart.key](apart, scenario)


def prepared(apart: Apart, scenario: ScenarioData) -> ScenarioData:
    """The scenario with what the answer needs in its file."""
    if apart.key != "time":
        return scenario
    return with_run(scenario, until(Mark(distance=apart.distance, speed=apart.speed)))


def _fuel_used(apart: Apart, scenario: ScenarioData) -> float | None:
    """m3 over the time or the distance."""
    gear = None if apart.gear is None else int(apart.gear)
    held = _core.hold_speed(scenario.core, apart.speed, gear)
    if held["point"] is None:
        return None
    seconds = apart.time if apart.time is not None else apart.distance / apart.speed
    return held["petrol"] * seconds / _core.fuel_density(scenario.core)


def _run_time(_apart: Apart, scenario: ScenarioData) -> float | None:
    """s from standstill, of a scenario that has the run."""
    run = driven(scenario)
    return run.time if run.ended == DONE else None


def _caught(apart: Apart, scenario: ScenarioData) -> float | None:
    """m3 of water that a nozzle gives in that time."""
    part = f"charge_path/{apart.part}"
    rated, at = scenario.get(f"{part}/rated_flow"), scenario.get(f"{part}/rated_pressure")
    return apart.time * rated * (apart.pressure / at) ** 0.5


def _coast_time(apart: Apart, scenario: ScenarioData) -> float | None:
    """s from the first speed of a table to its last."""
    (_, fast), *_, (_, slow) = apart.coasting
    try:
        return float(rolled(on_its_way(apart, scenario), fast, slow).time[-1])
    except NoAnswer:
        return None


def coast_speeds(apart: Apart, scenario: ScenarioData, start: float | None = None) -> np.ndarray:
    """m/s at the times of a table, from its first speed, or another, on."""
    import numpy as np

    times, seen = np.array(apart.coasting).T
    first = np.array([seen[0] if start is None else start])
    return slowed([on_its_way(apart, scenario)], times, first)[0]


def slowed(held: list[dict[str, float]], times: np.ndarray, first: np.ndarray) -> np.ndarray:
    """Speeds (worlds, times) from the first on."""
    import numpy as np

    return np.array([_slowed(*one, times - times[0]) for one in zip(held, first, strict=True)])


def _slowed(held: dict[str, float], first: float, times: np.ndarray) -> np.ndarray:
    vehicle, road = (of(*map(held.get, of._fields)) for of in (Vehicle, Road))
    return speeds(times, first, vehicle.force(road, 1), vehicle.accelerated_mass)


def on_its_way(apart: Apart, scenario: ScenarioData) -> dict[str, float]:
    """What holds the vehicle back, driven there or back."""
    held = conditions(scenario, None, None)
    if apart.back:
        held |= {"headwind": -held["headwind"], "grade": -held["grade"]}
    return held


def coasted(table: dict[str, list[float]]) -> tuple[float, float]:
    """s from the first speed of a table to its last, and how well that is known."""
    return table["time"][-1] - table["time"][0], 2**0.5 * scatter(table) / _deceleration(table)


def _deceleration(table: dict[str, list[float]]) -> float:
    fall = table["speed"][0] - table["speed"][-1]
    return fall / (table["time"][-1] - table["time"][0])


def scatter(table: dict[str, list[float]]) -> float:
    """m/s, of one speed of a table about a smooth course; what nobody reads better at least."""
    import numpy as np

    time, speed = np.array(table["time"]), np.array(table["speed"])
    free = len(time) - SMOOTH - 1
    if free < 1:
        return READ_TO
    about = speed - np.polyval(np.polyfit(time, speed, SMOOTH), time)
    return max(READ_TO, float(np.sqrt(np.sum(about**2) / free)))


ANSWERS: dict[str, Callable[[Apart, ScenarioData], Any]] = {
    "fuel_used": _fuel_used,
    "time": _run_time,
    "caught": _caught,
    "coasting": _coast_time,
}
