"""What worlds say of facts: from standard normals to the numbers that the facts are held against.

Beside the uncertain numbers of the vehicle stand what is not known of how it was seen: how late the
spark was that was driven, how fast a coast-down began, and by how much the model itself is off in
each kind of fact. Their effect is taken to be straight.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import NamedTuple

import numpy as np

from windwall import _core
from windwall.results.situation import Apart
from windwall.scenario.data import ScenarioData
from windwall.study.apart import answer_prepared, coast_speeds, on_its_way, prepared, slowed
from windwall.study.calibrate_facts import Fact
from windwall.study.calibrate_likelihood import Likelihood
from windwall.study.prior import Prior
from windwall.study.worlds import GOAL_SPEED, Situation, uncertain, world_answers

__all__ = ["AS_STATED", "TOP_SPEED", "Chosen", "Circumstance", "Places", "Stated", "Worlds"]

Stated = tuple[tuple[str, float], ...]
# Facts by their number, by the result that they are of, by the situation in which it is read.
Places = dict[Stated, dict[str, list[int]]]
TOP_SPEED: Stated = ()
AS_STATED: Stated = ()  # the day of the file


class Circumstance(NamedTuple):
    """Something of how facts were seen that is not known exactly, and what one standard deviation
    of it does to each fact, SI.
    """

    name: str
    shifts: np.ndarray  # (facts,)


class Worlds:
    """Facts and speeds of many vehicles that a scenario allows."""

    def __init__(self, scenario: ScenarioData, facts: Sequence[Fact], threads: int = 0) -> None:
        self.scenario, self.facts, self.threads = scenario, list(facts), threads
        self.prior = Prior(scenario)
        self.solved = 0  # situations of worlds
        self._days: dict[Stated, tuple[ScenarioData, list[int]]] = {}
        self._apart = {one.apart: prepared(one.apart, scenario) for one in facts if one.apart}

    def answers(self, z: np.ndarray) -> np.ndarray:
        """Facts and, last, the speed (worlds, facts + 1) of worlds (worlds, numbers); SI, NaN where
        there is none.
        """
        return self._at_sparks(z, 0.0, np.ones(len(self.facts), bool))

    def circumstances(self) -> list[Circumstance]:
        """Of all facts, about the vehicle as it is described."""
        usual = np.zeros((1, len(self.prior.addresses)))
        found = [*self._sparks(usual), *self._starts()]
        for kind in dict.fromkeys(one.kind for one in self.facts):
            off = [one.model_sigma * (one.kind == kind) for one in self.facts]
            found.append(Circumstance(f"the model's own {kind}", np.array(off)))
        return found

    def likelihood(self, tails: float | None = None) -> Likelihood:
        """How likely all facts are."""
        value, sigma = (
            np.array([getattr(one, key) for one in self.facts]) for key in ("value", "sigma")
        )
        return Likelihood(value, sigma, np.array([one.side for one in self.facts]), tails)

    def _sparks(self, usual: np.ndarray) -> Iterator[Circumstance]:
        groups = dict.fromkeys(one.group for one in self.facts if one.retard_sigma > 0)
        for group in groups:
            these = np.array([one.group == group for one in self.facts])
            late, early = (self._at_sparks(usual, way, these)[0, :-1] for way in (1.0, -1.0))
            shifts = np.where(np.isfinite(late - early), (late - early) / 2, 0.0)
            yield Circumstance(f"the spark of {group}", shifts)

    def _starts(self) -> Iterator[Circumstance]:
        """The first speed of a coast-down is read no better than the others."""
        for apart, made in self._apart.items():
            rows = [at for at, one in enumerate(self.facts) if one.apart == apart and one.row]
            if not rows:
                continue
            sigma, first = self.facts[rows[0]].sigma, apart.coasting[0][1]
            ends = [coast_speeds(apart, made, first + way * sigma) for way in (1, -1)]
            shifts = np.zeros(len(self.facts))
            for at in rows:
                shifts[at] = (ends[0] - ends[1])[self.facts[at].row] / 2
            yield Circumstance(f"the first speed of {self.facts[rows[0]].group}", shifts)

    def _at_sparks(self, z: np.ndarray, way: float, these: np.ndarray) -> np.ndarray:
        """With the sparks of some facts that many standard deviations later."""
        values = self.prior.to_values(z)
        days: dict[Stated, Places] = {AS_STATED: {TOP_SPEED: {GOAL_SPEED: [len(self.facts)]}}}
        for at, one in enumerate(self.facts):
            if not one.apart:
                where = _later(one, way) if these[at] else one.situation
                places = days.setdefault(one.day, {})
                places.setdefault(where, {}).setdefault(one.address, []).append(at)
        made = np.full((len(z), len(self.facts) + 1), np.nan)
        for day, places in days.items():
            self._answer_on(day, places, values, made)
        self._answer_apart(values, made)
        return made

    def _answer_on(self, day: Stated, places: Places, values: np.ndarray, made: np.ndarray) -> None:
        scenario, known = self._on(day)
        asked = [Situation(tuple(results), **dict(where)) for where, results in places.items()]
        found = world_answers(scenario, values[:, known], asked, False, self.threads).answers
        self.solved += len(values) * len(asked)
        columns = [facts for results in places.values() for facts in results.values()]
        for column, facts in enumerate(columns):
            made[:, facts] = found[:, [column]]

    def _on(self, day: Stated) -> tuple[ScenarioData, list[int]]:
        """The scenario on that day, and which of the numbers are still uncertain on it: what was
        read of the weather is taken to be exact.
        """
        if day not in self._days:
            scenario = self.scenario.set(dict(day)) if day else self.scenario
            places = {address: at for at, address in enumerate(self.prior.addresses)}
            self._days[day] = scenario, [places[one] for one in uncertain(scenario).address]
        return self._days[day]

    def _answer_apart(self, values: np.ndarray, made: np.ndarray) -> None:
        for apart, ready in self._apart.items():
            columns = [at for at, one in enumerate(self.facts) if one.apart == apart]
            rows = [self.facts[at].row for at in columns]
            cars = [ScenarioData(_core.world(ready.core, list(numbers))) for numbers in values]
            if rows[0] is None:
                made[:, columns[0]] = [_number(answer_prepared(apart, car)) for car in cars]
            else:
                made[:, columns] = _coasted(apart, cars)[:, rows]
            self.solved += len(values)


def _number(found: float | None) -> float:
    return np.nan if found is None else found


def _coasted(apart: Apart, cars: list[ScenarioData]) -> np.ndarray:
    """Speeds (worlds, rows of the table)."""
    times, speeds = np.array(apart.coasting).T
    first = np.full(len(cars), speeds[0])
    return slowed([on_its_way(apart, car) for car in cars], times, first)


def _later(fact: Fact, way: float) -> tuple[tuple[str, float], ...]:
    later = {"retard": dict(fact.situation).get("retard", 0.0) + way * fact.retard_sigma}
    return tuple(sorted((dict(fact.situation) | (later if fact.retard_sigma else {})).items()))


class Chosen:
    """A model of some of the numbers, the others held as they are, and of the circumstances."""

    def __init__(self, worlds: Worlds, numbers: np.ndarray, about: Sequence[Circumstance]) -> None:
        self.worlds, self.numbers = worlds, numbers
        shifts = [one.shifts for one in about]
        self.shifts = np.array(shifts).reshape(len(shifts), len(worlds.facts))

    @property
    def size(self) -> int:
        return len(self.numbers) + len(self.shifts)

    def __call__(self, z: np.ndarray) -> np.ndarray:
        """Facts (worlds, facts) of standard normals (worlds, numbers and circumstances)."""
        return self.shifted(self.worlds.answers(self.spread(z)), z)[:, :-1]

    def spread(self, z: np.ndarray, others: np.ndarray | None = None) -> np.ndarray:
        """The same among all numbers of the scenario, the others at nothing unless given."""
        every = np.zeros((len(z), len(self.worlds.prior.addresses))) if others is None else others
        every = every.copy()
        every[:, self.numbers] = z[:, : len(self.numbers)]
        return every

    def shifted(self, answers: np.ndarray, z: np.ndarray) -> np.ndarray:
        """Answers with what the circumstances do to the facts."""
        made = answers.copy()
        made[:, :-1] += z[:, len(self.numbers) :] @ self.shifts
        return made
