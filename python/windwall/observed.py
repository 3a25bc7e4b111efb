"""What was seen beside what the model says."""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache, lru_cache
from math import hypot
from typing import TYPE_CHECKING, Any, NamedTuple

from windwall import _core
from windwall.measures import Measure
from windwall.quantities import si

if TYPE_CHECKING:
    from windwall.outcome import Outcome
    from windwall.scenario import Scenario

FAR_OFF = 2  # standard deviations
# Where an answer has the number that an observation names.
RESULTS = {
    "gear": "road/gear",
    "engine_speed": "engine/speed",
    "boost": "manifold/boost",
    "charge_temperature": "manifold/temperature",
    "knock": "knock/margin",
}
# Standing for themselves: what else was true while the rest was seen at full throttle.
CONDITIONS = {"speed", "engine_speed", "gear"}
OCTANE = Measure("plain number", "")


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

    def model(self, answer: Outcome | None) -> float | None:
        """The same number of an answer."""
        if answer is None or not answer.answered:
            return None
        if self.key == "speed":
            return answer.goal_speed  # type: ignore[attr-defined]
        return answer.point[RESULTS[self.key]]

    def ask(self, scenario: Scenario | None) -> Outcome | None:
        """Asks a scenario about the situation that was observed."""
        if scenario is None or self.at_top_speed:
            return scenario and scenario.brief_top_speed()
        speed = self.entry["speed"]
        road_speed = si(speed[0]) if speed else None
        return scenario.operating_point(si(self.engine_speed), road_speed=road_speed)


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
        if self.sigma is None and self.key != "knock":
            return None
        spread = hypot(self.sigma or 0.0, self.model_sigma)
        return self.fact.above(self.model) / spread if spread else None

    @property
    def far(self) -> bool:
        return self.off is not None and abs(self.off) > FAR_OFF


@cache
def _measure(key: str) -> Measure:
    row = _core.observed_rows()["rows"][key]
    return Measure(row["dimension"], row["unit"])


def facts(scenario: Scenario) -> Iterator[Fact]:
    """Everything that was observed and that the model has a number for."""
    for entry in scenario.observed:
        top = entry["what"] == "top speed"
        if not top and not entry["engine_speed"]:
            continue
        for key, value in entry.items():
            if isinstance(value, tuple) and (top or key not in CONDITIONS):
                yield Fact(entry, key, *value)
            elif key == "knock" and value != "not listened for":
                yield Fact(entry, key, value, None)


@lru_cache(maxsize=16)
def compare(scenario: Scenario) -> tuple[Compared, ...]:
    """Every fact beside the model, which is asked again at the knock anchors either way."""
    answers: dict[tuple, list[Outcome | None]] = {}
    found = []
    for fact in facts(scenario):
        if fact.situation not in answers:
            answers[fact.situation] = [fact.ask(one) for one in scenario.at_knock_anchors()]
        low, model, high = (fact.model(answer) for answer in answers[fact.situation])
        if model is not None:
            found.append(Compared(fact, model, _anchor_sigma(fact, scenario, low, model, high)))
    return tuple(found)


def _anchor_sigma(
    fact: Fact, scenario: Scenario, low: float | None, model: float, high: float | None
) -> float:
    if fact.key == "knock":
        return scenario.knock_sigma
    if fact.key == "gear":
        return 0.0
    return max((abs(one - model) for one in (low, high) if one is not None), default=0.0)
