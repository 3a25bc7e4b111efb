"""Where the model is asked for what was observed, and an answer that is one number."""

from __future__ import annotations

from typing import NamedTuple

__all__ = ["Alone", "Apart", "Situation"]


class Apart(NamedTuple):
    """What was done where no engine speed was held: by the key that was observed of it, SI."""

    key: str
    speed: float | None = None
    gear: float | None = None
    distance: float | None = None
    time: float | None = None
    part: str = ""
    pressure: float | None = None
    back: bool = False
    coasting: tuple[tuple[float, float], ...] = ()  # time and speed


class Alone(NamedTuple):
    """An answer that is one number, SI."""

    value: float
    answered: bool = True


class Situation(NamedTuple):
    """Where the model is asked, SI: at the end of its own pull, or held at what was driven. None is
    what nobody states; the model then has its own.
    """

    retard: float | None = None  # the spark that was driven
    engine_speed: float | None = None
    gear: float | None = None  # where no engine speed was read: with the speed it makes one
    road_speed: float | None = None
    apart: Apart | None = None

    @property
    def held(self) -> bool:
        return self.engine_speed is not None or self.gear is not None
