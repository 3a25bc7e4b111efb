"""Rolling to a stop without drive: how it goes, and what was read off a road."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any, NamedTuple

from windwall.results.views import Discussed, Documented

__all__ = ["GRAVITY", "SEPARABLE", "CoastDown", "CoastDownFit", "Estimate", "Rolling"]

GRAVITY = 9.80665  # m/s2
SEPARABLE = 2.5  # highest over lowest speed, below which drag and rolling are not told apart


class CoastDown(NamedTuple):
    """A coast-down of the model, SI: columns of equal length, and what they hold for."""

    time: Any
    distance: Any
    speed: Any
    conditions: dict[str, float]


@dataclass(frozen=True, repr=False)
class Rolling(Documented):
    """A coast-down of the model, to be read. SI."""

    title: str
    system: str  # of units
    run: CoastDown


class Estimate(NamedTuple):
    """A number that was fitted and one standard deviation of it. SI."""

    value: float
    sigma: float


@dataclass(frozen=True, repr=False)
class CoastDownFit(Discussed):
    """Drag area and rolling resistance from coasting down. SI.

    Where the span of speeds is too small to tell the two apart they are None and only the force at
    the middle speed is known. `covariance` is of the names in `names`, in that order.
    """

    system: str  # of units
    drag_area: Estimate | None
    rolling_resistance: Estimate | None
    headwind: Estimate  # of those who drove there
    grade: Estimate  # likewise, rise over run
    force: Estimate  # N at `middle_speed`, still air, on the level
    middle_speed: float
    speeds: tuple[float, float]  # the lowest and the highest
    names: tuple[str, ...]
    covariance: tuple[tuple[float, ...], ...]
    mass: float
    accelerated_mass: float
    air_density: float
    rolling_rise: float  # taken as known: share gained at 100 km/h
    scatter: float  # m/s, of one speed about the fitted run
    memory: float  # correlation of one speed's error with the next one's
    runs: tuple[str, ...]
    both_ways: bool
    start_speeds: tuple[float, ...]

    @property
    def separated(self) -> bool:
        """Whether drag and rolling resistance were told apart."""
        return self.drag_area is not None

    @property
    def correlation(self) -> float | None:
        """Of the drag area with the rolling resistance."""
        if not self.separated:
            return None
        (drag, both, *_), (_, rolling, *_) = self.covariance[:2]
        return both / (drag * rolling) ** 0.5

    def changes(self) -> dict[str, str]:
        """What `car.set` takes of it; nothing where the two were not told apart."""
        if self.drag_area is None or self.rolling_resistance is None:
            return {}
        return {
            "body/drag_area": "{:.8g} ± {:.2g} m2".format(*self.drag_area),
            "body/rolling_resistance": "{:.8g} ± {:.2g}".format(*self.rolling_resistance),
        }
