"""Drives an outing of a scenario over time."""

from __future__ import annotations

from windwall import _core
from windwall.errors import Problem, ScenarioError, whole_letters
from windwall.results.drive import Drive, Outing
from windwall.scenario.data import ScenarioData
from windwall.scenario.info import scenario_info
from windwall.study.progress import Progress, listener

__all__ = [
    "DISTANCES",
    "KILOMETRE_PER_HOUR",
    "MILE_PER_HOUR",
    "NO_NAME",
    "NO_OUTING",
    "SPEEDS",
    "drive",
]

NO_OUTING = (
    "the file states no outing; one is a list of legs, such as "
    '"outings": [{"id": "run", "legs": [{"kind": "full_throttle", "for_distance": "400 m"}]}]'
)
NO_NAME = (
    "drive wants the id or the title of an outing of the file, and this is a {kind}; there are "
    '{names}. Another goes in first: car.restated(car.document() | {{"outings": [{{"id": "run", '
    '"legs": [{{"kind": "full_throttle", "for_distance": "400 m"}}]}}]}}).drive()'
)
KILOMETRE_PER_HOUR, MILE_PER_HOUR = 1 / 3.6, 0.44704  # m/s
# What is noted of every run, m and m/s; by the system that the scenario is read in.
DISTANCES = (50.0, 100.0, 200.0, 402.336, 500.0, 1000.0, 1600.0)
SPEEDS = {
    "metric": tuple(KILOMETRE_PER_HOUR * speed for speed in (50, 80, *range(100, 401, 20))),
    "us": tuple(MILE_PER_HOUR * speed for speed in range(30, 251, 10)),
}


def drive(
    scenario: ScenarioData,
    outing: str | None = None,
    progress: bool | Progress | None = None,
) -> Drive:
    """Drives one outing, named by its id or its title; the only one needs no name.

    `progress` is True or False for a bar, by default one in front of a person only, or a callable
    of `(seconds driven, 0)` that may return False to stop. Ctrl-C stops it too. What was driven
    until then is in the answer, which says that it was cancelled. Raises `ScenarioError` where
    there is no such outing, and `TypeError` where it is no name.
    """
    chosen = _found(scenario, outing)
    info = scenario_info(scenario)
    distances = {*DISTANCES, *([info.run_up] if info.run_up else [])}
    speeds = {*SPEEDS[scenario.system], *([info.goal_speed] if info.goal_speed else [])}
    with listener(progress, "drive", "s") as callback:
        numbers = _core.drive(
            scenario.core,
            chosen.id,
            mark_distances=sorted(distances),
            mark_speeds=sorted(speeds),
            progress=callback,
        )
    return Drive(numbers, info, chosen)


def _found(scenario: ScenarioData, wanted: str | None) -> Outing:
    there = scenario.outings
    if wanted is not None and not isinstance(wanted, str):
        raise TypeError(
            NO_NAME.format(kind=type(wanted).__name__, names=", ".join(there) or "none")
        )
    name = None if wanted is None else whole_letters(wanted)
    only = wanted is None and len(there) == 1
    for id, outing in there.items():
        if only or name in (id, outing.get("title") or id):
            kinds = tuple(leg["kind"] for leg in outing["legs"])
            limits = tuple(_core.drive_limits(scenario.core))
            own = scenario.get("engine/lambda")
            return Outing(id, outing.get("title", ""), kinds, limits, scenario.digest, own)
    raise ScenarioError([Problem("outings", 0, 0, _which(wanted, list(there)))], scenario.source)


def _which(wanted: str | None, there: list[str]) -> str:
    if not there:
        return NO_OUTING
    names = ", ".join(there)
    if wanted is None:
        return f"say which outing is to be driven; there are {names}"
    return f"no outing is called {wanted!r}; there are {names}"
