"""Answers as plain documents for JSON: SI numbers, each with its unit named beside it."""

from __future__ import annotations

import json
import math
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from windwall.held_point import HeldPoint
    from windwall.outcome import Outcome
    from windwall.ranking import Ranking, UpgradeSet
    from windwall.scenario import Scenario
    from windwall.top_speed import TopSpeed

SPEED_UNITS = {
    "speed": "m/s",
    "engine_speed": "rad/s",
    "opening": "1",
    "surplus": "N",
    "run_up/speed": "m/s",
    "run_up/time": "s",
    "shaft": "W",
    "heat": "W",
    "exhaust_temperature": "K",
    "sensitivities": "m/s",
    "margins/drive_ratio": "1",
    "margins/boost": "Pa",
    "margins/charge_temperature": "K",
    "margins/spark": "rad",
    "goal/speed": "m/s",
    "goal/run_up": "m",
}


def to_text(document: dict[str, Any]) -> str:
    """One JSON document; numbers that are none become null, so that every reader can read it."""
    return json.dumps(finite(document), indent=2, ensure_ascii=False, allow_nan=False)


def finite(value: Any) -> Any:
    """The same with None for every number that is none."""
    if isinstance(value, dict):
        return {key: finite(inside) for key, inside in value.items()}
    if isinstance(value, (list, tuple)):
        return [finite(inside) for inside in value]
    return None if isinstance(value, float) and not math.isfinite(value) else value


def _ending(outcome: Outcome) -> dict[str, Any]:
    part, residual = outcome.worst_residual
    return {
        "title": outcome._asked.title,
        "status": outcome.status,
        "answered": outcome.answered,
        "sentence": outcome.sentence,
        "worst_residual": {"part": part, "share": residual},
        "evaluations": outcome.evaluations,
    }


def _knock(outcome: TopSpeed | HeldPoint) -> dict[str, Any] | None:
    band = outcome.knock_band
    if band is None:
        return None
    return {
        "margin": band.margin,
        "sigma": band.sigma,
        "chance": band.chance,
        "detonation": band.word,
    }


def _cautions(outcome: Outcome) -> list[dict[str, str]]:
    return [caution._asdict() for caution in outcome.cautions]


def speed_document(answer: TopSpeed) -> dict[str, Any]:
    """The answer to `windwall speed`."""
    document = _ending(answer) | {"cautions": _cautions(answer), "unrated": answer.unrated}
    document["goal"] = {"speed": answer._asked.goal_speed, "run_up": answer._asked.run_up}
    if not answer.answered:
        return document | {"units": SPEED_UNITS}
    numbers = answer._numbers
    document |= {key: numbers[key] for key in ("speed", "gear", "engine_speed", "opening")}
    document |= {
        "run_up": numbers["run_up"],
        "limited_by": answer.limited_by,
        "next": answer.next_limit,
        "shaft": dict(numbers["shaft"]),
        "heat": dict(numbers["heat"]),
        "exhaust_temperature": answer.exhaust_temperature,
        "knock": _knock(answer),
        "margins": numbers["margins"],
        "sensitivities": dict(numbers["sensitivities"]),
        "passed": numbers["passed"],
        "observed": observed_document(answer._asked.scenario),
        "point": answer.point.to_dict(),
    }
    point_units = {f"point/{key}": unit for key, unit in answer.point.units().items()}
    return document | {"units": SPEED_UNITS | point_units}


def observed_document(scenario: Scenario) -> list[dict[str, Any]]:
    """The model beside every observed fact, and what would explain those that are far off."""
    from windwall.explaining import explained

    far = explained(scenario)

    def inputs(one: Any) -> list[dict[str, Any]]:
        return [_explanation(each) for why in far if why.compared == one for each in why.inputs]

    return [_observed(one) | {"explained_by": inputs(one)} for one in scenario.against_observed()]


def _observed(compared: Any) -> dict[str, Any]:
    keys = ("key", "observed", "sigma", "model", "model_sigma", "off")
    made = {"what": compared.fact.entry["what"]} | {key: getattr(compared, key) for key in keys}
    return made | {"unit": compared.measure.si}


def _explanation(one: Any) -> dict[str, Any]:
    made = {"address": one.input.address, "value": one.value, "deviations": one.deviations}
    return made | {"stated": one.input.given}


def point_document(answer: HeldPoint) -> dict[str, Any]:
    """One operating point."""
    document = _ending(answer) | {"cautions": _cautions(answer)}
    document |= {key: answer._numbers[key] for key in ("engine_speed", "opening", "road_speed")}
    units = {"engine_speed": "rad/s", "opening": "1", "road_speed": "m/s"}
    if answer.answered:
        document |= {"knock": _knock(answer), "point": answer.point.to_dict()}
        units |= {f"point/{key}": unit for key, unit in answer.point.units().items()}
    return document | {"units": units}


def rank_document(ranking: Ranking) -> dict[str, Any]:
    """The answer to `windwall rank`."""
    numbers = ranking._numbers
    document = {
        "title": ranking._asked.title,
        "status": ranking.status,
        "answered": ranking.answered,
        "sentence": ranking.sentence,
        "sentences": ranking.sentences,
        "goal": {"speed": ranking._asked.goal_speed, "run_up": ranking._asked.run_up},
        "budget": ranking.budget,
        "currency": ranking.currency,
        "knock_anchors": numbers["octane"],
        "upgrades": numbers["upgrades"],
        "sets": numbers["sets"],
        "missing": ranking.missing,
        "observed": observed_document(ranking._asked.scenario),
    }
    for key in ("target", "cheapest_to_goal"):
        document[key] = _names(getattr(ranking, key))
    for key in ("best_by_cost", "best_by_hours"):
        document[key] = [_names(one) for one in getattr(ranking, key)]
    units = {"speed": "m/s", "hours": "h", "cost": ranking.currency, "knock_anchors": "1"}
    units |= {"alone": "m/s", "last": "m/s", "share": "m/s", "least_margin": "1"}
    return document | {"units": units | {"missing/power": "W", "missing/drag_area": "m2"}}


def _names(one: UpgradeSet | None) -> list[str] | None:
    return None if one is None else list(one.upgrades)


def check_document(scenario: Scenario) -> dict[str, Any]:
    """The answer to `windwall check` for a file without problems."""
    return {"problems": [], "cautions": check_cautions(scenario)}


def check_cautions(scenario: Scenario) -> list[dict[str, str]]:
    """What is not wrong with a file, and worth knowing."""
    from windwall.texts.check import cautions

    return [{"address": address, "message": message} for address, message in cautions(scenario)]
