"""A run from standstill at full throttle, and how far its speed falls short of the quick answer."""

from __future__ import annotations

from typing import Any, NamedTuple

from windwall.results.views import document, sentence

__all__ = ["Shortfall", "StandingStart"]


class StandingStart(NamedTuple):
    """Where a run from standstill ended, SI, and by which word of the drive."""

    time: float
    distance: float
    speed: float
    ended: str


class Shortfall(NamedTuple):
    """A driven run beside the quick top speed. SI."""

    system: str  # of units
    quick: float  # m/s, of `top_speed()`: after its run-up where the goal names a road
    run_up: float | None  # m, the road of both
    run: StandingStart  # with launch, shifts and what warms up

    @property
    def driven(self) -> float:
        """The speed that the run ends at, m/s."""
        return self.run.speed

    @property
    def speed(self) -> float:
        """m/s by which the driven run ends below the quick answer."""
        return self.quick - self.driven

    @property
    def sentence(self) -> str:
        """What it comes to."""
        return sentence(self)

    def to_dict(self) -> dict[str, Any]:
        """Everything as plain numbers in SI, ready for JSON."""
        return document(self)
