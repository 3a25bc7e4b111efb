"""Level and slope of a noisy column by a local quadratic: no bias where the truth is one.

A parabola is laid through the rows within `half` seconds by least squares. On equal steps that is
the filter of Savitzky and Golay of second order. Of a truth with a third derivative x''' the level
in the middle is not biased either, and the slope by x''' half^2 / 10 (on many equal steps).
"""

from __future__ import annotations

from functools import lru_cache
from typing import NamedTuple

import numpy as np

__all__ = ["LEAST_ROWS", "MOST_ROWS", "MOST_TIED", "Local", "Noise", "local_quadratic", "noise_of"]

LEAST_ROWS = 6
MOST_TIED = 0.95  # correlation of neighbouring rows that is believed
MOST_ROWS = 120  # of a window for which the correlation is worked out exactly


class Local(NamedTuple):
    """Level and slope at one moment, each with one standard deviation of its noise."""

    level: float
    slope: float
    level_sigma: float
    slope_sigma: float
    rows: int


class Noise(NamedTuple):
    """What is known of a column's noise."""

    tied: float = 0.0  # correlation of neighbouring rows, of first order
    rounding: float = 0.0  # the least step between two of its numbers


def local_quadratic(
    time: np.ndarray, values: np.ndarray, middle: float, half: float, noise: Noise | None = None
) -> Local | None:
    """At `middle`, from the rows within `half` seconds; None where they are too few or stand to one
    side.
    """
    noise = noise or Noise()
    inside = (np.abs(time - middle) <= half * (1 + 1e-9)) & np.isfinite(values)
    t, x = (time[inside] - middle) / half, values[inside]
    if len(t) < LEAST_ROWS or t.max() < 0.5 or t.min() > -0.5:
        return None
    design = np.stack([np.ones_like(t), t, t * t], axis=1)
    weights = np.linalg.solve(design.T @ design, design.T)
    found = weights @ x
    level_sigma, slope_sigma = _sigmas(design, weights, x - design @ found, noise)
    return Local(found[0], found[1] / half, level_sigma, slope_sigma / half, len(t))


def _sigmas(
    design: np.ndarray, weights: np.ndarray, left: np.ndarray, noise: Noise
) -> tuple[float, float]:
    """Of level and slope, with the correlation of neighbours both in them and in what is left."""
    rows = len(left)
    if noise.tied == 0 or rows > MOST_ROWS:
        wider = (1 + noise.tied) / (1 - noise.tied)
        variance = wider * float(left @ left) / max(rows - 3, 1)
        covariance = np.linalg.inv(design.T @ design)
    else:
        related = noise.tied ** np.abs(np.subtract.outer(np.arange(rows), np.arange(rows)))
        freedom = rows - np.sum((design @ weights) * related.T)
        variance = float(left @ left) / freedom
        covariance = weights @ related @ weights.T
    variance = max(variance, noise.rounding**2 / 12)
    level, slope = np.sqrt(variance * np.diag(covariance)[:2])
    return float(level), float(slope)


def noise_of(time: np.ndarray, values: np.ndarray, half: float) -> Noise:
    """The noise of a column, by what its rows have beside local parabolas."""
    there = np.isfinite(values)
    steps = np.diff(np.unique(values[there]))
    rounding = float(steps.min()) if len(steps) else 0.0
    products, squares, counts = 0.0, 0.0, []
    for begin in np.arange(time[0], time[-1] - 2 * half, 2 * half):
        inside = (time >= begin) & (time < begin + 2 * half) & there
        if inside.sum() < LEAST_ROWS + 2:
            continue
        t, x = time[inside] - begin - half, values[inside]
        left = x - np.polynomial.Polynomial.fit(t, x, 2)(t)
        products += float(left[1:] @ left[:-1])
        squares += float(left @ left)
        counts.append(len(left))
    if squares <= 0:
        return Noise(0.0, rounding)
    shown, rho = _shown(min(int(np.median(counts)), MOST_ROWS))
    return Noise(float(np.interp(products / squares, shown, rho)), rounding)


@lru_cache(maxsize=32)
def _shown(rows: int) -> tuple[np.ndarray, np.ndarray]:
    """The correlation that what is left beside a parabola of so many rows shows, for the one that
    their noise has: less, since the parabola follows the noise.
    """
    t = np.linspace(-1, 1, rows)
    design = np.stack([np.ones_like(t), t, t * t], axis=1)
    apart = np.eye(rows) - design @ np.linalg.solve(design.T @ design, design.T)
    rho = np.linspace(0, MOST_TIED, 39)
    shown = []
    for one in rho:
        related = one ** np.abs(np.subtract.outer(np.arange(rows), np.arange(rows)))
        left = apart @ related @ apart
        shown.append(np.trace(left, offset=1) / np.trace(left))
    return np.array(shown), rho
