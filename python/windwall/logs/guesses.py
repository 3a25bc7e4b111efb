"""What one column may be: by the words of its heading, its unit, and its range."""

from __future__ import annotations

from typing import NamedTuple

import numpy as np

from windwall.logs.units import line, spelt
from windwall.logs.words import Called, plain
from windwall.quantities.measures import Measure
from windwall.results.log import LogColumn

__all__ = [
    "BY_LETTER", "BY_UNIT", "BY_WORD", "COUNTS_FROM_VACUUM", "INSIDE", "KILOPASCAL", "NEAR_NOTHING",
    "PRESSURES", "Guess", "guess",
]  # fmt: skip

INSIDE = 0.98  # share of the numbers that have to lie within the range
COUNTS_FROM_VACUUM = 55.0  # kPa, passed by every gauge that does, and with an engine never near 0
NEAR_NOTHING = 10.0  # kPa
KILOPASCAL = {"kpa": 1.0, "bar": 100.0, "mbar": 0.1, "hpa": 0.1, "psi": 6.894757, "pa": 1e-3}
PRESSURES = {"manifold/pressure", "manifold/boost", "day/pressure"}
BY_WORD, BY_UNIT, BY_LETTER = 2.0, 1.0, 0.05  # a longer word says more: "oil temp" than "oil"


class Guess(NamedTuple):
    """One result that a column may be of."""

    column: LogColumn
    called: Called
    unit: str
    score: float
    reasons: tuple[str, ...]


def guess(column: LogColumn, called: Called, measure: Measure) -> Guess | None:
    """A column as one result, with the reasons; None where word, unit or range do not fit."""
    numbers = column.values[np.isfinite(column.values)]
    word = called.fits(plain(column.name))
    if not word or len(numbers) < 2 or column.unread:
        return None
    unit, reason = _unit(column, called, measure, numbers)
    if unit is None or _inside(numbers, unit, called, measure) < INSIDE:
        return None
    span = f"{numbers.min():.4g} to {numbers.max():.4g} is in its range"
    reasons = tuple(one for one in (f'called "{word}"', reason, span) if one)
    score = BY_WORD + (BY_UNIT if column.unit else 0) + BY_LETTER * len(word)
    return Guess(column, called, unit, score, reasons)


def _unit(
    column: LogColumn, called: Called, measure: Measure, numbers: np.ndarray
) -> tuple[str | None, str]:
    """The unit of a column, as a mapping writes it, and the reason; None where it fits none."""
    if called.address in PRESSURES:
        return _pressure(column, called, numbers)
    if not column.unit:
        return called.unit, f"no unit stands there; taken for {called.unit}" if called.unit else ""
    unit = "" if column.unit.strip() in {"-", "1"} else spelt(column.unit)
    try:
        line(unit, measure)
    except ValueError:
        return None, ""
    return unit, f"in {column.unit}"


def _pressure(column: LogColumn, called: Called, numbers: np.ndarray) -> tuple[str | None, str]:
    """Whether a gauge counts from vacuum is told by its unit, and else by what it shows."""
    unit = spelt(column.unit or "kPa")
    low = unit.lower()
    bare = low if low in KILOPASCAL else low[:-1]
    if bare not in KILOPASCAL:
        return None, ""
    lowest, highest = numbers.min() * KILOPASCAL[bare], numbers.max() * KILOPASCAL[bare]
    from_vacuum = lowest > NEAR_NOTHING and highest > COUNTS_FROM_VACUUM
    if low != bare:
        from_vacuum = low.endswith("a")
    if from_vacuum != (called.address != "manifold/boost"):
        return None, ""
    written = {"bar": "bara", "psi": "psia"} if from_vacuum else {"bar": "barg", "psi": "psig"}
    never = "never near zero, so it counts from vacuum"
    return written.get(bare, unit), never if from_vacuum else "counts from the local air"


def _inside(numbers: np.ndarray, unit: str, called: Called, measure: Measure) -> float:
    """The share of numbers within the range, which is written in the usual unit."""
    usual = called.unit or unit
    if unit:
        (here, zero), (factor, usual_zero) = line(unit, measure), line(usual, measure)
        numbers = (here * numbers + zero - usual_zero) / factor
    return float(np.mean((numbers >= called.low) & (numbers <= called.high)))
