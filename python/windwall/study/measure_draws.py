"""What each gauge teaches, over worlds that are the same for all of them."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from functools import cached_property
from itertools import pairwise
from math import sqrt
from time import perf_counter
from typing import TYPE_CHECKING

import numpy as np

from windwall.results.measure import MeasurePlan, Taught
from windwall.study.draws import normal_draws
from windwall.study.information import gain_of_choosing, left, taught
from windwall.study.information_drawn import gain_over_draws, left_over_draws
from windwall.study.measure_model import Asked
from windwall.study.progress import Progress, listener
from windwall.study.readings import Sensor

if TYPE_CHECKING:
    from numpy import ndarray

__all__ = ["BLOCK", "TIMED", "Draws", "Planned", "drawn"]


Planned = Callable[[MeasurePlan], None]
TIMED = 8  # worlds that tell what all of them will take
BLOCK = 32  # worlds between two looks at who waits, and the fewest that curves are laid through


def drawn(
    asked: Asked, count: int, planned: Planned | None, progress: bool | Progress | None
) -> ndarray:
    """(worlds, columns) of so many worlds, or of those that were done when somebody stopped it."""
    z, found = normal_draws(len(asked.prior), count), list[np.ndarray]()
    _ = asked.middle  # what is made once is no cost of a world
    with listener(progress, "measuring", "world") as heard:
        for run in _runs(count):
            began = perf_counter()
            try:
                found.append(asked.of(z[run]))
            except KeyboardInterrupt:
                if run.start < min(BLOCK, count):
                    raise
                break
            if run.start == 0 and planned is not None:
                each = (perf_counter() - began) / run.stop
                planned(MeasurePlan(count, len(asked.kits), each))
            stopped = heard is not None and heard(run.stop, count) is False
            if stopped and run.stop >= BLOCK:
                break
    return np.concatenate(found)


def _runs(count: int) -> Iterator[slice]:
    """The worlds that are timed, and then block by block."""
    ends = [0, TIMED, *range(BLOCK, count, BLOCK), count]
    return (slice(first, last) for first, last in pairwise(ends) if first < last <= count)


class Draws:
    """The whole model in so many worlds; those without an answer somewhere are left out."""

    def __init__(self, asked: Asked, answers: ndarray) -> None:
        self.asked, self.count = asked, len(answers)
        wanted = np.isfinite(asked.middle)
        whole = np.isfinite(answers[:, wanted]).all(axis=1)
        self.refused = int((~whole).sum())
        self.answers = answers[whole]
        self.speeds = self.answers[:, : len(asked.kits)]

    @cached_property
    def two(self) -> tuple[int, int] | None:
        """Places of the two fastest sets; None where there is no choice."""
        best = np.argsort(-self.speeds.mean(axis=0))[:2]
        return (int(best[0]), int(best[1])) if len(best) > 1 else None

    @cached_property
    def ahead(self) -> ndarray | None:
        """The fastest over the second, in each world."""
        if self.two is None:
            return None
        return self.speeds[:, self.two[0]] - self.speeds[:, self.two[1]]

    @cached_property
    def perfect(self) -> float | None:
        """What choosing with everything known is worth."""
        if self.two is None:
            return None
        return float(self.speeds.max(axis=1).mean() - self.speeds.mean(axis=0).max())

    def read(self, sensor: Sensor) -> ndarray:
        """(worlds, readings) without errors; an input that is known exactly is the same in all."""
        columns = self.asked.columns_of(sensor)
        none = np.zeros(len(self.answers))
        return np.column_stack([none if at is None else self.answers[:, at] for at in columns])

    def by_lines(self, sensor: Sensor) -> Taught:
        """By means and covariances alone: the worlds stand for directions, each one standard
        deviation, along which speeds and readings move.
        """
        speeds, reads = self._moves(self.speeds), self._moves(self.read(sensor))
        taken = taught(reads, self.asked.noise(sensor))
        if self.two is None:
            return Taught(left(speeds[0], taken), None, None, None)
        ahead = speeds[self.two[0]] - speeds[self.two[1]]
        gain = gain_of_choosing(self.speeds.mean(axis=0), speeds, taken)
        return Taught(left(speeds[0], taken), left(ahead, taken), gain, None)

    def _moves(self, numbers: ndarray) -> ndarray:
        """(numbers, worlds), of which the squares sum to the covariance."""
        return (numbers - numbers.mean(axis=0)).T / sqrt(len(numbers))

    def by_curves(self, sensor: Sensor) -> Taught:
        """By curves through what its sensors would show in each world."""
        read, noise = self.read(sensor), self.asked.noise(sensor)
        speed = left_over_draws(read, noise, self.speeds[:, 0])
        if self.ahead is None:
            return Taught(speed, None, None, None)
        ahead = left_over_draws(read, noise, self.ahead)
        return Taught(speed, ahead, *gain_over_draws(read, noise, self.speeds))
