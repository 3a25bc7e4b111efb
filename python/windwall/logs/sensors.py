"""Numbers that a sensor gives while it says nothing: stuck at one, or against an end of its range.

A run of equal numbers is disbelieved where it would come about by chance less than once in a
million logs, going by how often neighbours are equal in the rest of the column.
"""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np

__all__ = ["CHANCE", "LEAST_RUN", "silent"]

CHANCE = 1e-6
LEAST_RUN = 8


def silent(values: np.ndarray) -> Iterator[tuple[int, int, str]]:
    """Runs that are not believed: first row, the row behind the last, and what it looks like. A
    sensor at rest at zero is believed, and so is a column that never changes at all.
    """
    starts, ends = _runs(values)
    lengths = ends - starts
    if len(lengths) < 2:
        return
    lowest, highest = np.nanmin(values), np.nanmax(values)
    for at in np.flatnonzero(lengths >= LEAST_RUN):
        value = values[starts[at]]
        if value == 0 or not np.isfinite(value) or not _unlikely(lengths, int(at)):
            continue
        end = "its highest" if value == highest else "its lowest" if value == lowest else ""
        said = f"against {end} number {value:g}" if end else f"stuck at {value:g}"
        yield int(starts[at]), int(ends[at]), said


def _runs(values: np.ndarray) -> tuple[np.ndarray, np.ndarray]:
    changes = np.flatnonzero(values[1:] != values[:-1]) + 1
    return np.r_[0, changes], np.r_[changes, len(values)]


def _unlikely(lengths: np.ndarray, at: int) -> bool:
    """By the other runs: neighbours are equal as often as those are long."""
    others = lengths.sum() - lengths[at]
    equal = (others - (len(lengths) - 1) + 1) / (others + 2)
    return lengths.sum() * equal ** float(lengths[at] - 1) < CHANCE
