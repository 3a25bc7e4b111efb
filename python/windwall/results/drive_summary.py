"""What a drive comes to: marks, extremes, limits passed, and where the energy went."""

from __future__ import annotations

from typing import Any, NamedTuple

from windwall.results.values import Values

__all__ = ["SPENT", "DriveSummary", "Extreme", "Mark", "Passed", "extreme", "lasting", "passed"]

SPENT = ("driveline", "clutch", "tyres", "air", "rolling", "grade", "brakes", "kinetic", "changes")


class Mark(NamedTuple):
    """A distance or a speed reached in a run, with time and distance since the run began. SI."""

    run: int  # from 1
    at_distance: float | None
    at_speed: float | None
    time: float
    distance: float
    road_speed: float


class Extreme(NamedTuple):
    """The most or the least that a number came to, and when. SI."""

    value: float
    time: float


class DriveSummary(NamedTuple):
    """What a drive comes to. SI."""

    marks: tuple[Mark, ...]
    fastest: tuple[Extreme, ...]  # of each run
    hottest: dict[str, Extreme]  # by the address of the temperature
    nearest_knock: Extreme | None  # to knock, octane numbers; None where nothing is said of it
    fuel_used: float  # kg
    liquid_used: float  # kg
    energy: dict[str, float]  # J over the whole drive; what the crank gave ends in the others

    @property
    def imbalance(self) -> float:
        """Share of what the crank gave that stands in no entry of the account."""
        spent = sum(self.energy.get(key, 0.0) for key in SPENT)
        crank = self.energy["crank"]
        return (crank - spent) / max(abs(crank), 1.0)

    def reached(self, run: int = 1) -> tuple[Mark, ...]:
        """The marks of one run, as they were reached."""
        return tuple(one for one in self.marks if one.run == run)


def extreme(time: Any, column: Any, sign: float = 1) -> Extreme | None:
    """The largest of a column and when; nothing where it holds no number."""
    import numpy as np

    if not np.isfinite(column).any():
        return None
    at = int(np.nanargmax(column))
    return Extreme(sign * float(column[at]), float(time[at]))


class Passed(Values):
    """A limit that is passed: `address`, `max`, `min`, `why`; the first `time`, `distance` and
    `road_speed`, the `worst`, and for how long it is beyond in all, `lasting`. SI.
    """

    __slots__ = ()


def passed(limit: dict[str, Any], columns: dict[str, Any]) -> dict[str, Any] | None:
    """Where a limit is first passed, and by how much at worst; None where it is not."""
    import numpy as np

    column = columns.get(limit["address"])
    if column is None:
        return None
    over = -np.inf if limit["max"] is None else column - limit["max"]
    under = -np.inf if limit["min"] is None else limit["min"] - column
    beyond = np.nan_to_num(np.maximum(over, under), nan=-np.inf)
    if not (beyond > 0).any():
        return None
    first = int(np.argmax(beyond > 0))
    where = {key: float(columns[key][first]) for key in ("time", "distance")}
    where["road_speed"] = float(columns["road/speed"][first])
    worst = float(column[int(np.argmax(beyond))])
    return limit | where | {"worst": worst, "lasting": lasting(columns["time"], beyond)}


def lasting(time: Any, beyond: Any) -> float:
    """For how long a number is above zero, s, by straight lines from moment to moment."""
    import numpy as np

    above, size = np.maximum(beyond, 0), np.abs(beyond)
    lines = np.maximum(size[:-1] + size[1:], np.finfo(float).tiny)
    return float(np.sum((above[:-1] + above[1:]) / lines * np.diff(time)))
