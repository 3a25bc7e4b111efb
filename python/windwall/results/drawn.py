"""What common draws say: of one vehicle's speed, and of a ranking's gains and sets."""

from __future__ import annotations

from dataclasses import dataclass
from typing import NamedTuple

import numpy as np

from windwall.quantities.measures import Measure
from windwall.results.views import Documented

__all__ = [
    "NINE_OF_TEN", "Array", "AtTheEnd", "Beats", "DrawnGain", "DrawnRanking", "DrawnSet",
    "DrawnSpeed", "Spread", "share", "share_error",
]  # fmt: skip

Array = np.ndarray
NINE_OF_TEN = (0.05, 0.95)


class Spread(NamedTuple):
    """A number over the worlds that have it, SI; None where too few do."""

    mean: float
    sigma: float  # one standard deviation
    low: float  # 1 in 20 is lower
    high: float  # 1 in 20 is higher
    worlds: int  # that have it

    @classmethod
    def of(cls, values: Array) -> Spread | None:
        """Of one number for each world, NaN where it has none."""
        known = values[np.isfinite(values)]
        if len(known) < 2:
            return None
        low, high = np.quantile(known, NINE_OF_TEN)
        mean, sigma = known.mean(), known.std(ddof=1)
        return cls(float(mean), float(sigma), float(low), float(high), len(known))


def share(happens: Array) -> float | None:
    """In which part of the worlds something is so."""
    return float(happens.mean()) if len(happens) else None


def share_error(chance: float, worlds: int) -> float:
    """Standard error of a share of so many worlds, as if each were drawn by itself. What was
    measured of even draws is half of it.
    """
    return float(np.sqrt(chance * (1 - chance) / worlds))


class AtTheEnd(NamedTuple):
    """An input that is taken at the end of its range, so that it can be wrong one way only."""

    address: str
    measure: Measure
    stated: float  # SI
    middle: float  # SI, half of the vehicles described like this have less
    change: float  # m/s, of the speed with that alone


@dataclass(frozen=True, repr=False)
class DrawnSpeed(Documented):
    """How fast vehicles described like one are, each with a value for all that is uncertain."""

    title: str
    system: str  # of units
    goal_speed: float | None  # m/s
    asked: int  # worlds
    seed: int
    speeds: Array  # m/s, of the worlds that were solved; NaN where there is no answer
    ends: dict[str, int]  # how many worlds ended in which way
    stated: float | None  # m/s, with everything as stated or assumed
    one_sided: tuple[AtTheEnd, ...]  # what counts most first
    all_moved: float  # m/s, of the speed with all of those in their middles
    observed: int = 0  # entries of the file, which these vehicles need not agree with

    @property
    def middle(self) -> float | None:
        """m/s, that half of these vehicles reach."""
        known = self.speeds[np.isfinite(self.speeds)]
        return float(np.median(known)) if len(known) else None

    @property
    def spread(self) -> Spread | None:
        return Spread.of(self.speeds)

    @property
    def chance_of_goal(self) -> float | None:
        """Of the worlds with an answer; None without a goal."""
        known = self.speeds[np.isfinite(self.speeds)]
        return None if self.goal_speed is None else share(known >= self.goal_speed)

    @property
    def answered(self) -> bool:
        return self.spread is not None


class DrawnGain(NamedTuple):
    """What an upgrade adds over the worlds, m/s; None where it has no such number."""

    id: str
    alone: Spread | None
    last: Spread | None
    share: Spread | None
    helps: float | None  # chance that it adds anything, alone


class DrawnSet(NamedTuple):
    """A set of upgrades over the worlds."""

    upgrades: tuple[str, ...]
    cost: float  # as stated
    cost_sigma: float  # one standard deviation, by the +/- of what is bought
    within_budget: float | None  # chance that it costs no more; None without a budget
    speed: Spread | None  # m/s
    reaches_goal: float | None  # chance, over the worlds with an answer; None without a goal
    counted: int  # worlds that this chance is of; more than those of the rest where it is told
    behind: Spread | None  # the fastest of all that were drawn in a world, less this one


class Beats(NamedTuple):
    """The chance that one is better than the other, over the worlds that have both; of more of
    them than a mean is taken over.
    """

    first: str
    second: str
    chance: float
    worlds: int


@dataclass(frozen=True, repr=False)
class DrawnRanking(Documented):
    """A ranking in the same worlds for every set."""

    system: str
    currency: str
    asked: int  # worlds
    worlds: int  # solved, where it was stopped
    seed: int
    goal_speed: float | None
    told_apart: float  # m/s, of a lead that can be seen
    gains: tuple[DrawnGain, ...]  # in the order of the menu
    sets: tuple[DrawnSet, ...]  # the base first, then by their mean speed
    by_gain: Beats | None  # of the two upgrades that gain most alone
    by_speed: Beats | None  # of the two sets that are fastest in the mean
    fastest: tuple[str, ...] | None  # in the mean
    recommended: tuple[str, ...] | None  # the cheapest that cannot be told from it
    regret: float | None  # m/s, what choosing it costs in the mean against knowing each world
    could_win: int  # sets that were within reach of the fastest
    drawn_whole: int  # of these, in all worlds
    ends: dict[str, int]  # how many solutions ended in which way

    @property
    def interrupted(self) -> bool:
        return self.worlds < self.asked

    def gain(self, upgrade: str) -> DrawnGain:
        return next(one for one in self.gains if one.id == upgrade)

    def set_of(self, upgrades: tuple[str, ...]) -> DrawnSet | None:
        """A set by its upgrades, if it was drawn."""
        wanted = frozenset(upgrades)
        return next((one for one in self.sets if frozenset(one.upgrades) == wanted), None)
