"""The engine held by its pedal: at a road speed, or idling."""

from __future__ import annotations

from windwall.results.operating_point import OperatingPoint

__all__ = ["PartLoad"]


class PartLoad(OperatingPoint):
    """The pedal that holds a road speed or an idle, and what it costs."""

    __slots__ = ()
    question = "part_load"

    @property
    def idles(self) -> bool:
        """Whether the engine turns alone."""
        return self["gear"] is None
