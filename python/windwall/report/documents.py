"""Answers as plain documents for JSON: SI numbers, each with its unit named beside it."""

from __future__ import annotations

import json
from typing import Any

from windwall.quantities.finite import finite
from windwall.report.text.check import cautions
from windwall.report.wording.names import gains_by_change, watts_by_use
from windwall.report.wording.ranking import outside
from windwall.results.diagnosis import Compared, Diagnosis, Explanation
from windwall.results.operating_point import OperatingPoint
from windwall.results.outcome import Outcome
from windwall.results.ranking import Ranking, UpgradeGain, UpgradeSet
from windwall.results.record import answer_units
from windwall.results.top_speed import TopSpeed
from windwall.results.views import document
from windwall.scenario.data import ScenarioData

GOAL_UNITS = {"goal/speed": "m/s", "goal/run_up": "m"}


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


def _cautions(outcome: Outcome) -> list[dict[str, Any]]:
    return [caution.to_dict() for caution in outcome.cautions]


@document.register(TopSpeed)
def speed_document(answer: TopSpeed, diagnosis: Diagnosis | None = None) -> dict[str, Any]:
    """The answer to `windwall speed`."""
    made = _ending(answer) | {"cautions": _cautions(answer), "unrated": answer.unrated}
    made["goal"] = {"speed": answer.scenario_info.goal_speed, "run_up": answer.scenario_info.run_up}
    if not answer.answered:
        return made | {"units": GOAL_UNITS}
    made |= {key: value for key, value in answer.numbers.items() if key not in [*made, "ending"]}
    made |= {
        "next": answer.next_limit,
        "shaft": watts_by_use(answer.numbers["shaft"]),
        "heat": watts_by_use(answer.numbers["heat"]),
        "knock": _knock(answer),
        "sensitivities": gains_by_change(answer.sensitivities),
        "observed": observed_document(diagnosis),
        "point": answer.point.to_dict(),
    }
    return made | {"units": GOAL_UNITS | _units("top_speed", answer)}


def _units(kind: str, answer: Outcome) -> dict[str, str]:
    """Of the answer, and of its point by the ids of the vehicle's own parts."""
    units = {key: unit for key, unit in answer_units(kind).items() if not key.startswith("point/")}
    units |= {"shaft": "W", "heat": "W", "sensitivities": "m/s"} if kind == "top_speed" else {}
    return units | {f"point/{key}": unit for key, unit in answer.point.units().items()}


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
    made |= {key: value for key, value in answer.numbers.items() if key not in [*made, "ending"]}
    if not answer.answered:
        del made["point"]
        return made | {"units": answer_units("operating_point")}
    made |= {"knock": _knock(answer), "point": answer.point.to_dict()}
    return made | {"units": _units("operating_point", answer)}


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
        "upgrades": [_gain(ranking, one) for one in ranking.upgrades.values()],
        "sets": [one.to_dict() for one in ranking.sets],
        "missing": ranking.missing,
        "observed": observed_document(diagnosis),
    }
    for key in ("target", "cheapest_to_goal"):
        made[key] = _names(getattr(ranking, key))
    for key in ("best_by_cost", "best_by_hours"):
        made[key] = [_names(one) for one in getattr(ranking, key)]
    units = answer_units("ranking") | {"knock_anchors": "1", "sets/cost": ranking.currency}
    return made | {"units": GOAL_UNITS | units}


def _gain(ranking: Ranking, one: UpgradeGain) -> dict[str, Any]:
    return one.to_dict() | {"why_outside": outside(ranking, one)}


def _names(one: UpgradeSet | None) -> list[str] | None:
    return None if one is None else list(one.upgrades)


def check_document(scenario: ScenarioData) -> dict[str, Any]:
    """The answer to `windwall check` for a file without problems."""
    return {"problems": [], "cautions": check_cautions(scenario)}


def check_cautions(scenario: ScenarioData) -> list[dict[str, str]]:
    """What is not wrong with a file, and worth knowing."""
    return [{"address": address, "message": message} for address, message in cautions(scenario)]
