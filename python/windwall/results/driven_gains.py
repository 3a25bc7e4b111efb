"""What each upgrade is worth in a run that is driven: seconds to a mark, or speed at the end."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any, NamedTuple

from windwall.quantities.measures import SPEED, TIME, Measure
from windwall.results.gearing import Mark
from windwall.results.views import Documented, frame

__all__ = ["DrivenGain", "DrivenGains"]


class DrivenGain(NamedTuple):
    """One upgrade with what it requires, beside what it requires alone. SI; None where the run has
    no answer, with the reason.
    """

    id: str
    title: str
    before: float | None
    fitted: float | None
    refusal: str = ""

    @property
    def change(self) -> float | None:
        """What it adds to the time or to the speed."""
        if self.before is None or self.fitted is None:
            return None
        return self.fitted - self.before


@dataclass(frozen=True, repr=False)
class DrivenGains(Documented):
    """Every upgrade of the menu by a driven run, what gains most first. SI."""

    title: str
    system: str  # of units
    mark: Mark | None  # None: the speed at the end of the goal's road, or where it gets no faster
    run_up: float | None
    stock: float | None  # as it is
    gains: tuple[DrivenGain, ...]

    @property
    def of_merit(self) -> Measure:
        """What is counted: a speed or a time."""
        return SPEED if self.mark is None else TIME

    @property
    def frame(self) -> Any:
        """One row for each upgrade, a pandas DataFrame in SI."""
        return frame(self)
