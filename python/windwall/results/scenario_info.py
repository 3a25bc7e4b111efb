"""What a reader of an answer needs to know about the scenario that was asked."""

from __future__ import annotations

from typing import Any, NamedTuple

__all__ = ["RatedFigure", "ScenarioInfo"]


class RatedFigure(NamedTuple):
    """What the maker printed of the stock engine, and what the model gives for it. SI."""

    key: str  # torque or power
    rated: float
    met: float
    before: float  # by its class alone
    unreconciled: bool


class ScenarioInfo(NamedTuple):
    """What an answer repeats of its scenario. SI."""

    title: str
    system: str  # of units
    conditions: dict[str, float | None]  # the day and the grade, by their addresses
    knock_sigma: float
    goal_speed: float | None = None
    run_up: float | None = None
    mass: float | None = None
    observed: list[dict[str, Any]] = []  # noqa: RUF012  # never changed
    gears: int = 1
    spark_is_chosen: bool = True  # by the model, where nobody states it
    rated: tuple[RatedFigure, ...] = ()  # of the stock engine, before any change
    accessories_stated: bool = True  # or part of a torque that was measured
    plate_speed: float | None = None  # rad/s, the highest that the rated figures are stated at
    radius_known_to: float = 0.0  # share of the tyres' rolling radius, one standard deviation

    @property
    def driven_retard(self) -> float | None:
        """Of the spark that was driven to the first top speed with one stated, rad late."""
        seen = (one for one in self.observed if one["what"] == "top speed" and one["retard"])
        return next((one["retard"][0] for one in seen), None)

    @property
    def observed_speed(self) -> float | None:
        """The fastest that the vehicle was seen to go, m/s."""
        return max((seen["speed"][0] for seen in self.observed if seen["speed"]), default=None)
