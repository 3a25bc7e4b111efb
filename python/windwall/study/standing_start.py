"""A run from standstill at full throttle: a drive of one leg, made for the question."""

from __future__ import annotations

from typing import Any

from windwall import _core
from windwall.errors import NoAnswer
from windwall.quantities.measures import LENGTH, SPEED
from windwall.results.gearing import Mark
from windwall.results.standing_start import Shortfall, StandingStart
from windwall.scenario.arguments import wrong
from windwall.scenario.data import ScenarioData
from windwall.study.solve import top_speed

__all__ = [
    "CANCELLED", "DONE", "FAR_BEYOND", "RUN", "RUN_DRY", "SELDOM", "WHY", "driven", "driven_end",
    "no_answer", "read_mark", "shortfall", "standing_start", "time_over", "time_to", "timed",
    "until", "with_run",
]  # fmt: skip

RUN = "standing_start"  # id of the outing
DONE, CANCELLED = "legs_done", "cancelled"
RUN_DRY = {"no_more_speed"}  # an end that a run towards no speed in particular is meant to have
WHY = {
    "road_ends": "the road ends before it gets there",
    "no_more_speed": "it gets no faster before it gets there",
    "tank_empty": "a tank is empty before it gets there",
    "stalled": "the engine stalls",
    "no_answer": "the model has no answer on the way",
    "too_many_events": "clutch, tyres or gears come and go without end on the way",
}
SELDOM = 10.0  # s between moments that are kept: only the last is read
FAR_BEYOND = 1.5  # times the quick top speed, which no run reaches


def time_to(scenario: ScenarioData, speed: Any, **outing: Any) -> float:
    """Seconds from standstill to a speed, `"100 km/h"`."""
    mark = read_mark(speed)
    if mark.speed is None:
        raise wrong("speed", f'{speed!r} is a distance; time_over("{speed}") asks for that')
    return timed(scenario, mark, **outing).time


def time_over(scenario: ScenarioData, distance: Any, **outing: Any) -> float:
    """Seconds from standstill over a distance, `"402.336 m"`."""
    mark = read_mark(distance)
    if mark.distance is None:
        raise wrong("distance", f'{distance!r} is a speed; time_to("{distance}") asks for that')
    return timed(scenario, mark, **outing).time


def timed(scenario: ScenarioData, mark: Mark, **outing: Any) -> StandingStart:
    """The run from standstill to a mark; NoAnswer where it does not get there."""
    run = standing_start(scenario, until(mark), **outing)
    if run.ended != DONE:
        raise no_answer(run)
    return run


def no_answer(run: StandingStart) -> NoAnswer:
    """Why a run does not get where it should."""
    return NoAnswer(f"There is no such time: {WHY.get(run.ended, run.ended)}.", run.ended)


def read_mark(mark: Any) -> Mark:
    """`"402.336 m"` or `"100 km/h"`."""
    for key, measure in (("distance", LENGTH), ("speed", SPEED)):
        try:
            value, _ = _core.read_quantity(mark, measure.dimension, measure.unit, "")
        except (ValueError, TypeError):
            continue
        if value > 0:
            return Mark(**{key: value})
    raise wrong("mark", f'{mark!r} is no distance or speed: write "402.336 m" or "100 km/h"')


def until(mark: Mark) -> dict[str, str]:
    """The end of a leg at full throttle."""
    if mark.speed is None:
        return {"for_distance": f"{mark.distance!r} m"}
    return {"to_speed": f"{mark.speed!r} m/s"}


def standing_start(scenario: ScenarioData, end: dict[str, str], **outing: Any) -> StandingStart:
    """The run at full throttle until its leg ends; further keys are those of an outing."""
    return driven(with_run(scenario, end, **outing))


def with_run(scenario: ScenarioData, end: dict[str, str], **outing: Any) -> ScenarioData:
    """The scenario with that run as its outing."""
    leg = {"kind": "full_throttle"} | end
    run = {"id": RUN, "legs": [leg]} | outing
    return scenario.restated(scenario.document() | {"outings": [run]})


def driven(made: ScenarioData) -> StandingStart:
    """The run of a scenario that has it. Ctrl-C is what it is everywhere: half a run is none."""
    run = _core.drive(made.core, RUN, every=SELDOM)
    if run["ended"] == CANCELLED:
        raise KeyboardInterrupt
    columns = dict(zip(run["addresses"], run["columns"], strict=True))
    time, distance, speed = (float(columns[key][-1]) for key in ("time", "distance", "road/speed"))
    return StandingStart(time, distance, speed, run["ended"])


def driven_end(scenario: ScenarioData) -> Shortfall | NoAnswer | None:
    """The same for an answer that mentions it: where the file names a road or an outing, and as far
    as there is an answer.
    """
    if scenario.get("goal/run_up") is None and not scenario.outings:
        return None
    try:
        return shortfall(scenario)
    except NoAnswer as none:
        return none


def shortfall(scenario: ScenarioData, **outing: Any) -> Shortfall:
    """How far a driven run ends below the quick top speed: at the end of the goal's road, or where
    it names none, where the run gets no faster.
    """
    quick = top_speed(scenario, brief=True)
    if not quick.answered:
        raise quick.no_answer()
    road = scenario.get("goal/run_up")
    mark = Mark(speed=FAR_BEYOND * quick.speed) if road is None else Mark(distance=road)
    run = standing_start(scenario, until(mark), **outing)
    if run.ended not in {DONE, *RUN_DRY}:
        raise no_answer(run)
    return Shortfall(scenario.system, quick.goal_speed, road, run)
