"""One stamp of a clock: seconds, h:m:s, or a date and a time of day."""

from __future__ import annotations

import datetime
import re
from typing import NamedTuple

__all__ = ["DAY", "ISO", "LOCAL", "OF_DAY", "ZONE", "Stamp", "of_day", "stamp"]

DAY = 86400.0
OF_DAY = re.compile(
    r"^(?:(?P<h>\d{1,3}):)?(?P<m>\d{1,3}):(?P<s>\d{1,2})(?:[.,](?P<f>\d+)|:(?P<ms>\d{3}))?\s*(?P<half>[aApP]\.?[mM]\.?)?$"
)
ISO = re.compile(r"^(?P<y>\d{4})[-/.](?P<mo>\d{1,2})[-/.](?P<d>\d{1,2})$")
LOCAL = re.compile(r"^(?P<a>\d{1,2})(?P<mark>[-/.])(?P<b>\d{1,2})[-/.](?P<y>\d{4}|\d{2})$")
ZONE = re.compile(r"\s*(?:Z|UTC|GMT|[+\-]\d\d:?\d\d)$")


class Stamp(NamedTuple):
    """Seconds of a clock, from midnight where it tells the time of day, and the day it has."""

    seconds: float
    day: int = 0  # from year 1, where the stamp has a date
    doubtful: bool = False  # day and month may stand the other way round


def stamp(text: str) -> Stamp | None:
    """What a cell says that holds colons or a date; None where it is no stamp."""
    text = ZONE.sub("", text.strip())
    date, _, rest = text.replace("T", " ", 1).partition(" ")
    day = _date(date)
    if day is None:
        seconds = of_day(text)
        return None if seconds is None else Stamp(seconds)
    seconds = of_day(rest.strip()) if rest.strip() else 0.0
    if seconds is None:
        return None
    found, doubtful = day
    return Stamp(seconds, found.toordinal(), doubtful)


def of_day(text: str) -> float | None:
    """`14:03:22.5`, `03:22,5`, `2:03:22 pm`, in seconds."""
    found = OF_DAY.match(text.strip())
    if found is None or int(found["s"]) > 59 or (found["h"] and int(found["m"]) > 59):
        return None
    hours = int(found["h"] or 0)
    if found["half"]:
        hours = hours % 12 + (12 if found["half"][0] in "pP" else 0)
    digits = found["f"] or found["ms"]
    fraction = float(f"0.{digits}") if digits else 0.0
    return hours * 3600.0 + int(found["m"]) * 60 + int(found["s"]) + fraction


def _date(text: str) -> tuple[datetime.date, bool] | None:
    iso, local = ISO.match(text), LOCAL.match(text)
    try:
        if iso:
            return datetime.date(int(iso["y"]), int(iso["mo"]), int(iso["d"])), False
        if local:
            return _local(local)
    except ValueError:
        return None
    return None


def _local(found: re.Match[str]) -> tuple[datetime.date, bool]:
    year, first, second = (int(found[key]) for key in ("y", "a", "b"))
    year += 2000 if year < 100 else 0
    # With points the day stands first; with strokes it may be either, unless one is no month.
    month_first = second > 12 and first <= 12
    day, month = (second, first) if month_first else (first, second)
    doubtful = found["mark"] != "." and first <= 12 and second <= 12 and first != second
    return datetime.date(year, month, day), doubtful
