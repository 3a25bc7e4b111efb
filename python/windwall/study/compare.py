"""Asks the model for every fact that was observed."""

from __future__ import annotations

from collections.abc import Iterator
from functools import lru_cache

from windwall.quantities.si import si
from windwall.results.diagnosis import Compared, Fact, heard_tells
from windwall.results.outcome import Outcome
from windwall.scenario.data import KNOCK_ANCHOR, ScenarioData
from windwall.study.solve import operating_point, top_speed

# Standing for themselves: what else was true while the rest was seen at full throttle.
CONDITIONS = {"speed", "engine_speed", "gear"}


def ask(fact: Fact, scenario: ScenarioData | None) -> Outcome | None:
    """Asks a scenario about the situation that was observed."""
    if scenario is None:
        return None
    if fact.at_top_speed:
        return top_speed(scenario, brief=True)
    speed = fact.entry["speed"]
    road_speed = si(speed[0]) if speed else None
    return operating_point(scenario, si(fact.engine_speed), road_speed=road_speed)


def at_knock_anchors(scenario: ScenarioData) -> list[ScenarioData]:
    """A scenario between the two that knock one standard deviation earlier and later."""
    anchor, spread = scenario.get(KNOCK_ANCHOR), scenario.knock_sigma
    low, high = (scenario.at_knock_anchor(anchor + way * spread) for way in (-1, 1))
    return [low, scenario, high]


def facts(scenario: ScenarioData) -> Iterator[Fact]:
    """Everything that was observed and that the model has a number for."""
    for entry in scenario.observed:
        top = entry["what"] == "top speed"
        if not top and not entry["engine_speed"]:
            continue
        for key, value in entry.items():
            if isinstance(value, tuple) and (top or key not in CONDITIONS):
                yield Fact(entry, key, *value)
            elif key == "knock" and heard_tells(entry, scenario.spark_is_chosen):
                yield Fact(entry, key, value, None)


@lru_cache(maxsize=16)
def compare(scenario: ScenarioData) -> tuple[Compared, ...]:
    """Every fact beside the model, which is asked again at the knock anchors either way."""
    answers: dict[tuple, list[Outcome | None]] = {}
    found = []
    for fact in facts(scenario):
        if fact.situation not in answers:
            answers[fact.situation] = [ask(fact, one) for one in at_knock_anchors(scenario)]
        low, model, high = (fact.model(answer) for answer in answers[fact.situation])
        if model is not None:
            found.append(Compared(fact, model, _anchor_sigma(fact, scenario, low, model, high)))
    return tuple(found)


def _anchor_sigma(
    fact: Fact, scenario: ScenarioData, low: float | None, model: float, high: float | None
) -> float:
    if fact.key == "knock":
        return scenario.knock_sigma
    if fact.key == "gear":
        return 0.0
    return max((abs(one - model) for one in (low, high) if one is not None), default=0.0)
