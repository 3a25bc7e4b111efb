"""What was seen beside what the model says."""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache
from typing import TYPE_CHECKING, Any, NamedTuple

from windwall import _core
from windwall.measures import Measure

if TYPE_CHECKING:
    from windwall.top_speed import TopSpeed

# Where the answer to "top speed" has the number that an observation of it names.
RESULTS = {
    "gear": "road/gear",
    "engine_speed": "engine/speed",
    "boost": "manifold/boost",
    "charge_temperature": "manifold/temperature",
}


class Compared(NamedTuple):
    """One observed number beside the model's. SI."""

    key: str
    observed: float
    sigma: float | None
    model: float
    measure: Measure

    @property
    def off(self) -> float | None:
        """How many standard deviations of the observation the model lies above it."""
        return (self.model - self.observed) / self.sigma if self.sigma else None


@cache
def _measure(key: str) -> Measure:
    row = _core.observed_rows()["rows"][key]
    return Measure(row["dimension"], row["unit"])


def compare(answer: TopSpeed, observed: list[dict[str, Any]]) -> Iterator[Compared]:
    """Every number that was observed at top speed."""
    for entry in observed:
        if entry["what"] != "top speed":
            continue
        for key, value in entry.items():
            if isinstance(value, tuple):
                model = answer.goal_speed if key == "speed" else answer.point[RESULTS[key]]
                yield Compared(key, *value, model, _measure(key))
