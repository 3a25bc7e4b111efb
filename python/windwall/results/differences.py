"""What two scenarios differ in."""

from __future__ import annotations

from dataclasses import dataclass
from typing import NamedTuple

from windwall.results.views import Documented

__all__ = ["Difference", "Differences"]


class Difference(NamedTuple):
    """One entry that differs, as typed; None where a file has none."""

    address: str
    before: str | None
    after: str | None
    change: float | None  # m/s, of the first scenario's speed with that alone
    refused: str  # why the first cannot have it alone


@dataclass(frozen=True, repr=False)
class Differences(Documented):
    """Two scenarios, entry by entry. SI."""

    title: str
    other: str
    system: str  # of units
    speed: float | None
    other_speed: float | None
    found: tuple[Difference, ...]
    source: str  # the name of the first one's file
    other_source: str

    answered = True
