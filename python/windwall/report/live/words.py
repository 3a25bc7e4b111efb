"""What the page needs to say an answer as the text does: units, and the sentences with their gaps.

The page fills the gaps by the same rules, in `answer.js`; a test holds both against each other.
"""

from __future__ import annotations

from typing import Any

from windwall.quantities.measures import (
    ANGLE,
    ENGINE_SPEED,
    FORCE,
    KILOWATTS,
    SHARE,
    SPEED,
    TIME,
    Measure,
)
from windwall.report.text.limits import result_measure
from windwall.report.wording import operating_point, top_speed
from windwall.report.wording.cautions import CAUTIONS, FOUND
from windwall.report.wording.scenario import road_length
from windwall.results.scenario_info import ScenarioInfo

__all__ = ["MEASURES", "Unit", "limited", "sentences", "unit", "units"]

MEASURES = {
    "speed": SPEED,
    "engine_speed": ENGINE_SPEED,
    "power": KILOWATTS,
    "force": FORCE,
    "share": SHARE,
    "angle": ANGLE,
    "time": TIME,
}
Unit = tuple[float, float, str]


def unit(measure: Measure, system: str) -> Unit:
    """What to multiply SI by, what to add, and what the result is called."""
    return measure.spread.value(1.0, system), measure.value(0.0, system), measure.shown(system)


def units(system: str) -> dict[str, Unit]:
    """Of what an answer tells."""
    return {name: unit(measure, system) for name, measure in MEASURES.items()}


def limited(limits: list[dict[str, Any]], system: str) -> dict[str, Unit]:
    """Of every result that has a limit, by its address."""
    return {one["address"]: unit(result_measure(one["address"]), system) for one in limits}


def sentences(info: ScenarioInfo) -> dict[str, Any]:
    """By what they are about; gaps are keys in braces."""
    system = info.system
    return {
        "road": road_length(info),
        "ends": top_speed.ENDS,
        "next": top_speed.NEXT,
        "belt": {
            "highest": top_speed.HIGHEST,
            "lowest": top_speed.LOWEST,
            "between": top_speed.BETWEEN,
        },
        "slope": top_speed.SLOPE,
        "standstill": top_speed.STANDSTILL[info.gears > 1],
        "by_throttle": operating_point.HELD_BY_THROTTLE,
        "by_spark": operating_point.HELD_BY_SPARK,
        "unanswered": operating_point.UNANSWERED,
        "furthest": operating_point.FURTHEST,
        "reference": SPEED.short(operating_point.GROWTH_REFERENCE, system),
        "warnings": CAUTIONS,
        "found": {
            about: [unit(measure, system), digits] for about, (measure, digits) in FOUND.items()
        },
    }
