"""How fast vehicles described like one are."""

from __future__ import annotations

from collections import Counter

import numpy as np

from windwall.results.drawn import AtTheEnd, DrawnSpeed
from windwall.scenario.data import ScenarioData, of_the_menu
from windwall.scenario.info import scenario_info
from windwall.study.carry_out import means_of
from windwall.study.draws import FOR_CHANCES, SEED, drawn_values
from windwall.study.executors import Executor
from windwall.study.journal import JournalLike
from windwall.study.prior import Prior
from windwall.study.progress import Progress
from windwall.study.worlds import world_speeds

__all__ = ["COUNTS", "NEAR", "Edges", "draw_speed"]

NEAR = 1e-3  # standard deviations from the end of a range
COUNTS = 0.1 / 3.6  # m/s, a change that is worth a word


def draw_speed(
    scenario: ScenarioData, count: int = FOR_CHANCES, seed: int = SEED,
    progress: bool | Progress | None = None, threads: int = 0,
    executor: Executor = None, journal: JournalLike = None,
) -> DrawnSpeed:  # fmt: skip
    """The speed that a ranking goes by, in so many worlds; `executor` and `journal` are those of a
    sweep.
    """
    prior = Prior(scenario)
    values = drawn_values(prior, count, seed)
    with means_of(scenario, executor, journal, threads) as means:
        found = world_speeds(scenario, values, ((),), progress, threads, means)
    info = scenario_info(scenario)
    edges = Edges(scenario, prior, threads)
    return DrawnSpeed(
        title=info.title,
        system=info.system,
        goal_speed=info.goal_speed,
        asked=count,
        seed=seed,
        speeds=found.speed[:, 0],
        ends=dict(Counter(found.end[:, 0])),
        stated=edges.stated,
        one_sided=edges.found,
        all_moved=edges.all_moved,
        observed=len(scenario.observed),
    )


class Edges:
    """The speed as stated, and what every input does to it that is stated or assumed at the end of
    its range: with each in the middle of what it may be, and with all of them.
    """

    def __init__(self, scenario: ScenarioData, prior: Prior, threads: int = 0) -> None:
        self.scenario, self.prior = scenario, prior
        places, middles = self._places(), prior.to_values(np.zeros((1, len(prior))))[0]
        worlds = np.repeat(prior.value[None], 2 + len(places), axis=0)
        for row, place in enumerate(places, 1):
            worlds[row, place] = worlds[-1, place] = middles[place]
        speed = world_speeds(scenario, worlds, ((),), False, threads).speed[:, 0]
        self.stated = float(speed[0]) if np.isfinite(speed[0]) else None
        self.all_moved = float(speed[-1] - speed[0])
        changes = zip(places, speed[1:-1] - speed[0], strict=True)
        found = (self._edge(at, middles[at], change) for at, change in changes)
        counted = (one for one in found if abs(one.change) > COUNTS)
        self.found = tuple(sorted(counted, key=lambda one: -abs(one.change)))

    def _places(self) -> list[int]:
        prior = self.prior
        room = np.minimum(prior.value - prior.low, prior.high - prior.value) / prior.sigma
        near = np.flatnonzero(room < NEAR)
        return [int(at) for at in near if not of_the_menu(prior.addresses[at])]

    def _edge(self, at: int, middle: float, change: float) -> AtTheEnd:
        address = self.prior.addresses[at]
        measure = self.scenario.measure(address)
        return AtTheEnd(address, measure, float(self.prior.value[at]), float(middle), float(change))
