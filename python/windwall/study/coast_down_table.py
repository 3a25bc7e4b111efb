"""A table of time and speed, as a logger or a stopwatch leaves it, checked and cut into runs."""

from __future__ import annotations

import os
from collections.abc import Iterator, Mapping
from typing import TYPE_CHECKING, Any, NamedTuple

from windwall import _core
from windwall.errors import Problem, ScenarioError
from windwall.quantities.measures import SPEED, TIME, Measure

if TYPE_CHECKING:
    import numpy as np
    import pandas

__all__ = ["MEASURES", "MOST_ROWS", "WAYS", "Run", "runs_of"]

MEASURES = {"time": TIME, "speed": SPEED}
WAYS = {"there": 1, "back": -1}
MOST_ROWS = 1_000_000


class Run(NamedTuple):
    """One coast-down: seconds from its first row on, m/s, and which way it went."""

    name: str
    way: int  # 1 there, -1 back
    time: np.ndarray
    speed: np.ndarray


def runs_of(table: Any, units: Mapping[str, str] | None) -> list[Run]:
    """The runs of a table with the columns `time` and `speed`, and perhaps `run` and `way`.

    Raises ScenarioError with everything that is wrong, by row (from 1) and column.
    """
    read = _frame(table)
    problems = list(_wrong_columns(read, units or read.attrs.get("units", {})))
    _raise(problems)
    columns = _si(read, units or read.attrs["units"])
    ways, names = _ways(read), _names(read)
    problems = [*_wrong_cells(columns), *_wrong_ways(read, ways)]
    _raise(problems)
    runs = []
    for name in dict.fromkeys(names):
        rows = [at for at, one in enumerate(names) if one == name]
        problems += _wrong_run(name, rows, columns, ways)
        time = columns["time"][rows]
        runs.append(Run(name, ways[rows[0]] or 1, time - time[0], columns["speed"][rows]))
    _raise(problems)
    return runs


def _frame(table: Any) -> pandas.DataFrame:
    import pandas as pd

    if isinstance(table, (str, os.PathLike)):
        return pd.read_csv(table, comment="#")
    return table if isinstance(table, pd.DataFrame) else pd.DataFrame(table)


def _raise(problems: list[Problem]) -> None:
    if problems:
        raise ScenarioError(problems, "coast-down table")


def _at(row: int, column: str, message: str) -> Problem:
    return Problem(f"row {row + 1}, column {column}", 0, 0, message)


def _wrong_columns(read: pandas.DataFrame, units: Mapping[str, str]) -> Iterator[Problem]:
    if not 2 <= len(read) <= MOST_ROWS:
        yield Problem("rows", 0, 0, f"{len(read)} rows are outside 2 to {MOST_ROWS}")
    for column, measure in MEASURES.items():
        if column not in read:
            there = ", ".join(map(str, read.columns)) or "nothing"
            yield Problem(f"column {column}", 0, 0, f"is missing; there are {there}")
        elif column not in units:
            message = f'in what? State units={{"{column}": "{measure.unit}"}}, or "{measure.si}"'
            yield Problem(f"column {column}", 0, 0, message)
        else:
            yield from _wrong_unit(column, units[column], measure)


def _wrong_unit(column: str, unit: str, measure: Measure) -> Iterator[Problem]:
    try:
        _factor(unit, measure)
    except ValueError as refused:
        yield Problem(f"column {column}", 0, 0, str(refused))


def _factor(unit: str, measure: Measure) -> float:
    """SI of one such unit."""
    return _core.read_quantity(f"1 {unit}", measure.dimension, measure.unit, f"1 {measure.unit}")[0]


def _si(read: pandas.DataFrame, units: Mapping[str, str]) -> dict[str, np.ndarray]:
    import pandas as pd

    return {
        column: pd.to_numeric(read[column], errors="coerce").to_numpy(float)
        * _factor(units[column], measure)
        for column, measure in MEASURES.items()
    }


def _names(read: pandas.DataFrame) -> list[str]:
    """The run of every row; without such a column each way is one run."""
    for column in ("run", "way"):
        if column in read:
            return [str(one) for one in read[column]]
    return ["1"] * len(read)


def _ways(read: pandas.DataFrame) -> list[int | None]:
    return [WAYS.get(one) for one in read["way"]] if "way" in read else [1] * len(read)


def _wrong_ways(read: pandas.DataFrame, ways: list[int | None]) -> Iterator[Problem]:
    for at, way in enumerate(ways):
        if way is None:
            found = read["way"].iloc[at]
            yield _at(at, "way", f'{found!r} is no way along the road; write "there" or "back"')


def _wrong_cells(columns: dict[str, np.ndarray]) -> Iterator[Problem]:
    import numpy as np

    for column, values in columns.items():
        for at in np.flatnonzero(~np.isfinite(values)):
            yield _at(int(at), column, "is no number")
    for at in np.flatnonzero(columns["speed"] <= 0):
        yield _at(int(at), "speed", "is no speed ahead; a run ends before it stands")


def _wrong_run(
    name: str, rows: list[int], columns: dict[str, np.ndarray], ways: list[int | None]
) -> Iterator[Problem]:
    import numpy as np

    if len(rows) < 2:
        yield _at(rows[0], "run", f"run {name} has one row, and needs two at least")
        return
    for early in np.flatnonzero(np.diff(columns["time"][rows]) <= 0):
        later = rows[int(early) + 1]
        yield _at(later, "time", f"is not later than the row before it in run {name}")
    if not columns["speed"][rows[-1]] < columns["speed"][rows[0]]:
        yield _at(rows[-1], "speed", f"run {name} ends no slower than it began")
    for at in rows:
        if ways[at] != ways[rows[0]]:
            yield _at(at, "way", f"run {name} began the other way")
