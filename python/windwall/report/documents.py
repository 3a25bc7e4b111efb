"""Answers as plain documents for JSON: SI numbers, each with its unit named beside it."""

from __future__ import annotations

import json
from typing import Any

from windwall.quantities.finite import finite
from windwall.report.text.check import cautions
from windwall.results.diagnosis import Compared, Diagnosis, Explanation
from windwall.results.operating_point import OperatingPoint
from windwall.results.outcome import Outcome
from windwall.results.ranking import Ranking, UpgradeSet
from windwall.results.top_speed import TopSpeed
from windwall.results.views import document
from windwall.scenario.data import ScenarioData

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


def to_text(made: dict[str, Any]) -> str:
    """One JSON document; numbers that are none become null, so that every reader can read it."""
    return json.dumps(finite(made), indent=2, ensure_ascii=False, allow_nan=False)


def _ending(outcome: Outcome) -> dict[str, Any]:
    part, residual = outcome.worst_residual
    return {
        "title": outcome.scenario_info.title,
        "status": outcome.status,
        "answered": outcome.answered,
        "sentence": outcome.sentence,
        "worst_residual": {"part": part, "share": residual},
        "evaluations": outcome.evaluations,
    }


def _knock(outcome: TopSpeed | OperatingPoint) -> dict[str, Any] | None:
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


@document.register(TopSpeed)
def speed_document(answer: TopSpeed, diagnosis: Diagnosis | None = None) -> dict[str, Any]:
    """The answer to `windwall speed`."""
    made = _ending(answer) | {"cautions": _cautions(answer), "unrated": answer.unrated}
    made["goal"] = {"speed": answer.scenario_info.goal_speed, "run_up": answer.scenario_info.run_up}
    if not answer.answered:
        return made | {"units": SPEED_UNITS}
    numbers = answer.numbers
    made |= {key: numbers[key] for key in ("speed", "gear", "engine_speed", "opening")}
    made |= {
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
        "observed": observed_document(diagnosis),
        "point": answer.point.to_dict(),
    }
    point_units = {f"point/{key}": unit for key, unit in answer.point.units().items()}
    return made | {"units": SPEED_UNITS | point_units}


def observed_document(diagnosis: Diagnosis | None) -> list[dict[str, Any]] | None:
    """The model beside every observed fact, and what would explain those that are far off; None
    where nobody asked for it.
    """
    if diagnosis is None:
        return None
    inputs = {id(one.compared): one.inputs for one in diagnosis.explained}
    return [
        _observed(one) | {"explained_by": [_explanation(each) for each in inputs.get(id(one), [])]}
        for one in diagnosis.compared
    ]


def _observed(compared: Compared) -> dict[str, Any]:
    keys = ("key", "observed", "sigma", "model", "model_sigma", "off")
    made = {"what": compared.fact.entry["what"]} | {key: getattr(compared, key) for key in keys}
    return made | {"unit": compared.measure.si}


def _explanation(one: Explanation) -> dict[str, Any]:
    made = {"address": one.input.address, "value": one.value, "deviations": one.deviations}
    return made | {"stated": one.input.given}


@document.register(OperatingPoint)
def point_document(answer: OperatingPoint) -> dict[str, Any]:
    """One operating point."""
    made = _ending(answer) | {"cautions": _cautions(answer)}
    made |= {key: answer.numbers[key] for key in ("engine_speed", "opening", "road_speed")}
    units = {"engine_speed": "rad/s", "opening": "1", "road_speed": "m/s"}
    if answer.answered:
        made |= {"knock": _knock(answer), "point": answer.point.to_dict()}
        units |= {f"point/{key}": unit for key, unit in answer.point.units().items()}
    return made | {"units": units}


@document.register(Ranking)
def rank_document(ranking: Ranking, diagnosis: Diagnosis | None = None) -> dict[str, Any]:
    """The answer to `windwall rank`."""
    numbers = ranking.numbers
    made = {
        "title": ranking.scenario_info.title,
        "status": ranking.status,
        "answered": ranking.answered,
        "sentence": ranking.sentence,
        "sentences": ranking.sentences,
        "goal": {"speed": ranking.scenario_info.goal_speed, "run_up": ranking.scenario_info.run_up},
        "budget": ranking.budget,
        "currency": ranking.currency,
        "knock_anchors": numbers["octane"],
        "upgrades": numbers["upgrades"],
        "sets": numbers["sets"],
        "missing": ranking.missing,
        "observed": observed_document(diagnosis),
    }
    for key in ("target", "cheapest_to_goal"):
        made[key] = _names(getattr(ranking, key))
    for key in ("best_by_cost", "best_by_hours"):
        made[key] = [_names(one) for one in getattr(ranking, key)]
    units = {"speed": "m/s", "hours": "h", "cost": ranking.currency, "knock_anchors": "1"}
    units |= {"alone": "m/s", "last": "m/s", "share": "m/s", "least_margin": "1"}
    return made | {"units": units | {"missing/power": "W", "missing/drag_area": "m2"}}


def _names(one: UpgradeSet | None) -> list[str] | None:
    return None if one is None else list(one.upgrades)


def check_document(scenario: ScenarioData) -> dict[str, Any]:
    """The answer to `windwall check` for a file without problems."""
    return {"problems": [], "cautions": check_cautions(scenario)}


def check_cautions(scenario: ScenarioData) -> list[dict[str, str]]:
    """What is not wrong with a file, and worth knowing."""
    return [{"address": address, "message": message} for address, message in cautions(scenario)]
