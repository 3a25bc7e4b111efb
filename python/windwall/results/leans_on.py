"""What an answer leans on: shares of its variance, by the numbers that are not known exactly."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any, NamedTuple

from windwall.results.views import Discussed, Readable, frame, sentence

__all__ = ["FEWEST_ROWS", "ROWS", "Lean", "Leaning", "LeansOn", "LeansPlan"]

ROWS = 512  # of a design, unless stated
FEWEST_ROWS = 16


@dataclass(frozen=True, repr=False)
class LeansPlan(Readable):
    """What it will cost, known after every number was moved alone."""

    rows: int
    worlds_of_a_row: int
    vehicles: int  # of each world
    seconds_of_a_speed: float  # on this machine just now

    @property
    def speeds(self) -> int:
        """How many top speeds are solved."""
        return self.rows * self.worlds_of_a_row * self.vehicles

    @property
    def seconds(self) -> float:
        """About how long that takes."""
        return self.speeds * self.seconds_of_a_speed

    @property
    def sentence(self) -> str:
        """The same, to be read while one waits."""
        return sentence(self)


class Lean(NamedTuple):
    """A number that is not known exactly, or several that are correlated; shares of the variance
    with their standard errors.
    """

    addresses: tuple[str, ...]
    title: str  # empty: all the others together
    step: float  # m/s that it moves the answer by one standard deviation, alone
    first: float  # share that goes back to it alone
    first_error: float
    total: float  # the same with everything that it does together with others
    total_error: float


class Leaning(NamedTuple):
    """One answer; nothing of it is known where too few worlds have it or none differs."""

    of: str  # speed or difference
    worlds: int  # rows of the design that were used
    unanswered: int  # rows left out, since a world in them has no answer
    mean: float | None  # m/s
    sigma: float | None  # m/s, one standard deviation
    leans: tuple[Lean, ...]  # what it leans on most first; all others last


@dataclass(frozen=True, repr=False)
class LeansOn(Discussed):
    """What the speed leans on, and the difference of two sets where they are named."""

    title: str
    system: str  # of units
    plan: LeansPlan
    rows: int  # done
    pair: tuple[tuple[str, ...], ...]  # the two that are compared, by their upgrades
    leanings: tuple[Leaning, ...]

    @property
    def answered(self) -> bool:
        return any(one.leans for one in self.leanings)

    @property
    def interrupted(self) -> bool:
        """Whether it was stopped before all rows were done."""
        return self.rows < self.plan.rows

    @property
    def speed(self) -> Leaning:
        """What the speed as it is leans on."""
        return self.leanings[0]

    @property
    def difference(self) -> Leaning | None:
        """What the first set's speed less the second's leans on."""
        return self.leanings[1] if len(self.leanings) > 1 else None

    @property
    def table(self) -> Any:
        """One row for each number of each answer, a pandas DataFrame."""
        return frame(self)
