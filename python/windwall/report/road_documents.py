"""What was read off a road, and how to gear for one, as plain documents for JSON."""

from __future__ import annotations

from dataclasses import fields
from typing import Any

from windwall.results.coast_down import CoastDownFit, Estimate
from windwall.results.driven_gains import DrivenGains
from windwall.results.gearing import BestGearing
from windwall.results.views import document

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
