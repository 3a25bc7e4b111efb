"""A run from standstill at full throttle: a drive of one leg, made for the question."""

from __future__ import annotations

import json
from typing import Any

from windwall import _core
from windwall.errors import NoAnswer
from windwall.results.gearing import Mark
from windwall.scenario.data import ScenarioData

RUN = "standing_start"  # id of the outing
DONE = "legs_done"
WHY = {
    "road_ends": "the road ends before it gets there",
    "no_more_speed": "it gets no faster before it is there",
    "tank_empty": "a tank runs empty before it gets there",
    "stalled": "the engine stalls",
    "no_answer": "the model has no answer on the way",
}


def time_at(scenario: ScenarioData, mark: Mark, **outing: Any) -> float:
    """Seconds from standstill to a mark; NoAnswer where the run does not get there."""
    until = {"for_distance": mark.distance} if mark.speed is None else {"to_speed": mark.speed}
    units = {"for_distance": "m", "to_speed": "m/s"}
    run = standing_start(
        scenario, {key: f"{one!r} {units[key]}" for key, one in until.items()}, **outing
    )
    if run["ended"] != DONE:
        why = WHY.get(run["ended"], run["ended"])
        raise NoAnswer(f"There is no time: {why}.", run["ended"])
    return run["columns"]["time"][-1]


def standing_start(scenario: ScenarioData, until: dict[str, str], **outing: Any) -> dict[str, Any]:
    """The drive from standstill at full throttle as the core answers it; further keys are those of
    an outing.
    """
    leg = {"kind": "full_throttle"} | until
    document = scenario.document() | {"outings": [{"id": RUN, "legs": [leg]} | outing]}
    made = type(scenario).read(json.dumps(document), scenario.source)
    return _core.drive(made.core, RUN, {})
