"""Rows put in the order of their clock: what came late, what came twice, where nothing came."""

from __future__ import annotations

from typing import NamedTuple

import numpy as np

from windwall.logs.wrong import at, refuse
from windwall.results.log import Mended

__all__ = ["GAP", "LATE", "LEAST_ROWS", "USUAL", "Ordered", "order"]

LATE = 5  # rows within which a clock that went back is ahead again, where rows only came late
GAP = 5.0  # of the usual step, a longer one is a gap
USUAL = 90  # percentile of the steps
LEAST_ROWS = 5


class Ordered(NamedTuple):
    """Which rows are kept, in order, with their seconds and parts."""

    rows: np.ndarray
    seconds: np.ndarray
    part: np.ndarray
    mended: list[Mended]


def order(
    seconds: np.ndarray, lines: np.ndarray, begins: list[int], clock: str, same: list[bool]
) -> Ordered:
    """`begins` are rows behind a heading that stands again; `same` marks a row that repeats the one
    before it, cell by cell.
    """
    mended: list[Mended] = []
    kept = np.flatnonzero(np.isfinite(seconds))
    twice = [row for row in kept if same[row]]
    if twice:
        _say(mended, lines[twice], "", "the same row as the one before it; left out")
        kept = np.setdiff1d(kept, twice)
    _refuse_few(kept, lines, clock)
    if not np.ptp(seconds[kept]):
        refuse(at(int(lines[kept[1]]), clock, "the clock stands still"))
    part = _parts(seconds[kept], np.isin(kept, begins), lines[kept], clock, mended)
    sorted_ = np.lexsort((np.arange(len(kept)), seconds[kept], part))
    moved = kept[_late(seconds[kept], part)]
    if len(moved):
        _say(mended, lines[moved], clock, "came late; put in its place")
    kept, part = kept[sorted_], part[sorted_]
    made = _without_twins(Ordered(kept, seconds[kept], part, mended), lines, clock)
    _refuse_few(made.rows, lines, clock)
    return _at_gaps(made, lines, clock)


def _refuse_few(kept: np.ndarray, lines: np.ndarray, clock: str) -> None:
    if len(kept) < LEAST_ROWS:
        message = f"{len(kept)} rows with a time are fewer than the {LEAST_ROWS} that are needed"
        refuse(at(int(lines[0]), clock, message))


def _say(mended: list[Mended], lines: np.ndarray, column: str, message: str) -> None:
    mended.append(Mended(tuple(int(one) for one in lines), column, message))


def _parts(
    seconds: np.ndarray, heads: np.ndarray, lines: np.ndarray, clock: str, mended: list[Mended]
) -> np.ndarray:
    """The part of each row: a new one where the clock went back and stayed back."""
    part = np.zeros(len(seconds), int)
    highest = seconds[0]
    for row in range(1, len(seconds)):
        part[row] = part[row - 1]
        back = seconds[row] < highest
        stays = back and np.max(seconds[row : row + LATE + 1]) < highest
        if (stays or heads[row]) and (back or heads[row]):
            part[row] += 1
            highest = seconds[row]
            if back:
                _say(mended, lines[row : row + 1], clock, "the clock begins anew; a new part")
        highest = max(highest, seconds[row])
    return part


def _late(seconds: np.ndarray, part: np.ndarray) -> np.ndarray:
    """Rows behind a later one of their part."""
    late = [
        row
        for one in np.unique(part)
        for rows in [np.flatnonzero(part == one)]
        for row in rows[seconds[rows] < np.maximum.accumulate(seconds[rows])]
    ]
    return np.array(late, int)


def _without_twins(made: Ordered, lines: np.ndarray, clock: str) -> Ordered:
    """Stamps that stand twice: spread where the clock is coarse, and else the first is kept."""
    kept, seconds, part, mended = made
    twin = np.r_[False, (np.diff(seconds) == 0) & (np.diff(part) == 0)]
    if twin.mean() > 0.5 - 1 / len(twin):
        said = "several rows share a stamp all along; they are spread evenly to the next one"
        mended.append(Mended((), clock, said))
        return made._replace(seconds=_spread(seconds, part, twin))
    if twin.any():
        said = "the stamp of the row before it with other numbers; the first is kept"
        _say(mended, lines[kept[twin]], clock, said)
    return Ordered(kept[~twin], seconds[~twin], part[~twin], mended)


def _spread(seconds: np.ndarray, part: np.ndarray, twin: np.ndarray) -> np.ndarray:
    starts = np.flatnonzero(~twin)
    counts = np.diff(np.r_[starts, len(seconds)])
    steps = np.diff(seconds[starts])
    inside = steps[(steps > 0) & (np.diff(part[starts]) == 0)]
    usual = float(np.median(inside)) if len(inside) else 1.0
    after = np.r_[steps, usual]
    after[(after <= 0) | (after > GAP * usual)] = usual
    place = np.arange(len(seconds)) - np.repeat(starts, counts)
    return seconds + place * np.repeat(after / counts, counts)


def _at_gaps(made: Ordered, lines: np.ndarray, clock: str) -> Ordered:
    """A new part behind every gap, so that nothing is smoothed across one."""
    steps, within = np.diff(made.seconds), np.diff(made.part) == 0
    usual = float(np.percentile(steps[within & (steps > 0)], USUAL))
    gaps = within & (steps > GAP * usual)
    if gaps.any():
        longest = float(steps[gaps].max())
        said = f"nothing was written before this for up to {longest:.4g} s; a new part"
        _say(made.mended, lines[made.rows[1:][gaps]], clock, said)
    begun = np.r_[0, np.cumsum(gaps | ~within)]
    return made._replace(part=begun.astype(int))
