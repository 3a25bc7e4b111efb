"""The one check in the garage that tells the first two alternatives apart."""

from __future__ import annotations

from collections.abc import Iterator
from math import isfinite
from typing import TYPE_CHECKING

from windwall.results.faults import Alternative, Telling
from windwall.study.fault_curves import Readings
from windwall.study.fault_ground import Ground
from windwall.study.fault_odds import Curve, Seen
from windwall.study.fault_shows import at_severity
from windwall.study.fault_table import Fault
from windwall.study.readings import error
from windwall.study.worlds import answer_measure

if TYPE_CHECKING:
    from numpy import ndarray

__all__ = ["CLEAR", "FLAT", "doubt_left", "gauges", "own_checks", "telling"]

CLEAR = 3.0  # standard deviations between two alternatives, from which a check settles it
FLAT = 1e-9


def telling(
    readings: Readings,
    ground: Ground,
    curves: dict[Fault, Curve],
    two: tuple[Alternative, ...],
    seen: Seen,
) -> Telling | None:
    """Of all that settles it what takes least time; else what comes nearest to settling it."""
    if len(two) < 2:
        return None
    found = [*own_checks(curves, two), *gauges(readings, ground, curves, two, seen)]
    if not found:
        return None
    clear = [one for one in found if one.apart >= CLEAR]
    if clear:
        return min(clear, key=lambda one: (one.hours, -one.apart))
    return max(found, key=lambda one: one.apart)


def own_checks(curves: dict[Fault, Curve], two: tuple[Alternative, ...]) -> Iterator[Telling]:
    """The checks that find one of the two by itself."""
    for fault in curves:
        for one in two:
            if one.id == fault.id and one.severity:
                check = fault.check
                apart = one.severity / check.error
                yield Telling(check.says, check.hours, check.care, apart, fault.title)


def gauges(
    readings: Readings,
    ground: Ground,
    curves: dict[Fault, Curve],
    two: tuple[Alternative, ...],
    seen: Seen,
) -> Iterator[Telling]:
    """Gauges that nobody has read, with the doubt that the facts leave of the vehicle."""
    by_id = {fault.id: one for fault, one in curves.items()}
    there = [
        at_severity(by_id[one.id], one.severity) if one.is_fault else ground.middle for one in two
    ]
    left = doubt_left(ground, seen)
    for at, sensor in readings.unread:
        measure = answer_measure(sensor.addresses[0])
        sigma = error(sensor.gauge.reads[0].sigma, float(ground.middle[at]), measure)
        apart = abs(float(there[0][at] - there[1][at])) / (sigma**2 + left[at] ** 2) ** 0.5
        row = sensor.gauge
        if not isfinite(apart):  # nothing that the model has a number for
            continue
        yield Telling(row.title, row.hours, row.care, apart, row.title)


def doubt_left(ground: Ground, seen: Seen) -> ndarray:
    """Standard deviations of all columns (columns) by what is not known of the vehicle, the numbers
    that were read given.
    """
    import numpy as np

    number = [at for at in range(len(seen.values)) if at not in seen.words]
    slopes = seen.gradient[number]
    spread = slopes @ slopes.T + np.diag(seen.sigmas[number] ** 2)
    across = ground.gradient @ slopes.T
    taken = np.sum(across * np.linalg.solve(spread, across.T).T, axis=1)
    return np.sqrt(np.clip(np.sum(ground.gradient**2, axis=1) - taken, FLAT, None))
