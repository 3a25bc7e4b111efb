"""What a search for a gearing has tried: it can be stopped, and keeps what it found until then."""

from __future__ import annotations

from collections.abc import Callable, Iterable

from windwall import _core
from windwall.errors import NoAnswer, ScenarioError
from windwall.quantities.measures import LENGTH, SPEED, Measure
from windwall.results.gearing import Mark, Tried
from windwall.scenario.data import ScenarioData
from windwall.study.solve import top_speed
from windwall.study.standing_start import DONE, WHY, standing_start, until

__all__ = ["CLOSER", "GRID", "PIECE", "Merits", "Search", "allowed", "between", "speeds", "whole"]

GRID = 25
CLOSER = 2  # times that a grid is drawn around the best
PIECE = 4  # values that are solved at once; a run is driven by itself

Merits = Callable[[list[float]], list[float | None]]


class Search:
    """Every value that was tried, for the highest speed or, with a mark, for the least time."""

    def __init__(self, scenario: ScenarioData, address: str, mark: Mark | None) -> None:
        self.scenario, self.address, self.mark = scenario, address, mark
        self.tried: list[Tried] = []
        self.ends: dict[
            float, tuple[float, str]
        ] = {}  # of runs that do not get there: how far, why
        self.wanted, self.stopped = 0, False
        self._merits = speeds(scenario, address) if mark is None else self._times

    def run(self, now: float, reach: float, counted: bool) -> None:
        """Whole numbers all of them, from the one there is outwards; else a grid, drawn closer."""
        values = whole(now, reach) if counted else between(now / reach, now * reach)
        self.add(allowed(self.scenario, self.address, {*values, now}), now)
        for _ in range(0 if counted else CLOSER):
            if not self.stopped:
                at = self.tried.index(self.best())
                beside = self.tried[max(at - 1, 0)], self.tried[min(at + 1, len(self.tried) - 1)]
                closer = {*between(beside[0].value, beside[1].value)}
                self.add(sorted(closer - {one.value for one in self.tried}), now)

    def add(self, values: list[float], now: float) -> None:
        """Tries values, the nearest to the one there is first, until somebody stops it."""
        self.wanted += len(values)
        values = sorted(values, key=lambda one: abs(one - now))
        size = PIECE if self.mark is None else 1
        try:
            for at in range(0, len(values), size):
                piece = values[at : at + size]
                self.tried += map(Tried, piece, self._merits(piece))
        except KeyboardInterrupt:
            self.stopped = True
        self.tried.sort()

    def best(self) -> Tried:
        """The best so far; raises `NoAnswer` where none has one, and what came nearest."""
        answered = [one for one in self.tried if one.merit is not None]
        if self.stopped and not answered:
            raise KeyboardInterrupt
        if not answered:
            raise NoAnswer(self._none(), "no_answer")
        return (max if self.mark is None else min)(answered, key=lambda one: one.merit or 0.0)

    def _times(self, values: list[float]) -> list[float | None]:
        return [self._time(value) for value in values]

    def _time(self, value: float) -> float | None:
        assert self.mark is not None
        run = standing_start(self.scenario.set({self.address: value}), until(self.mark))
        if run.ended == DONE:
            return run.time
        came = run.distance if self.mark.speed is None else run.speed
        self.ends[value] = came, WHY.get(run.ended, run.ended)
        return None

    def _none(self) -> str:
        """That nothing gets there, and why the one does not that comes furthest."""
        measure: Measure = self.scenario.measure(self.address)
        first, last = (self._shown(one.value, measure) for one in (self.tried[0], self.tried[-1]))
        every = f"{self.address} from {first} to {last}"
        if self.mark is None:
            why = top_speed(self.scenario, brief=True).sentence
            return f"No gearing that was tried, {every}, has an answer. As it is: {why}"
        system, mark = self.scenario.system, self.mark
        goal = mark.measure.short(mark.value, system, 6)
        value = max(self.ends, key=lambda one: self.ends[one][0])
        came, why = self.ends[value]
        far = SPEED.text(came, system, 4) if mark.distance is None else LENGTH.text(came, system)
        nearest = f"with {self._shown(value, measure)}, it comes to {far} ({why})"
        return f"No gearing that was tried, {every}, gets to {goal}: at best, {nearest}."

    def _shown(self, value: float, measure: Measure) -> str:
        return measure.short(value, self.scenario.system)


def speeds(scenario: ScenarioData, address: str) -> Merits:
    """The speeds with values of an address."""

    def found(values: list[float]) -> list[float | None]:
        swept = _core.sweep(scenario.core, [address], [values], [], 0, None)["speed"]
        return [float(one) if one == one else None for one in swept]

    return found


def whole(now: float, reach: float) -> list[float]:
    return [float(one) for one in range(round(now / reach), round(now * reach) + 1)]


def between(low: float, high: float) -> list[float]:
    return [low * (high / low) ** (step / (GRID - 1)) for step in range(GRID)]


def allowed(scenario: ScenarioData, address: str, values: Iterable[float]) -> list[float]:
    """Those that the row takes, by size."""
    return [value for value in sorted(values) if _takes(scenario, address, value)]


def _takes(scenario: ScenarioData, address: str, value: float) -> bool:
    try:
        _core.axis(scenario.core, address, [value])
    except ScenarioError:
        return False
    return True
