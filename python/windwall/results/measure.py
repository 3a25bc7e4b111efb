"""What to measure next, and what that is worth."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any, NamedTuple

from windwall.quantities.measures import Measure
from windwall.results.views import Readable, Worded, frame, sentence

__all__ = ["LEAST_GAIN", "MeasurePlan", "Taught", "ToMeasure", "Worth"]

LEAST_GAIN = 0.05 / 3.6  # m/s, less than the last digit of a speed that is shown


@dataclass(frozen=True, repr=False)
class MeasurePlan(Readable):
    """What it will cost, known once a few worlds are done."""

    draws: int
    vehicles: int  # of each world, and one more that is read
    seconds_of_a_draw: float  # on this machine just now

    @property
    def speeds(self) -> int:
        """How many top speeds are solved."""
        return self.draws * (self.vehicles + 1)

    @property
    def seconds(self) -> float:
        """About how long that takes."""
        return self.draws * self.seconds_of_a_draw

    @property
    def sentence(self) -> str:
        """The same, to be read while one waits."""
        return sentence(self)


class Taught(NamedTuple):
    """What a reading teaches. What is `left` is a standard deviation after over before."""

    speed_left: float
    ahead_left: float | None  # of the difference between the two best sets
    gain: float | None  # m/s, what choosing after it is worth
    error: float | None  # of that, one standard deviation, where it is an estimate over draws


class Worth(NamedTuple):
    """One thing to measure."""

    id: str
    title: str
    addresses: tuple[str, ...]
    sigmas: tuple[float, ...]  # of the sensor, SI
    measures: tuple[Measure, ...]
    cost: float  # EUR
    hours: float
    care: str
    by_lines: Taught  # by means and covariances
    by_curves: Taught  # without straight lines, by which it is judged

    @property
    def pays(self) -> bool:
        """Whether choosing after it is worth something that draws can tell from nothing."""
        gain, error = self.by_curves.gain or 0.0, self.by_curves.error or 0.0
        return gain > max(LEAST_GAIN, 2 * error)


@dataclass(frozen=True, repr=False)
class ToMeasure(Worded):
    """What a builder could measure, what teaches most first. SI."""

    title: str
    system: str  # of units
    vehicle: str  # whose speed is meant: a set of upgrades, or as it is
    speed: float  # of that
    sigma: float  # of the speed, one standard deviation
    first: str | None  # the two best sets
    second: str | None
    ahead: float | None  # of the first over the second
    ahead_sigma: float | None
    could_be_first: int  # sets that could be first
    perfect: float | None  # m/s, what choosing would be worth if everything were known
    price: float | None  # money for one m/s, by the recommended set
    budget: float | None
    currency: str
    asked: int  # draws
    draws: int  # of these, done: fewer where it was stopped
    refused: int  # of those, worlds without an answer in every set
    rows: tuple[Worth, ...]

    answered = True  # a vehicle without a speed raises `NoAnswer` before

    @property
    def interrupted(self) -> bool:
        """Whether it was stopped before all draws were done."""
        return self.draws < self.asked

    @property
    def frame(self) -> Any:
        """One row for each, a pandas DataFrame in SI."""
        return frame(self)

    def money(self, gain: float | None) -> float | None:
        """What a gain would cost in upgrades."""
        return None if gain is None or self.price is None else gain * self.price
