"""Which gearing is best for a goal, how flat the best is, and how the gears are used with it."""

from __future__ import annotations

from dataclasses import dataclass
from math import inf
from typing import Any, NamedTuple

from windwall.quantities.measures import LENGTH, SPEED, TIME, Measure
from windwall.results.views import Discussed, frame

__all__ = ["FLAT", "NEAR", "BestGearing", "Longer", "Mark", "Shift", "Tried"]

FLAT = 0.002  # share of the best speed or time that nobody notices
NEAR = 0.01  # share within which another peak is worth a thought


class Mark(NamedTuple):
    """What a run is timed to: a speed in m/s or a distance in m, whichever is there."""

    speed: float | None = None
    distance: float | None = None

    @property
    def measure(self) -> Measure:
        return LENGTH if self.speed is None else SPEED

    @property
    def value(self) -> float:
        return self.distance if self.speed is None else self.speed  # type: ignore[return-value]


class Tried(NamedTuple):
    """One value of the gearing: the speed or time with it, SI; None where there is no answer."""

    value: float
    merit: float | None


class Longer(NamedTuple):
    """The nearest longer gearing that reaches a speed, and its own. SI; None where none does."""

    address: str
    measure: Measure
    now: float
    value: float | None
    speed: float | None


class Shift(NamedTuple):
    """Where the next gear pushes as hard as this one, or the engine turns no faster. SI."""

    gear: int  # the one that is left, from 1
    engine_speed: float
    road_speed: float
    at_the_limit: bool


@dataclass(frozen=True, repr=False)
class BestGearing(Discussed):
    """The best value of one address for the highest speed or the least time to a mark. SI."""

    system: str  # of units
    address: str
    measure: Measure
    whole: bool  # counted, as teeth are
    mark: Mark | None  # None: the highest speed, at the end of the road where one is named
    run_up: float | None  # m, that road
    now: Tried
    best: Tried
    tried: tuple[Tried, ...]  # by value
    launch_gear: int | None
    shifts: tuple[Shift, ...]  # with the best
    wanted: int = 0  # values that were to be tried
    stopped: bool = False  # by somebody, before all of them were

    @property
    def interrupted(self) -> bool:
        """Whether somebody stopped it; what was tried until then is here."""
        return self.stopped

    @property
    def peaks(self) -> tuple[Tried, ...]:
        """What is better than its neighbours among those that were tried, the best and others."""
        sign = 1.0 if self.mark is None else -1.0
        worth = [None if one.merit is None else sign * one.merit for one in self.tried]
        found = [-inf, *(-inf if one is None else one for one in worth), -inf]
        return tuple(
            one
            for at, one in enumerate(self.tried, 1)
            if one.merit is not None and found[at - 1] < found[at] >= found[at + 1]
        )

    @property
    def of_merit(self) -> Measure:
        """What is made best: a speed or a time."""
        return SPEED if self.mark is None else TIME

    @property
    def gain(self) -> float | None:
        """m/s gained or s saved over the gearing there is; None where that has no answer."""
        if self.now.merit is None or self.best.merit is None:
            return None
        return abs(self.best.merit - self.now.merit)

    @property
    def flat(self) -> tuple[float, float]:
        """How far down and up the value may go before the best speed or time is missed by the
        share FLAT; of what was tried, and of teeth whole ones.
        """
        at = self.tried.index(self.best)
        return self._flat_end(self.tried[at::-1]), self._flat_end(self.tried[at:])

    def _flat_end(self, outwards: tuple[Tried, ...]) -> float:
        best = self.best.merit or 0.0
        near = FLAT * abs(best)
        end = self.best
        for one in outwards[1:]:
            if one.merit is None:
                break
            loss, before = (abs((each.merit or 0.0) - best) for each in (one, end))
            if loss > near:
                share = 0.0 if self.whole else (near - before) / (loss - before)
                return end.value + share * (one.value - end.value)
            end = one
        return end.value

    @property
    def curve(self) -> Any:
        """Every value that was tried with its speed or time, a pandas DataFrame in SI."""
        return frame(self)
