"""What one cell means: a number by its marks, or a word for nothing."""

from __future__ import annotations

import math
import re
from typing import NamedTuple

from windwall.logs.units import known

__all__ = [
    "BEGINNING", "GROUPS", "NOTHING", "SPACES", "Evidence", "Marks", "evidence", "is_nothing",
    "number", "split_unit",
]  # fmt: skip

NOTHING = {
    "", "-", "--", "---", "?", "nan", "-nan", "nan(ind)", "-nan(ind)", "na", "n/a", "n.a.", "#n/a",
    "null", "none", "nil", "err", "error", "#value!", "#div/0!", "#ref!", "no data", "invalid",
    "inf", "-inf", "+inf", "infinity", "-infinity", "1.#qnan", "-1.#ind", "1.#inf", "***", "****",
}  # fmt: skip
SPACES = "  \u2007\u2009\u202f"
BEGINNING = re.compile(
    rf"(?P<number>[+\-]?[\d.,'{SPACES}]*\d[.,]?(?:[eE][+\-]?\d+)?)(?P<unit>[{SPACES}]*[^\d\s.,'+\-].*)?$"
)
# A mark with three digits behind it may part thousands; with another count of them it cannot.
GROUPS = r"[1-9]\d{0,2}(?:\%s\d{3})+"


class Marks(NamedTuple):
    """How numbers are written in a file."""

    decimal: str = "."
    thousands: str = ","


def is_nothing(text: str) -> bool:
    return text.strip().lower() in NOTHING


def split_unit(text: str) -> tuple[str, str] | None:
    """The number of a cell, as written, and the unit behind it; None where it begins with none."""
    found = BEGINNING.match(text.strip().replace("\u2212", "-"))
    if found is None:
        return None
    return found["number"].strip(SPACES), (found["unit"] or "").strip(SPACES)


def number(text: str, marks: Marks) -> float | None:
    """The number of a cell; NaN for a word that says there is none, None for anything else."""
    try:
        if marks.decimal == "." and "_" not in text:
            return _finite(float(text))
    except ValueError:
        pass
    if is_nothing(text):
        return math.nan
    parts = split_unit(text)
    if parts is None or (parts[1] and not known(parts[1])):
        return None
    written = _plain(parts[0], marks)
    return None if written is None else _finite(float(written))


def _finite(value: float) -> float:
    return value if math.isfinite(value) else math.nan


def _plain(written: str, marks: Marks) -> str | None:
    """The same with a decimal point and nothing between thousands."""
    whole, mark, behind = written.partition(marks.decimal)
    for parts in (marks.thousands, "'", *SPACES):
        if parts in whole:
            if not re.fullmatch(rf"[+\-]?\d{{1,3}}(?:{re.escape(parts)}\d{{3}})+", whole):
                return None
            whole = whole.replace(parts, "")
    made = f"{whole}{'.' if mark else ''}{behind}"
    return made if re.fullmatch(r"[+\-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+\-]?\d+)?", made) else None


class Evidence(NamedTuple):
    """What a cell says of the marks; `sure` where it can be read in one way only."""

    decimal: str
    sure: bool


def evidence(text: str) -> Evidence | None:
    """Which mark is the decimal one, as far as one cell tells."""
    parts = split_unit(text)
    if parts is None:
        return None
    written = re.sub(r"[eE].*$", "", parts[0].lstrip("+-"))
    marks = [one for one in written if one in ".,"]
    if not marks:
        return None
    if len(set(marks)) == 2:
        return Evidence(marks[-1], True) if marks.count(marks[-1]) == 1 else None
    mark, other = marks[0], "," if marks[0] == "." else "."
    if re.fullmatch(GROUPS % mark, written):
        return Evidence(other, True) if len(marks) > 1 else Evidence(mark, False)
    return Evidence(mark, True) if len(marks) == 1 else None
