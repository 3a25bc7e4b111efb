"""The clock of a log: which column it is, in what unit, and in which order it brings the rows."""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import NamedTuple

import numpy as np

from windwall.logs.cells import Marks, is_nothing, number
from windwall.logs.stamps import DAY, Stamp, stamp
from windwall.logs.units import line, spelt
from windwall.logs.wrong import at, refuse
from windwall.quantities.measures import TIME
from windwall.results.log import Mended

__all__ = [
    "DATES", "DAYS", "EPOCH", "MIDNIGHT", "MILLISECONDS_STEP", "SECONDS_STEP", "WORDS", "Clock",
    "date_in", "found_in", "read",
]  # fmt: skip

WORDS = re.compile(
    r"^(?:elapsed |log |rel(?:ative)? |time |sample )*(?:t|time|times|time ?stamp|timestamp|zeit|"
    r"uhrzeit|clock|seconds|sec|secs|millis|milliseconds|ms|s|elapsed|temps|tijd|tid|datetime|"
    r"date ?/? ?time|utc|gps time|laufzeit|zeitstempel|epoch)$",
    re.IGNORECASE,
)
DATES = re.compile(r"^(?:date|datum|day|tag)$", re.IGNORECASE)
SECONDS_STEP, MILLISECONDS_STEP = 0.5, 5.0  # a step below is of seconds, above of milliseconds
EPOCH = 1e9  # seconds since 1970, as of 2001
DAYS = 60000.0  # days since 1900 of a spreadsheet lie below that, and above 30000
MIDNIGHT = 0.9 * DAY


class Clock(NamedTuple):
    """Seconds of every row that has a stamp, and what the stamps are."""

    seconds: np.ndarray  # NaN where there is no stamp
    began: str
    mended: list[Mended]


def found_in(names: Sequence[str]) -> int | None:
    """The first column that is called like a clock."""
    for column, name in enumerate(names):
        if WORDS.match(re.sub(r"[_\-.]+", " ", name).strip()):
            return column
    return None


def date_in(names: Sequence[str]) -> int | None:
    """The column that holds the day alone."""
    return next((at_ for at_, name in enumerate(names) if DATES.match(name.strip())), None)


def read(cells: list[str], lines: list[int], name: str, unit: str, marks: Marks) -> Clock:
    """The clock of a column; refuses one that may be seconds or milliseconds."""
    stamps = [stamp(cell) if ":" in cell or _dated(cell) else None for cell in cells]
    if sum(one is not None for one in stamps) * 2 > len(cells):
        return _of_stamps(stamps, cells, lines, name)
    values = [number(cell, marks) for cell in cells]
    bad = [(at_, cell) for at_, cell in enumerate(cells) if values[at_] is None]
    if len(bad) * 2 > len(cells):
        refuse(at(lines[bad[0][0]], name, f'"{bad[0][1]}" is no time: s, ms, h:m:s or a date'))
    seconds = np.array([np.nan if one is None else one for one in values])
    factor, said = _factor(seconds, unit, lines, name)
    mended = [Mended((), name, said)] if said else []
    return Clock(seconds * factor, "", mended + _missing(seconds, lines, name))


def _dated(cell: str) -> bool:
    return cell.count("-") + cell.count("/") >= 2 or cell.count(".") >= 2


def _missing(seconds: np.ndarray, lines: list[int], name: str) -> list[Mended]:
    none = tuple(lines[one] for one in np.flatnonzero(np.isnan(seconds)))
    return [Mended(none, name, "no time stands here; the row is left out")] if none else []


def _factor(seconds: np.ndarray, unit: str, lines: list[int], name: str) -> tuple[float, str]:
    """What makes seconds of a number, and how that was decided where no unit says so."""
    if spelt(unit) in {"d", "days", "day"}:
        return DAY, ""
    if unit:
        try:
            return line(unit, TIME)[0], ""
        except ValueError as refused:
            refuse(at(lines[0], name, str(refused)))
    there = seconds[np.isfinite(seconds)]
    steps = np.diff(there)
    steps = steps[steps > 0]
    if not len(steps):
        refuse(at(lines[0], name, "the clock stands still"))
    return _by_step(float(np.median(steps)), float(there[0]), lines, name)


def _by_step(step: float, first: float, lines: list[int], name: str) -> tuple[float, str]:
    word = name.lower()
    if first > 1e3 * EPOCH or "milli" in word or word == "ms":
        return 1e-3, "read as milliseconds, by its size or its name"
    if first > EPOCH or word in {"s", "sec", "secs", "seconds"}:
        return 1.0, "read as seconds, by its size or its name"
    if DAYS / 2 < first < DAYS and step < 1e-3:
        return DAY, "read as days of a spreadsheet, by its size"
    if step <= SECONDS_STEP:
        return 1.0, f"no unit stands here; steps of {step:g} are seconds"
    if step >= MILLISECONDS_STEP:
        return 1e-3, f"no unit stands here; steps of {step:g} are milliseconds"
    message = f'steps of {step:g} in what? Write the unit into the mapping: "unit": "s" or "ms"'
    refuse(at(lines[0], name, message))
    return 1.0, ""


def _of_stamps(stamps: list[Stamp | None], cells: list[str], lines: list[int], name: str) -> Clock:
    first = next(one for one in stamps if one is not None)
    # From the first day on; from year 1 on seconds would be known to microseconds only.
    seconds = np.array(
        [np.nan if one is None else DAY * (one.day - first.day) + one.seconds for one in stamps]
    )
    mended = []
    nothing = tuple(lines[i] for i, one in enumerate(stamps) if one is None)
    if nothing:
        junk = next((cells[i] for i, one in enumerate(stamps) if one is None), "")
        found = "nothing" if is_nothing(junk) else f'"{junk}"'
        mended.append(Mended(nothing, name, f"{found} is no time; the row is left out"))
    if not first.day:
        seconds, turns = _past_midnight(seconds)
        if turns:
            mended.append(Mended(tuple(lines[i] for i in turns), name, "midnight passes here"))
    if any(one.doubtful for one in stamps if one):
        said = "day and month may stand the other way round; only differences are used"
        mended.append(Mended((), name, said))
    began = next(cells[i] for i, one in enumerate(stamps) if one is not None)
    return Clock(seconds, began, mended)


def _past_midnight(seconds: np.ndarray) -> tuple[np.ndarray, list[int]]:
    there = np.flatnonzero(np.isfinite(seconds))
    turns = [int(there[i + 1]) for i in np.flatnonzero(np.diff(seconds[there]) < -MIDNIGHT)]
    made = seconds.copy()
    for turn in turns:
        made[turn:] += DAY
    return made, turns
