"""Sets of upgrades by a run that is driven: a time from standstill, or the speed at its end."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any, NamedTuple

from windwall.quantities.measures import SPEED, TIME, Measure
from windwall.results.gearing import Mark
from windwall.results.ranking import UpgradeSet
from windwall.results.values import Values
from windwall.results.views import Documented, frame, sentences

__all__ = ["DrivenRanking", "DrivenSet", "Pruning"]


class DrivenSet(NamedTuple):
    """One set of upgrades and what its run comes to, SI; None where it does not get there."""

    fitted: UpgradeSet
    merit: float | None  # a time or a speed
    refusal: str = ""
    holds: bool = True  # every limit, with an answer to the end; as it is, a vehicle may not


class Pruning(NamedTuple):
    """What was not driven, and how that was held against the road."""

    candidates: int  # sets that hold every limit and can be paid
    driven: int
    checked: int  # of those passed over, driven all the same
    missed: int  # of the checked, those that were the best for their price after all
    nearest: float | None  # how far the best checked one stayed behind, SI
    spread: float  # of the runs about a straight line over the quick speed, SI


@dataclass(frozen=True, repr=False)
class DrivenRanking(Documented):
    """The best sets for every price by a driven run. SI."""

    title: str
    system: str  # of units
    currency: str
    mark: Mark | None  # None: the speed at the end of the goal's road, or where it gets no faster
    run_up: float | None
    goal: float | None  # the time or the speed that is wanted
    stock: DrivenSet
    runs: tuple[DrivenSet, ...]  # everything that was driven, the best first
    best_for_price: tuple[DrivenSet, ...]  # from nothing on, each better than all that cost no more
    pruning: Pruning
    complete: bool  # False: stopped, or so many could still win that not all were driven
    passed: tuple[Values, ...] = ()  # limits that the vehicle as it is passes in a long pull
    left_aside: int = 0  # sets that can be paid, but pass a limit or have no answer to the end
    stopped: bool = False

    @property
    def of_merit(self) -> Measure:
        """What is ranked by: a speed or a time."""
        return SPEED if self.mark is None else TIME

    @property
    def answered(self) -> bool:
        """Whether any run got there."""
        return any(one.merit is not None for one in self.runs)

    @property
    def interrupted(self) -> bool:
        """Whether somebody stopped it; what was driven until then is here."""
        return self.stopped

    @property
    def best(self) -> DrivenSet | None:
        """The best of those that hold every limit; None where none does, or none gets there."""
        return next((one for one in self.runs if one.holds and one.merit is not None), None)

    @property
    def cheapest_for_goal(self) -> DrivenSet | None:
        """The cheapest set that was driven and reaches the goal."""
        return next((one for one in self.best_for_price if self.reaches(one)), None)

    def reaches(self, one: DrivenSet) -> bool:
        """Whether a set is as good as the goal asks for, whatever limits it passes."""
        if self.goal is None or one.merit is None:
            return False
        return one.merit >= self.goal if self.mark is None else one.merit <= self.goal

    def gain(self, one: DrivenSet) -> float | None:
        """m/s faster or s shorter than as it is."""
        if one.merit is None or self.stock.merit is None:
            return None
        gain = one.merit - self.stock.merit
        return gain if self.mark is None else -gain

    @property
    def frame(self) -> Any:
        """Every set that was driven, a pandas DataFrame in SI, the best first."""
        return frame(self)

    @property
    def sentences(self) -> list[str]:
        """What it comes to, and how far it can be trusted."""
        return sentences(self)
