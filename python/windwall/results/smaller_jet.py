"""Sprays that take far more than is usual, and what smaller jets would make of the speed."""

from __future__ import annotations

from typing import Any, NamedTuple

from windwall.results.views import document, sentence

__all__ = ["LEAST_GAIN", "SmallerJet", "Tried"]

LEAST_GAIN = 0.1 / 3.6  # m/s, the last digit of a speed that is shown


class Tried(NamedTuple):
    """The vehicle with a jet of some flow. SI."""

    share: float  # of the flow of the jet that is fitted
    flow: float  # m3/s, its rated one
    speed: float  # m/s
    retard: float | None
    margin: float | None  # octane numbers to spare of knock, at the balance speed


class SmallerJet(NamedTuple):
    """A spray that takes far more than is usual, beside smaller jets. SI."""

    part: str
    system: str  # of units
    of_fuel: float  # mass of its liquid over that of the fuel
    fitted: Tried
    tried: tuple[Tried, ...]  # the smallest first

    @property
    def sentence(self) -> str:
        """What it comes to."""
        return sentence(self)

    @property
    def best(self) -> Tried | None:
        """The fastest smaller jet; None where none is faster than the one that is fitted."""
        best = max(self.tried, key=lambda one: one.speed, default=None)
        gains = best is not None and best.speed >= self.fitted.speed + LEAST_GAIN
        return best if gains else None

    def to_dict(self) -> dict[str, Any]:
        """Everything as plain numbers in SI, ready for JSON."""
        return document(self)
