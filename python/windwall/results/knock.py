"""How likely detonation is: a band around a margin, never a promise."""

from __future__ import annotations

import math
from typing import Any, NamedTuple

from windwall import _core
from windwall.results.views import sentence

__all__ = ["LEAST_RETARD", "OTHER_BAND", "KnockBand", "beyond_bands", "held_late"]

LEAST_RETARD = math.radians(0.1)  # below which nothing is held back: no ignition is set so finely
OTHER_BAND = 5.0  # octane numbers, to which the second opinion is no better known than the rule


def held_late(retard: float | None) -> float:
    """How late a spark is, rad; nothing where it is so by less than anybody could set."""
    return retard if retard is not None and abs(retard) >= LEAST_RETARD else 0.0


def beyond_bands(apart: float, sigma: float) -> bool:
    """Whether two opinions, so many octane numbers apart, contradict each other."""
    return abs(apart) > sigma + OTHER_BAND


class KnockBand(NamedTuple):
    """A margin in octane numbers and one standard deviation of it."""

    margin: float
    sigma: float

    @classmethod
    def of(cls, knock: Any, sigma: float) -> KnockBand | None:
        """The band of a solved point; none where the engine says nothing of knock."""
        return None if knock is None else cls(knock.margin, sigma)

    @property
    def chance(self) -> float:
        """How probable detonation is when the margin is normal about its middle."""
        return _core.physics.knock_probability(self.margin, self.sigma)

    @property
    def word(self) -> str:
        """likely, marginal or unlikely; there is no other word."""
        if self.margin <= 0:
            return "likely"
        return "marginal" if self.margin < self.sigma else "unlikely"

    @property
    def sentence(self) -> str:
        """The word, the numbers, and how many of a hundred such engines would knock."""
        return sentence(self)
