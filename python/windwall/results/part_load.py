"""The engine held by its pedal: at a road speed, or idling."""

from __future__ import annotations

from windwall.results.operating_point import OperatingPoint

__all__ = ["BeyondGears", "PartLoad"]


class PartLoad(OperatingPoint):
    """The pedal that holds a road speed or an idle, and what it costs."""

    __slots__ = ()
    question = "part_load"

    @property
    def idles(self) -> bool:
        """Whether the engine turns alone."""
        return self["gear"] is None

    @property
    def fuel_per_metre(self) -> float | None:
        """kg of petrol for a metre of road; None while it idles or without an answer."""
        if self.idles or self["petrol"] is None or not self["road_speed"]:
            return None
        return float(self["petrol"] / self["road_speed"])


class BeyondGears(PartLoad):
    """No gear was asked for and the engine turns in none of them; `gear` comes nearest."""

    __slots__ = ()
