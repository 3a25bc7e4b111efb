"""What was seen beside what the model says, and what would explain a difference."""

from __future__ import annotations

from functools import cache
from math import degrees, hypot
from typing import Any, NamedTuple

from windwall import _core
from windwall.quantities.measures import Measure
from windwall.quantities.uncertain_input import UncertainInput
from windwall.results.values import Values

CHALLENGED = 1  # standard deviations, beyond which an explanation is looked for
FAR_OFF = 2  # likewise, beyond which the model is worth less
# Where an answer has the number that an observation names.
RESULTS = {
    "gear": "road/gear",
    "engine_speed": "engine/speed",
    "boost": "manifold/boost",
    "charge_temperature": "manifold/temperature",
    "knock": "knock/margin",
    "retard": "knock/retard",
}
SETTINGS = {"retard"}  # what a driver chose: shown beside the model's own, and no evidence
OCTANE = Measure("plain number", "")


@cache
def _measure(key: str) -> Measure:
    row = _core.observed_rows()["rows"][key]
    return Measure(row["dimension"], row["unit"])


def listened_for_knock(entry: dict[str, Any]) -> bool:
    return entry["knock"] != "not listened for"


def heard_tells(entry: dict[str, Any], spark_is_chosen: bool) -> bool:
    """Whether what was heard of knock says anything: not without the spark that was driven."""
    return listened_for_knock(entry) and (entry["retard"] is not None or not spark_is_chosen)


class Fact(NamedTuple):
    """One thing that was observed: SI, or the word for what was heard of knock."""

    entry: dict[str, Any]
    key: str
    observed: float | str
    sigma: float | None

    @property
    def at_top_speed(self) -> bool:
        return self.entry["what"] == "top speed"

    @property
    def engine_speed(self) -> float:
        """rad/s, of something seen at full throttle."""
        return self.entry["engine_speed"][0]

    @property
    def situation(self) -> tuple:
        """Equal for facts that one answer serves."""
        return () if self.at_top_speed else (self.engine_speed, self.entry["speed"])

    @property
    def measure(self) -> Measure:
        return OCTANE if self.key == "knock" else _measure(self.key)

    def above(self, model: float) -> float:
        """By how much the model's number lies above what was seen. Knock heard means a margin of
        zero or less, knock not heard one of zero or more, knock at the edge none at all.
        """
        if not isinstance(self.observed, str):
            return model - self.observed
        heard = {"heard": max(model, 0.0), "not heard": min(model, 0.0)}
        return heard.get(self.observed, model)

    def model(self, answer: Values | None) -> float | None:
        """The same number of an answer."""
        if answer is None or not answer.answered:
            return None
        if self.key == "speed":
            return answer.goal_speed
        if RESULTS[self.key].startswith("knock/") and answer.point.knock is None:
            return None
        if self.key == "knock" and self.entry["retard"] is not None:
            return self.driven_margin(answer.point.knock)
        return answer.point[RESULTS[self.key]]

    def driven_margin(self, knock: Any) -> float:
        """Octane numbers that the spark which was driven leaves, one for each degree."""
        return knock.margin_at_best_spark + degrees(self.entry["retard"][0])


class Compared(NamedTuple):
    """One observed fact beside the model's. SI; knock is a word beside a margin."""

    fact: Fact
    model: float
    model_sigma: float  # of the model's number, from not knowing where the engine knocks

    @property
    def key(self) -> str:
        return self.fact.key

    @property
    def observed(self) -> float | str:
        return self.fact.observed

    @property
    def sigma(self) -> float | None:
        """One standard deviation of what was observed; None where it is not stated."""
        return self.fact.sigma

    @property
    def measure(self) -> Measure:
        return self.fact.measure

    @property
    def off(self) -> float | None:
        """How many standard deviations the model lies above, those of the observation and of the
        knock anchor taken together.
        """
        if self.key in SETTINGS or (self.sigma is None and self.key != "knock"):
            return None
        return self.fact.above(self.model) / self.spread if self.spread else None

    @property
    def spread(self) -> float:
        """One standard deviation of the observation and of the knock anchor together."""
        return hypot(self.sigma or 0.0, self.model_sigma)

    def far_by(self, gap: float) -> bool:
        """Whether a model with that gap to the observation would be far off."""
        return abs(gap) > FAR_OFF * self.spread

    @property
    def far(self) -> bool:
        return self.off is not None and abs(self.off) > FAR_OFF

    @property
    def challenged(self) -> bool:
        """Whether it contradicts the model by enough to ask what would explain it."""
        return self.off is not None and abs(self.off) > CHALLENGED


class Explanation(NamedTuple):
    """An input and how many of its standard deviations it has to be moved."""

    input: UncertainInput
    deviations: float
    gains: tuple[float | None, ...] = ()  # of the first upgrades alone with it moved there, m/s
    speeds: dict[str, float | None] = {}  # noqa: RUF012  # of the sets a ranking names, likewise

    @property
    def value(self) -> float:
        """What it would have to be, SI."""
        return self.input.value + self.deviations * self.input.sigma


class Explained(NamedTuple):
    """A fact that contradicts the model, and the inputs of which each would explain it."""

    compared: Compared
    inputs: list[Explanation]


class FirstGain(NamedTuple):
    """One of the upgrades that gain most alone: with the value that it chose, and m/s."""

    label: str
    gain: float


class Diagnosis(NamedTuple):
    """The model held against everything that was observed."""

    compared: tuple[Compared, ...]
    explained: tuple[Explained, ...]  # of those that are challenged
    first: tuple[FirstGain, ...] = ()  # of a ranking; each explanation has the same ones' gains
