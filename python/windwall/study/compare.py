"""Asks the model for every fact that was observed."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from functools import lru_cache
from math import hypot
from typing import Any

import numpy as np

from windwall import _core
from windwall.quantities.si import si
from windwall.results.diagnosis import APART, Compared, Fact, heard_tells
from windwall.results.outcome import Outcome
from windwall.results.situation import Alone, Situation
from windwall.scenario.data import KNOCK_ANCHOR, ScenarioData
from windwall.study.apart import answer_apart, coasted
from windwall.study.solve import full_throttle_curve, operating_point, top_speed

__all__ = [
    "CONDITIONS", "POLICY", "RETARD", "TABLE", "ask", "at_knock_anchors", "at_spark", "compare",
    "facts", "turns",
]  # fmt: skip

# Standing for themselves: what else was true while the rest was seen at full throttle.
CONDITIONS = {"speed", "engine_speed", "gear"}
POLICY, RETARD, TABLE = (f"engine/spark/{key}" for key in ("policy", "retard", "table"))


def ask(situation: Situation, scenario: ScenarioData | None) -> Outcome | Alone | None:
    """Asks a scenario about the situation that was observed."""
    if scenario is None:
        return None
    if situation.apart:
        return answer_apart(situation.apart, scenario)
    driven = at_spark(scenario, situation.retard)
    if not situation.held or (situation.gear or 1) > _core.gears(driven.core):
        return top_speed(driven, brief=True)
    road_speed = None if situation.road_speed is None else si(situation.road_speed)
    return operating_point(driven, si(turns(driven, situation)), road_speed=road_speed)


def at_spark(scenario: ScenarioData, retard: float | None) -> ScenarioData:
    """The scenario with the spark as it was driven, rad, and not as the model would choose it; a
    table of the file is what was driven.
    """
    if retard is None or not scenario.has_knock_anchor or scenario.given(TABLE):
        return scenario
    return scenario.set({POLICY: "as_given", RETARD: retard})


def turns(scenario: ScenarioData, situation: Situation) -> float:
    """The engine speed of a situation, rad/s; by road speed and gear where it was not read."""
    if situation.engine_speed is not None:
        return situation.engine_speed
    curve = full_throttle_curve(scenario, int(situation.gear))
    columns = dict(zip(curve.addresses, map(np.asarray, curve.columns), strict=True))
    road_speed = columns["road/speed"]
    ratio = np.interp(situation.road_speed, road_speed, columns["engine/speed"] / road_speed)
    return float(ratio * situation.road_speed)


def at_knock_anchors(scenario: ScenarioData) -> list[ScenarioData]:
    """A scenario between the two that knock one standard deviation earlier and later."""
    anchor, spread = scenario.get(KNOCK_ANCHOR), scenario.knock_sigma
    low, high = (scenario.at_knock_anchor(anchor + way * spread) for way in (-1, 1))
    return [low, scenario, high]


def facts(scenario: ScenarioData) -> Iterator[Fact]:
    """Everything that was observed and that the model has a number for."""
    for entry in scenario.observed:
        top = entry["what"] == "top speed"
        if entry["what"] in APART:
            yield _seen_apart(entry, APART[entry["what"]])
            continue
        if not top and not entry["engine_speed"]:
            continue
        for key, value in entry.items():
            if isinstance(value, tuple) and (top or key not in CONDITIONS):
                yield Fact(entry, key, *value)
            elif key == "knock" and heard_tells(entry, scenario.spark_is_chosen):
                yield Fact(entry, key, value, None)


def _seen_apart(entry: dict[str, Any], key: str) -> Fact:
    return Fact(entry, key, *(coasted(entry["coasting"]) if key == "coasting" else entry[key]))


@lru_cache(maxsize=16)
def compare(scenario: ScenarioData) -> tuple[Compared, ...]:
    """Every fact beside the model, which is asked again at the knock anchors and the sparks either
    way.
    """
    answers: dict[Situation, list[Outcome | None]] = {}
    found = []
    for fact in facts(scenario):
        if fact.situation not in answers:
            answers[fact.situation] = [
                ask(fact.situation, one) for one in at_knock_anchors(scenario)
            ]
        low, model, high = (fact.model(answer) for answer in answers[fact.situation])
        if model is not None:
            sigma = _model_sigma(fact, scenario, (low, model, high))
            found.append(Compared(fact, model, sigma, _held_at(answers[fact.situation][1])))
    return tuple(found)


def _held_at(answer: Outcome | Alone) -> float | None:
    return None if isinstance(answer, Alone) else answer.point.engine.speed


def _model_sigma(
    fact: Fact, scenario: ScenarioData, models: tuple[float | None, float, float | None]
) -> float:
    if fact.key == "gear":
        return 0.0
    low, model, high = models
    by_anchor = scenario.knock_sigma if fact.key == "knock" else _farthest(model, (low, high))
    return hypot(by_anchor, _farthest(model, _at_sparks(fact, scenario)))


def _at_sparks(fact: Fact, scenario: ScenarioData) -> list[float | None]:
    """The model with the spark as early and as late as it may have been."""
    spread, asked = fact.retard_sigma, fact.situation
    if not spread:
        return []
    sparks = (asked._replace(retard=asked.retard + way * spread) for way in (-1, 1))
    return [fact.model(ask(spark, scenario)) for spark in sparks]


def _farthest(model: float, others: Iterable[float | None]) -> float:
    return max((abs(one - model) for one in others if one is not None), default=0.0)
