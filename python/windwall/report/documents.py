"""Answers as plain documents for JSON: SI numbers, each with its unit named beside it."""

from __future__ import annotations

import json
from collections.abc import Iterator
from typing import Any

from windwall.errors import ScenarioError
from windwall.quantities.finite import finite
from windwall.report.text.check import left_open
from windwall.report.wording.names import by_name
from windwall.report.wording.sets import outside
from windwall.results.answer import Answer, answer_rows
from windwall.results.diagnosis import Compared, Diagnosis, Explanation
from windwall.results.drawn import DrawnRanking, DrawnSpeed
from windwall.results.drive import EVENT_UNITS, Drive, moment_row
from windwall.results.entry import NamedNumber
from windwall.results.operating_point import OperatingPoint
from windwall.results.outcome import Outcome
from windwall.results.ranking import Ranking, UpgradeGain, UpgradeSet
from windwall.results.record import Record
from windwall.results.top_speed import TopSpeed
from windwall.results.values import Values, plain
from windwall.results.views import document
from windwall.scenario.data import ScenarioData

__all__ = [
    "GOAL_UNITS", "LONGER", "LONGER_UNITS", "RATED_UNITS", "check_document", "drive_document",
    "observed_document", "point_document", "problems_document", "rank_document", "speed_document",
    "to_text",
]  # fmt: skip

GOAL_UNITS = {"goal/speed": "m/s", "goal/run_up": "m"}
LONGER_UNITS = {"longer_gearing/speed": "m/s"}
LONGER = ("address", "now", "value", "speed")  # of the gearing that reaches a goal, in SI
RATED_UNITS = {"rated/torque": "N m", "rated/power": "W"}


def to_text(made: dict[str, Any]) -> str:
    """One JSON document; numbers that are none become null, so that every reader can read it."""
    return json.dumps(finite(made), indent=2, ensure_ascii=False, allow_nan=False)


def _heading(answer: Answer) -> dict[str, Any]:
    return {
        "title": answer.scenario_info.title,
        "status": answer.status,
        "answered": answer.answered,
        "sentence": answer.sentence,
    }


def _goal(answer: Answer) -> dict[str, Any]:
    return {"speed": answer.scenario_info.goal_speed, "run_up": answer.scenario_info.run_up}


def _solving(outcome: Outcome) -> dict[str, Any]:
    part, residual = outcome.worst_residual
    return {
        "worst_residual": {"part": part, "share": residual},
        "evaluations": outcome.evaluations,
    }


def _knock(outcome: Outcome) -> dict[str, Any] | None:
    band = outcome.knock_band
    if band is None:
        return None
    return {
        "margin": band.margin,
        "sigma": band.sigma,
        "chance": band.chance,
        "detonation": band.word,
    }


def _rows(answer: Answer) -> dict[str, Any]:
    """What the rows of an answer hold; where there is no answer only what is there without one."""
    made = {key: _plain(value) for key, value in answer.items() if key != "ending"}
    return {key: one for key, one in made.items() if answer.answered or one not in (None, [], {})}


def _plain(value: Any) -> Any:
    """Plain numbers; a list of numbers that have names as an object."""
    if isinstance(value, tuple) and value and isinstance(value[0], NamedNumber):
        return by_name(value)
    return plain(value)


def _units(answer: Answer) -> dict[str, str]:
    """The SI unit of every number; of a point by the ids of the vehicle's own parts."""
    found: dict[str, str] = {}
    for key, row in answer_rows(answer.question).items():
        value, kind = answer.get(key), answer.kinds.get(key, Values)
        if isinstance(value, Record):
            found |= {f"{key}/{below}": unit for below, unit in value.units().items()}
        elif issubclass(kind, NamedNumber):
            found[key] = dict(_units_of(row["rows"], "")).popitem()[1]
        elif kind is not Record:
            found |= dict(_units_of({key: row}, ""))
    return found


def _units_of(rows: dict[str, Any], above: str) -> Iterator[tuple[str, str]]:
    for key, row in rows.items():
        if "si" in row:
            yield above + key, row["si"]
        yield from _units_of(row.get("rows", {}), f"{above}{key}/")


@document.register(TopSpeed)
def speed_document(
    answer: TopSpeed, diagnosis: Diagnosis | None = None, drawn: DrawnSpeed | None = None
) -> dict[str, Any]:
    """The answer to `windwall speed`."""
    made = _heading(answer) | _solving(answer) | {"goal": _goal(answer)} | _rows(answer)
    if answer.answered:
        made |= {"next": answer.next_limit, "knock": _knock(answer)}
        made |= {"observed": observed_document(diagnosis)}
        made |= {"drawn": None if drawn is None else document(drawn)}
    rated = answer.scenario_info.rated
    made["rated"] = [one._asdict() for one in rated]
    return made | {"units": GOAL_UNITS | (RATED_UNITS if rated else {}) | _units(answer)}


def observed_document(diagnosis: Diagnosis | None) -> list[dict[str, Any]] | None:
    """The model beside every observed fact, and what would explain those that are far off; None
    where nobody asked for it.
    """
    if diagnosis is None:
        return None
    names = [one.label for one in diagnosis.first]
    inputs = {id(one.compared): one.inputs for one in diagnosis.explained}
    return [
        _observed(one)
        | {"explained_by": [_explanation(each, names) for each in inputs.get(id(one), [])]}
        | ({"first_gains": dict(diagnosis.first)} if diagnosis.first and id(one) in inputs else {})
        for one in diagnosis.compared
    ]


def _observed(compared: Compared) -> dict[str, Any]:
    keys = ("key", "observed", "sigma", "model", "model_sigma", "off", "engine_speed")
    made = {"what": compared.fact.entry["what"]} | {key: getattr(compared, key) for key in keys}
    return made | {"retard": compared.fact.situation.retard, "unit": compared.measure.si}


def _explanation(one: Explanation, first: list[str]) -> dict[str, Any]:
    made = {"address": one.input.address, "value": one.value, "deviations": one.deviations}
    made |= {"stated": one.input.given}
    made |= {"spoils": {each.fact.key: each.off for each in one.spoils}} if one.spoils else {}
    made |= {"rated": {each.key: each.met for each in one.rated}} if one.rated else {}
    made |= {"gains": dict(zip(first, one.gains, strict=True))} if one.gains else {}
    return made | ({"speeds": one.speeds} if one.speeds else {})


@document.register(OperatingPoint)
def point_document(answer: OperatingPoint) -> dict[str, Any]:
    """One operating point."""
    made = _heading(answer) | _solving(answer) | _rows(answer)
    made |= {"knock": _knock(answer)} if answer.answered else {}
    return made | {"units": _units(answer)}


@document.register(Ranking)
def rank_document(
    ranking: Ranking, diagnosis: Diagnosis | None = None, drawn: DrawnRanking | None = None
) -> dict[str, Any]:
    """The answer to `windwall rank`."""
    made = _heading(ranking) | {
        "sentences": ranking.sentences,
        "goal": _goal(ranking),
        "budget": ranking.budget,
        "budget_of_file": ranking.budget_of_file,
        "currency": ranking.currency,
    }
    made |= {key: _row(ranking, key) for key in ranking}
    made["upgrades"] = [_gain(ranking, one) for one in ranking.upgrades.values()]
    made["observed"] = observed_document(diagnosis)
    made["reached"] = [one._asdict() for one in diagnosis.reached] if diagnosis else []
    longer = diagnosis.longer if diagnosis else None
    made["longer_gearing"] = longer and {key: longer._asdict()[key] for key in LONGER}
    made["drawn"] = None if drawn is None else document(drawn)
    units = GOAL_UNITS | LONGER_UNITS | _units(ranking) | {"sets/cost": ranking.currency}
    return made | {"units": units}


def _row(ranking: Ranking, key: str) -> Any:
    """Where a row points at sets, their upgrades with the values of their choices; of upgrades
    their ids.
    """
    value = ranking[key]
    into = answer_rows(ranking.question)[key].get("into")
    if into != "sets":
        return [one.id for one in value] if into else plain(value)
    return [_fitted(one) for one in value] if isinstance(value, tuple) else _fitted(value)


def _gain(ranking: Ranking, one: UpgradeGain) -> dict[str, Any]:
    return one.to_dict() | {"why_outside": outside(ranking, one)}


def _fitted(one: UpgradeSet | None) -> dict[str, Any] | None:
    """What to install, and what comes of it."""
    if one is None:
        return None
    keys = ("upgrades", "choices", "speed", "cost", "hours")
    return {key: plain(getattr(one, key)) for key in keys}


@document.register(Drive)
def drive_document(drive: Drive) -> dict[str, Any]:
    """The answer to `windwall drive`: the summary, what happened, and every moment by columns."""
    found = drive.summary
    extremes = {address: most._asdict() for address, most in found.hottest.items()}
    return {
        "title": drive.scenario_info.title,
        "outing": drive.outing._asdict(),
        "answered": drive.answered,
        "ended": drive.ended.to_dict(),
        "marks": [one._asdict() for one in found.marks],
        "fastest": [one._asdict() for one in found.fastest],
        "hottest": extremes,
        "nearest_knock": found.nearest_knock and found.nearest_knock._asdict(),
        "fuel_used": found.fuel_used,
        "liquid_used": found.liquid_used,
        "energy": found.energy,
        "imbalance": found.imbalance,
        "passed": [one.to_dict() for one in drive.passed],
        "cautions": [one.to_dict() for one in drive.cautions],
        "events": [one.to_dict() for one in drive.happened],
        "moments": {address: column.tolist() for address, column in drive.columns.items()},
        "phases": list(drive.phases),
        "units": {
            "marks": {"at_distance": "m", "at_speed": "m/s"} | EVENT_UNITS,
            "fastest": {"value": "m/s", "time": "s"},
            "hottest": {"value": "K", "time": "s"},
            "nearest_knock": {"value": "1", "time": "s"},
            "fuel_used": "kg",
            "liquid_used": "kg",
            "energy": "J",
            "imbalance": "1",
            "cautions": EVENT_UNITS | {"boost": "Pa", "first": "s", "lasting": "s"},
            "events": EVENT_UNITS,
            "moments": {address: moment_row(address)["si"] for address in drive.addresses},
        },
    }


def check_document(scenario: ScenarioData) -> dict[str, Any]:
    """The answer to `windwall check` for a file without problems."""
    cautions = left_open(scenario)
    return _check([], [{"address": address, "message": text} for address, text in cautions])


def problems_document(wrong: ScenarioError) -> dict[str, Any]:
    """Everything that is wrong with an input."""
    return _check([problem._asdict() for problem in wrong.problems], [])


def _check(problems: list[dict[str, Any]], cautions: list[dict[str, str]]) -> dict[str, Any]:
    return {"problems": problems, "cautions": cautions}
