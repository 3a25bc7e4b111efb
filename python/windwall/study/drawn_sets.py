"""Sets of upgrades in common worlds, each solved once, block by block."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable

import numpy as np

from windwall.scenario.data import ScenarioData
from windwall.study.carry_out import Means
from windwall.study.progress import Progress
from windwall.study.worlds import Array, world_speeds

__all__ = ["BLOCK", "DrawnSets", "Ids"]

BLOCK = 32  # worlds that are solved before a stop is heard of
Ids = frozenset[str]


class DrawnSets:
    """Speeds of sets over the worlds, solved as they are asked for and kept."""

    def __init__(
        self,
        scenario: ScenarioData,
        values: Array,
        threads: int = 0,
        means: Means | None = None,
    ) -> None:
        self.scenario, self.values = scenario, values
        self.threads, self.means = threads, means
        self.ends: Counter[str] = Counter()
        self._speeds: dict[Ids, list[Array]] = {}

    def solve(self, sets: Iterable[Ids], worlds: int, heard: Progress | None = None) -> bool:
        """The first so many worlds of these sets; False where it was stopped on the way. What was
        solved by then stays.
        """
        wanted = list(dict.fromkeys(sets))
        starts = range(0, worlds, BLOCK)
        try:
            for at in starts:
                stop = min(at + BLOCK, worlds)
                self._block([one for one in wanted if self.solved(one) < stop], at, stop)
                if heard is not None and heard(stop, worlds) is False:
                    return False
        except KeyboardInterrupt:
            return False
        return True

    def _block(self, sets: list[Ids], start: int, stop: int) -> None:
        """Sets that know the same number of worlds go on together."""
        for known in sorted({self.solved(one) for one in sets}):
            these = [one for one in sets if self.solved(one) == known]
            rows = self.values[max(start, known) : stop]
            found = world_speeds(self.scenario, rows, these, False, self.threads, self.means)
            self.ends.update(found.end.ravel())
            for one, column in zip(these, found.speed.T, strict=True):
                self._speeds.setdefault(one, []).append(column)

    def solved(self, one: Ids) -> int:
        """In how many worlds a set is known."""
        return sum(map(len, self._speeds.get(one, ())))

    def speed(self, one: Ids, worlds: int) -> Array:
        """m/s over the first so many worlds; NaN where there is no answer or it was not reached."""
        known = np.concatenate(self._speeds.get(one) or [np.empty(0)])[:worlds]
        return np.concatenate([known, np.full(worlds - len(known), np.nan)])

    def table(self, sets: Iterable[Ids], worlds: int) -> Array:
        """(worlds, sets), likewise."""
        return np.column_stack([self.speed(one, worlds) for one in sets])
