"""What was read off a road, and how to gear for one, as plain documents for JSON."""

from __future__ import annotations

from dataclasses import fields
from typing import Any

from windwall.results.coast_down import CoastDownFit, Estimate, Rolling
from windwall.results.driven_gains import DrivenGains
from windwall.results.driven_ranking import DrivenRanking, DrivenSet
from windwall.results.gearing import BestGearing
from windwall.results.smaller_jet import SmallerJet
from windwall.results.standing_start import Shortfall
from windwall.results.views import document

__all__ = [
    "COAST_DOWN_UNITS", "ROLLING_UNITS", "coast_down_document", "driven_gains_document",
    "driven_ranking_document", "gearing_document", "rolling_document", "shortfall_document",
    "smaller_jet_document",
]  # fmt: skip

COAST_DOWN_UNITS = {
    "drag_area": "m2",
    "headwind": "m/s",
    "force": "N",
    "middle_speed": "m/s",
    "speeds": "m/s",
    "mass": "kg",
    "accelerated_mass": "kg",
    "air_density": "kg/m3",
    "scatter": "m/s",
    "start_speeds": "m/s",
}

ROLLING_UNITS = {"time": "s", "distance": "m", "speed": "m/s"}


@document.register(CoastDownFit)
def coast_down_document(fit: CoastDownFit) -> dict[str, Any]:
    """Drag area and rolling resistance from coasting down."""
    made = {"sentence": fit.sentence, "sentences": fit.sentences, "separated": fit.separated}
    for field in fields(fit):
        value = getattr(fit, field.name)
        made[field.name] = value._asdict() if isinstance(value, Estimate) else value
    made |= {"correlation": fit.correlation, "units": COAST_DOWN_UNITS}
    del made["system"]
    return made


@document.register(BestGearing)
def gearing_document(best: BestGearing) -> dict[str, Any]:
    """The best gearing for a goal."""
    merit = "speed" if best.mark is None else "time"
    of_merit, of_value = best.of_merit.si, best.measure.si
    return {
        "sentence": best.sentence,
        "sentences": best.sentences,
        "address": best.address,
        "mark": None if best.mark is None else best.mark._asdict(),
        "run_up": best.run_up,
        "best": {"value": best.best.value, merit: best.best.merit},
        "now": {"value": best.now.value, merit: best.now.merit},
        "flat": list(best.flat),
        "tried": [{"value": value, merit: found} for value, found in best.tried],
        "wanted": best.wanted,
        "stopped": best.stopped,
        "launch_gear": best.launch_gear,
        "shifts": [one._asdict() for one in best.shifts],
        "units": {"value": of_value, merit: of_merit, "flat": of_value, "run_up": "m"}
        | {"engine_speed": "rad/s", "road_speed": "m/s", "mark/speed": "m/s", "mark/distance": "m"},
    }


@document.register(DrivenGains)
def driven_gains_document(answer: DrivenGains) -> dict[str, Any]:
    """What each upgrade is worth in a driven run."""
    merit = answer.of_merit.si
    return {
        "title": answer.title,
        "mark": None if answer.mark is None else answer.mark._asdict(),
        "run_up": answer.run_up,
        "stock": answer.stock,
        "gains": [one._asdict() | {"change": one.change} for one in answer.gains],
        "units": {"stock": merit, "before": merit, "fitted": merit, "change": merit}
        | {"run_up": "m", "mark/speed": "m/s", "mark/distance": "m"},
    }


@document.register(DrivenRanking)
def driven_ranking_document(answer: DrivenRanking) -> dict[str, Any]:
    """The best sets for every price by a driven run."""
    merit = answer.of_merit.si

    def shown(one: DrivenSet | None) -> dict[str, Any] | None:
        if one is None:
            return None
        fitted = one.fitted
        terms: dict[str, Any] = {"upgrades": list(fitted.upgrades), "choices": fitted.choices}
        terms |= {"cost": fitted.cost, "hours": fitted.hours, "merit": one.merit}
        return terms | {"gain": answer.gain(one), "refusal": one.refusal}

    return {
        "title": answer.title,
        "answered": answer.answered,
        "sentences": answer.sentences,
        "mark": None if answer.mark is None else answer.mark._asdict(),
        "run_up": answer.run_up,
        "goal": answer.goal,
        "stock": shown(answer.stock),
        "best": shown(answer.best),
        "cheapest_for_goal": shown(answer.cheapest_for_goal),
        "best_for_price": [shown(one) for one in answer.best_for_price],
        "runs": [shown(one) for one in answer.runs],
        "pruning": answer.pruning._asdict(),
        "passed": [{"address": one.address, "why": one.why} for one in answer.passed],
        "left_aside": answer.left_aside,
        "complete": answer.complete,
        "stopped": answer.stopped,
        "units": dict.fromkeys(("merit", "gain", "goal", "nearest", "spread"), merit)
        | {"cost": answer.currency, "hours": "h", "run_up": "m"}
        | {"mark/speed": "m/s", "mark/distance": "m"},
    }


@document.register(Rolling)
def rolling_document(rolling: Rolling) -> dict[str, Any]:
    """A coast-down of the model."""
    run = rolling.run
    return {
        "title": rolling.title,
        "conditions": dict(run.conditions),
        **{name: [float(one) for one in getattr(run, name)] for name in ROLLING_UNITS},
        "units": ROLLING_UNITS
        | {"mass": "kg", "accelerated_mass": "kg", "drag_area": "m2", "air_density": "kg/m3"}
        | {"headwind": "m/s"},
    }


@document.register(SmallerJet)
def smaller_jet_document(one: SmallerJet) -> dict[str, Any]:
    """A spray that takes much, beside smaller jets."""
    return {
        "sentence": one.sentence,
        "part": one.part,
        "of_fuel": one.of_fuel,
        "fitted": one.fitted._asdict(),
        "tried": [each._asdict() for each in one.tried],
        "units": {"of_fuel": "1", "share": "1", "flow": "m3/s", "speed": "m/s", "retard": "rad"}
        | {"margin": "1"},
    }


@document.register(Shortfall)
def shortfall_document(one: Shortfall) -> dict[str, Any]:
    """A driven run beside the quick top speed."""
    return {
        "sentence": one.sentence,
        "quick": one.quick,
        "driven": one.driven,
        "below": one.speed,
        "run_up": one.run_up,
        **{key: getattr(one.run, key) for key in ("time", "distance", "ended")},
        "units": {"quick": "m/s", "driven": "m/s", "below": "m/s", "run_up": "m"}
        | {"time": "s", "distance": "m"},
    }
