"""What a reader of an answer needs to know about the scenario that was asked."""

from __future__ import annotations

from typing import Any, NamedTuple

from windwall.quantities.measures import LENGTH


class ScenarioInfo(NamedTuple):
    """What an answer repeats of its scenario. SI."""

    title: str
    system: str  # of units
    conditions: str
    knock_sigma: float
    goal_speed: float | None = None
    run_up: float | None = None
    mass: float | None = None
    observed: list[dict[str, Any]] = []  # noqa: RUF012  # never changed
    gears: int = 1

    @property
    def run_up_text(self) -> str:
        """The length of the goal's road."""
        return "" if self.run_up is None else LENGTH.text(self.run_up, self.system)

    def in_gear(self, gear: int) -> str:
        """The gear with a space before it; nothing where the vehicle has only one."""
        return f" in gear {gear}" if self.gears > 1 else ""

    @property
    def observed_speed(self) -> float | None:
        """The fastest that the vehicle was seen to go, m/s."""
        return max((seen["speed"][0] for seen in self.observed if seen["speed"]), default=None)
