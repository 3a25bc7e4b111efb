"""What was read of a log: its columns, what was mended in them, its pulls and what they tell."""

from __future__ import annotations

from typing import Any, NamedTuple

import numpy as np

from windwall.results.scenario_info import ScenarioInfo
from windwall.results.views import Documented

__all__ = ["SHOWN_LINES", "Log", "LogColumn", "LogFact", "Mended", "Proposed", "Pull", "ReadLog"]

SHOWN_LINES = 3


class Mended(NamedTuple):
    """Something that was wrong with a log and understood all the same; lines count from 1."""

    lines: tuple[int, ...]
    column: str  # empty where it is the whole line, or the whole file
    message: str

    def where(self) -> str:
        """`lines 12, 15, 20 and 41 more, column Speed`, as much of it as is known."""
        shown = ", ".join(map(str, self.lines[:SHOWN_LINES]))
        more = len(self.lines) - SHOWN_LINES
        places = [f"line{'s' * (len(self.lines) > 1)} {shown}"] if self.lines else []
        if more > 0:
            places[0] += f" and {more} more"
        return ", ".join(places + ([f"column {self.column}"] if self.column else []))

    def text(self) -> str:
        place = self.where()
        return f"{place}: {self.message}" if place else self.message


class LogColumn(NamedTuple):
    """One column as it stands in the file: its unit as written, numbers NaN where there is none."""

    name: str
    unit: str
    values: np.ndarray
    unread: tuple[int, str] | None = None  # the first line with a cell that is no number, and it


class Log(NamedTuple):
    """A log on one clock: seconds from its first row, rising within each of its parts."""

    source: str
    columns: tuple[LogColumn, ...]  # without the clock
    time: np.ndarray
    part: np.ndarray  # of each row; a new one begins where the clock begins anew or stood still
    lines: np.ndarray  # of each row, in the file
    clock: str  # the column that was taken for it
    began: str  # the day and time of the first row, as far as the file says
    mended: tuple[Mended, ...]
    dialect: str  # how it was read, in words

    def column(self, name: str) -> LogColumn | None:
        return next((one for one in self.columns if one.name == name), None)


class Proposed(NamedTuple):
    """What a column was taken for, or why for nothing."""

    column: str
    address: str  # empty where it is left out
    unit: str
    reasons: tuple[str, ...]


class Pull(NamedTuple):
    """A stretch at full throttle in one gear without slip; rows are those of the log."""

    name: str
    first: int
    last: int
    lines: tuple[int, int]
    gear: int | None
    slip: float | None  # by how much its engine speed lies above that of the gear, as a share
    engine_speed: tuple[float, float] | None  # rad/s at its ends
    time: tuple[float, float]
    day: dict[str, float]  # input address -> SI, as far as the log or its mapping says


class LogFact(NamedTuple):
    """One number that a pull tells of a result, SI."""

    situation: dict[str, Any]
    address: str
    value: float
    sigma: float
    source: str
    group: str
    day: dict[str, float]

    def plain(self) -> dict[str, Any]:
        """As those who learn from it take it."""
        return self._asdict()


class ReadLog(Documented):
    """A log held against a scenario: what was read, what was mended, its pulls, its facts."""

    def __init__(
        self,
        log: Log,
        mapping: str,
        proposed: tuple[Proposed, ...],
        pulls: tuple[Pull, ...],
        left_out: tuple[str, ...],
        facts: tuple[LogFact, ...],
        scenario_info: ScenarioInfo,
    ) -> None:
        self.log, self.mapping, self.proposed = log, mapping, proposed
        self.pulls, self.left_out, self.facts = pulls, left_out, facts
        self.scenario_info = scenario_info

    @property
    def answered(self) -> bool:
        """Whether it tells anything."""
        return bool(self.facts)

    @property
    def mended(self) -> tuple[Mended, ...]:
        return self.log.mended
