"""The mapped columns of a log in SI, each on its own time: lags taken off, silent sensors empty."""

from __future__ import annotations

from typing import NamedTuple

import numpy as np

from windwall.errors import Problem
from windwall.logs.addresses import SETTINGS, measure_of
from windwall.logs.mapping import Mapped, Mapping, quantity
from windwall.logs.sensors import silent
from windwall.logs.units import line
from windwall.logs.wrong import at, refuse
from windwall.quantities.measures import TIME
from windwall.results.log import Log, Mended
from windwall.scenario.data import ScenarioData

__all__ = ["Channel", "channels"]


class Channel(NamedTuple):
    """One result over time, SI."""

    address: str
    column: str
    time: np.ndarray  # s, when what is written was so
    values: np.ndarray
    sigma: float  # of the gauge as a whole, which no averaging takes away

    def on(self, time: np.ndarray) -> np.ndarray:
        """The same at other moments, by straight lines."""
        there = np.isfinite(self.values)
        if there.sum() < 2:
            return np.full(len(time), np.nan)
        found = np.interp(time, self.time[there], self.values[there], np.nan, np.nan)
        return np.where(self._near(time, self.time[there]), found, np.nan)

    def _near(self, time: np.ndarray, there: np.ndarray) -> np.ndarray:
        """Not across a hole: a number stands within three usual steps."""
        reach = 3 * float(np.median(np.diff(self.time))) + 1e-9
        after = np.clip(np.searchsorted(there, time), 0, len(there) - 1)
        before = np.maximum(after - 1, 0)
        return np.minimum(np.abs(there[after] - time), np.abs(there[before] - time)) <= reach


def channels(
    log: Log, mapping: Mapping, scenario: ScenarioData
) -> tuple[dict[str, Channel], tuple[Mended, ...]]:
    """By address. Refuses a column that is not there or that holds no numbers."""
    found: dict[str, Channel] = {}
    mended: list[Mended] = []
    problems: list[Problem] = []
    for one in mapping.columns:
        column = log.column(one.column)
        if column is None:
            there = ", ".join(each.name for each in log.columns)
            problems.append(at(0, one.column, f"is mapped, and missing; there are {there}"))
        elif column.unread:
            number, cell = column.unread
            said = f'"{cell[:40]}" is no number, and few others of the column are'
            problems.append(at(number, one.column, said))
        else:
            found[one.address] = _channel(log, one, column.values, scenario, mended)
    refuse(*problems)
    return found, tuple(mended)


def _channel(
    log: Log, one: Mapped, values: np.ndarray, scenario: ScenarioData, mended: list[Mended]
) -> Channel:
    measure = measure_of(scenario, one.address)
    factor, zero = line(one.unit, measure)
    made = values.copy()
    if one.address not in SETTINGS:
        for first, behind, said in silent(values):
            made[first:behind] = np.nan
            there = (
                f"{said} from line {log.lines[first]} to {log.lines[behind - 1]}; taken for none"
            )
            mended.append(Mended((int(log.lines[first]),), one.column, there))
    lag = quantity(one.lag, TIME) if one.lag else 0.0
    sigma = quantity(one.sigma, measure.spread) if one.sigma else 0.0
    return Channel(one.address, one.column, log.time - lag, factor * made + zero, sigma)
