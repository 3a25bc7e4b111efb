"""Many vehicles that one description allows: what each answers, on all cores.

A world has a value for every uncertain number of a scenario, SI, in the order of `uncertain`.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any, NamedTuple

import numpy as np

from windwall import _core
from windwall.quantities.measures import SPEED, Measure
from windwall.results.record import result_row
from windwall.scenario.data import ScenarioData
from windwall.study.carry_out import Means, carried_out
from windwall.study.chunks import pieces
from windwall.study.progress import Progress, listener
from windwall.study.tasks import tasks_of, unpacked

__all__ = [
    "GOAL_SPEED", "NOT_REACHED", "PIECE", "Array", "Situation", "Uncertain", "WorldAnswers",
    "WorldSpeeds", "answer_measure", "uncertain", "world_answers", "world_speeds",
]  # fmt: skip

Array = np.ndarray
PIECE = 512  # speeds that are solved in one piece: a quarter of a second or so
NOT_REACHED = "not_reached"  # as the core calls it
GOAL_SPEED = "speed"  # as a result of a pull to the end: at the end of the goal's road, if any


class Uncertain(NamedTuple):
    """The numbers of a scenario that are not known exactly: of the vehicle, and then of what its
    upgrades bring (`upgrades/<id>/...`). One entry of each for every number, SI.
    """

    address: tuple[str, ...]
    value: Array
    sigma: Array  # above zero
    low: Array  # of the range that it is cut at; infinite where there is none
    high: Array


class Situation(NamedTuple):
    """Where a vehicle is looked at, SI: held at an engine speed, at full throttle in a gear, or,
    with neither, at the end of its own pull.
    """

    results: tuple[str, ...]  # addresses to read there; `GOAL_SPEED` is that of the pull
    engine_speed: float | None = None
    gear: float | None = None  # from 1
    road_speed: float | None = None  # in a gear it makes the engine speed that is not named
    retard: float | None = None  # of the spark that was driven; else what the vehicle plans
    opening: float | None = None  # where no gear is named; fully open


class WorldSpeeds(NamedTuple):
    """What every set of upgrades reaches in every world."""

    speed: Array  # (worlds, sets), m/s, NaN where there is none
    end: Array  # (worlds, sets), the word for how it ended


class WorldAnswers(NamedTuple):
    """What every world has in every situation."""

    answers: Array  # (worlds, results of all situations one after the other), SI, NaN where none
    status: Array  # (worlds, situations), the word for how it ended


def answer_measure(address: str) -> Measure:
    """What a number measures that a situation is read for."""
    return SPEED if address == GOAL_SPEED else Measure.of_row(result_row(address))


def uncertain(scenario: ScenarioData) -> Uncertain:
    """Every number of a scenario that has one standard deviation, stated or of its default."""
    all_of_them = _core.uncertain(scenario.core)
    columns = ([one[key] for one in all_of_them] for key in Uncertain._fields)
    address, *numbers = columns
    return Uncertain(tuple(address), *(np.array(column, float) for column in numbers))


def world_speeds(
    scenario: ScenarioData,
    values: Array,
    sets: Sequence[Sequence[str]] = ((),),
    progress: bool | Progress | None = None,
    threads: int = 0,
    means: Means | None = None,
) -> WorldSpeeds:
    """The speed that a ranking gives each of these sets of upgrades, in every world; what a set
    leaves open takes its fastest value there. `values` is (worlds, numbers). The same for any
    number of threads and by whatever means, to the bit.
    """
    asked = [list(one) for one in sets]
    with listener(progress, "worlds", "world") as callback:
        if means is not None:
            return _in_pieces(scenario, values, asked, means, callback)
        found = _core.world_speeds(scenario.core, values, asked, threads, callback)
    speed = found["speed"]
    return WorldSpeeds(speed, np.array(found["end"], object).reshape(speed.shape))


def _in_pieces(
    scenario: ScenarioData,
    values: Array,
    asked: list[list[str]],
    means: Means,
    heard: Progress | None,
) -> WorldSpeeds:
    """Some worlds after the others. The sets stay together, since those of one engine share what
    is solved of it.
    """
    worlds = len(values)
    runs = list(pieces(0, worlds, max(1, PIECE // max(1, len(asked)))))
    make = tasks_of(scenario, "worlds", {"asked": asked})
    tasks = (make(values[run.start : run.stop], len(run)) for run in runs)
    speed = np.full((worlds, len(asked)), np.nan)
    end = np.full(speed.shape, NOT_REACHED, object)
    for place, answer in carried_out(tasks, worlds, means, heard):
        run, found = runs[place], unpacked(answer)
        speed[run.start : run.stop] = found["speed"]
        end[run.start : run.stop] = found["end"].astype(object)
    return WorldSpeeds(speed, end)


def world_answers(
    scenario: ScenarioData,
    values: Array,
    situations: Sequence[Situation],
    progress: bool | Progress | None = None,
    threads: int = 0,
) -> WorldAnswers:
    """What every world has in these situations. `values` is (worlds, numbers)."""
    asked: list[dict[str, Any]] = []
    for one in situations:
        where = one._asdict()
        where.pop("results")
        asked.append(where)
    results = [list(one.results) for one in situations]
    with listener(progress, "worlds", "world") as callback:
        found = _core.world_answers(scenario.core, values, asked, results, threads, callback)
    status = np.array(found["status"], object).reshape(len(found["answers"]), len(asked))
    return WorldAnswers(found["answers"], status)
