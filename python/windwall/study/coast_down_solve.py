"""Least squares of speed over time for coasting down, whatever is taken to be unknown in it."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import TYPE_CHECKING, NamedTuple

from windwall.results.coast_down import GRAVITY
from windwall.study.coast_down_table import Run

if TYPE_CHECKING:
    import numpy as np

__all__ = [
    "FIRST_SCATTER", "LEAST_SCATTER", "RISE_SPEED", "ROUNDS", "SETTLED", "Road", "Solution",
    "Vehicle", "solve", "speeds",
]  # fmt: skip

RISE_SPEED = 100 / 3.6  # m/s, at which a rise of rolling resistance is stated
FIRST_SCATTER = 0.1  # m/s, of a good logger
LEAST_SCATTER = 1e-5  # m/s: no logger is finer
SETTLED = 1e-3  # share by which the scatter still moves
ROUNDS = 20


class Road(NamedTuple):
    """What holds a vehicle back: drag area, rolling resistance, headwind and grade of those who
    drive there. SI.
    """

    drag_area: float
    rolling_resistance: float
    headwind: float
    grade: float


class Vehicle(NamedTuple):
    """What is known of it, and the air. SI."""

    mass: float
    accelerated_mass: float
    air_density: float
    rolling_rise: float

    def force(self, road: Road, way: int) -> tuple[float, float, float]:
        """A, B and C of the force A + B v + C v^2 one way along the road."""
        import numpy as np

        slope = np.arctan(road.grade)
        air = self.air_density * road.drag_area / 2
        rolling = self.mass * GRAVITY * np.cos(slope) * road.rolling_resistance
        constant = rolling + way * self.mass * GRAVITY * np.sin(slope) + air * road.headwind**2
        square = air + rolling * self.rolling_rise / RISE_SPEED**2
        return constant, 2 * way * air * road.headwind, square


class Solution(NamedTuple):
    """The unknowns with their covariance, and how the rows lie about the fit."""

    unknowns: np.ndarray
    covariance: np.ndarray
    start_speeds: np.ndarray
    scatter: float  # m/s
    memory: float


def speeds(time: np.ndarray, start: float, force: Sequence[float], mass: float) -> np.ndarray:
    """m/s over time against A + B v + C v^2; 0 once at rest."""
    import numpy as np

    constant, half, square = force[0], force[1] / 2, force[2]
    turning = (constant * square - half * half) / mass**2
    rate = np.sqrt(abs(turning))
    angle = rate * time
    if turning > 0:
        even, odd = np.cos(angle), np.sin(angle) / rate
    elif turning < 0:
        even, odd = np.cosh(angle), np.sinh(angle) / rate
    else:
        even, odd = np.ones_like(time), time
    left = start * even - (constant + half * start) / mass * odd
    stopped = (left <= 0) | ((turning > 0) & (angle >= np.pi))
    running = even + (square * start + half) / mass * odd
    return np.where(stopped, 0.0, left / np.where(stopped, 1.0, running))


def solve(
    runs: list[Run],
    vehicle: Vehicle,
    road: Callable[[np.ndarray], Road],
    first: Sequence[float],
    priors: Sequence[tuple[int, float, float]],
) -> Solution:
    """The unknowns that `road` makes a road of, from a first guess; `priors` hold one of them, by
    its place, at a value with a standard deviation. Every run's first speed is unknown too.

    The scatter of a speed is that of the rows, widened where errors of neighbouring rows go
    together: n rows that remember each other by r are worth n (1 - r)/(1 + r).
    """
    import numpy as np
    from scipy.optimize import least_squares

    count = len(first)

    def errors(unknown: np.ndarray) -> list[np.ndarray]:
        here = road(unknown[:count])
        starts = zip(runs, unknown[count:], strict=True)
        return [
            speeds(run.time, start, vehicle.force(here, run.way), vehicle.accelerated_mass)
            - run.speed
            for run, start in starts
        ]

    def weighed(unknown: np.ndarray) -> np.ndarray:
        held = [(unknown[at] - value) / sigma for at, value, sigma in priors]
        return np.concatenate([np.concatenate(errors(unknown)) / scatter, held])

    scatter = FIRST_SCATTER
    unknown = np.array([*first, *(run.speed[0] for run in runs)])
    typical = np.abs(unknown) + 1e-3
    tight = {"xtol": 1e-12, "ftol": 1e-12, "gtol": 1e-12, "jac": "3-point", "x_scale": typical}
    for _ in range(ROUNDS):
        found = least_squares(weighed, unknown, **tight)
        unknown = found.x
        bare, memory = _scatter(errors(unknown), len(unknown) - len(priors))
        wider = max(bare * np.sqrt((1 + memory) / (1 - memory)), LEAST_SCATTER)
        settled = abs(wider / scatter - 1) < SETTLED
        scatter = wider
        if settled:
            break
    inverse = np.linalg.pinv(found.jac * typical)  # of columns of one size
    covariance = (inverse @ inverse.T * np.outer(typical, typical))[:count, :count]
    return Solution(unknown[:count], covariance, unknown[count:], bare, memory)


def _scatter(errors: list[np.ndarray], unknowns: int) -> tuple[float, float]:
    """Standard deviation of one row, and the correlation of neighbouring rows."""
    import numpy as np

    squares = sum(float(one @ one) for one in errors)
    rows = sum(map(len, errors))
    beside = sum(float(one[1:] @ one[:-1]) for one in errors)
    memory = min(max(beside / squares, 0.0), 0.99) if squares > 0 and rows > 30 else 0.0
    return np.sqrt(squares / max(rows - unknowns, 1)), memory
