"""What a fault would show on gauges that nobody has read yet."""

from __future__ import annotations

from typing import TYPE_CHECKING

from windwall.results.faults import Shown
from windwall.study.fault_curves import Readings
from windwall.study.fault_odds import Curve, interpolated
from windwall.study.readings import error
from windwall.study.worlds import answer_measure

if TYPE_CHECKING:
    from numpy import ndarray

__all__ = ["MOST", "PLAIN", "at_severity", "shows"]

PLAIN = 2.0  # of a gauge's standard deviations, from which it shows
MOST = 4


def at_severity(curve: Curve, severity: float | None) -> ndarray:
    """The columns at one severity."""
    import numpy as np

    return interpolated(curve, np.array([severity or 0.0]))[0]


def shows(readings: Readings, middle: ndarray, curve: Curve, severity: float) -> tuple[Shown, ...]:
    """The gauges of the table that it moves by most of their standard deviations, of those that
    were not among the facts.
    """
    there = at_severity(curve, severity)
    found = []
    for at, sensor in readings.unread:
        measure = answer_measure(sensor.addresses[0])
        sigma = error(sensor.gauge.reads[0].sigma, float(middle[at]), measure)
        moved = float(there[at] - middle[at]) / sigma
        if abs(moved) >= PLAIN:
            shown = (sensor.gauge.name, sensor.addresses[0], float(middle[at]), float(there[at]))
            found.append(Shown(*shown, moved, measure))
    return tuple(sorted(found, key=lambda one: -abs(one.sigmas))[:MOST])
