"""The model's own coast-down, by quadrature over speed: time is the integral of m dv/F."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from windwall import _core, physics
from windwall.errors import NoAnswer
from windwall.quantities.measures import SHARE, SPEED, WIND
from windwall.results.coast_down import CoastDown
from windwall.scenario.arguments import exact, wrong
from windwall.scenario.data import ScenarioData

if TYPE_CHECKING:
    import numpy as np

__all__ = ["MOST_POINTS", "NODES", "SLOWEST", "coast_down", "conditions", "resistance", "rolled"]

NODES = 8  # of each step between two speeds
MOST_POINTS = 100_000
SLOWEST = 0.5  # m/s, above the rounded corner that rolling resistance has at standstill


def coast_down(
    scenario: ScenarioData,
    from_speed: Any,
    to_speed: Any = "10 km/h",
    headwind: Any = None,
    grade: Any = None,
    points: int = 101,
) -> CoastDown:
    """Time and distance at evenly spaced speeds, without drive: in neutral, with a driveline that
    takes nothing. Wind and grade are those of the scenario unless stated.
    """
    fast = exact("from_speed", from_speed, SPEED, "100 km/h")
    slow = exact("to_speed", to_speed, SPEED, "10 km/h")
    _check(fast, slow, points, scenario.system)
    held = conditions(scenario, headwind, grade)
    return rolled(held, fast, slow, points, scenario.system)


def conditions(scenario: ScenarioData, headwind: Any, grade: Any) -> dict[str, float]:
    """What holds the vehicle back, and what has to be slowed down."""
    names = ("mass", "drag_area", "rolling_resistance", "rolling_rise")
    held = {name: scenario.get(f"body/{name}") for name in names}
    held |= _core.rolling_free(scenario.core)
    held |= {"headwind": scenario.get("day/headwind"), "grade": scenario.get("goal/grade")}
    if headwind is not None:
        held["headwind"] = exact("headwind", headwind, WIND, "3 m/s")
    if grade is not None:
        held["grade"] = exact("grade", grade, SHARE, "1 %")
    return held


def _check(fast: float, slow: float, points: int, system: str) -> None:
    first, last, least = (SPEED.text(one, system) for one in (fast, slow, SLOWEST))
    if not slow >= SLOWEST:
        raise wrong("to_speed", f"{last} is below the {least} that it may end at")
    if not fast > slow:
        raise wrong("from_speed", f"{first} is no more than the {last} it is to end at")
    if not 2 <= points <= MOST_POINTS:
        raise wrong("points", f"{points} is outside 2 to {MOST_POINTS}")


def resistance(held: dict[str, float], speed: np.ndarray) -> np.ndarray:
    """N, at speeds in m/s."""
    return physics.road_load(
        speed,
        held["mass"],
        held["drag_area"],
        held["rolling_resistance"],
        held["air_density"],
        held["headwind"],
        held["grade"],
        held["rolling_rise"],
    )


def rolled(
    held: dict[str, float], fast: float, slow: float, points: int = 11, system: str = "metric"
) -> CoastDown:
    """From one speed in m/s to another, held back by these conditions."""
    import numpy as np

    speeds = np.linspace(fast, slow, points)
    half = (speeds[:-1] - speeds[1:]) / 2
    nodes, weights = np.polynomial.legendre.leggauss(NODES)
    between = speeds[1:, None] + half[:, None] * (1 + nodes)
    force = resistance(held, between)
    if not np.all(force > 0):
        raise _never_there(float(between[force <= 0].max()), slow, system)
    per_speed = half[:, None] * weights * held["accelerated_mass"] / force
    time, distance = per_speed.sum(axis=1), (per_speed * between).sum(axis=1)
    start = np.zeros(1)
    return CoastDown(
        np.concatenate([start, time.cumsum()]),
        np.concatenate([start, distance.cumsum()]),
        speeds,
        held,
    )


def _never_there(held_at: float, slow: float, system: str) -> NoAnswer:
    last, there = (SPEED.text(one, system) for one in (slow, held_at))
    return NoAnswer(
        f"It never slows down to {last}: at {there} slope and wind push as hard as air and tyres "
        "hold.",
        "never_slow",
    )
