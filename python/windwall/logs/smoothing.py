"""Level and slope of a noisy column by a local quadratic: no bias where the truth is one.

A parabola is laid through the rows within `half` seconds by least squares. On equal steps that is
the filter of Savitzky and Golay of second order. Of a truth with a third derivative x''' the level
in the middle is not biased either, and the slope by x''' half^2 / 10 (on many equal steps).
"""

from __future__ import annotations

from typing import NamedTuple

import numpy as np

LEAST_ROWS = 6
MOST_TIED = 0.9  # correlation of neighbouring rows that is believed


class Local(NamedTuple):
    """Level and slope at one moment, each with one standard deviation of its noise."""

    level: float
    slope: float
    level_sigma: float
    slope_sigma: float
    rows: int


def local_quadratic(
    time: np.ndarray, values: np.ndarray, middle: float, half: float, tied: float = 0.0
) -> Local | None:
    """At `middle`, from the rows within `half` seconds; None where they are too few or stand to one
    side. `tied` is the correlation of neighbouring rows' noise (of first order), which makes the
    spread larger by the root of (1 + tied) / (1 - tied).
    """
    inside = (np.abs(time - middle) <= half * (1 + 1e-9)) & np.isfinite(values)
    t, x = (time[inside] - middle) / half, values[inside]
    if len(t) < LEAST_ROWS or t.max() < 0.5 or t.min() > -0.5:
        return None
    design = np.stack([np.ones_like(t), t, t * t], axis=1)
    normal = np.linalg.inv(design.T @ design)
    found = normal @ (design.T @ x)
    spread = _spread(x - design @ found, x) * np.sqrt((1 + tied) / (1 - tied))
    level_sigma, slope_sigma = spread * np.sqrt(np.diag(normal)[:2])
    return Local(found[0], found[1] / half, level_sigma, slope_sigma / half, len(t))


def _spread(left: np.ndarray, values: np.ndarray) -> float:
    """Of one row; no less than what rounding to the steps of the column makes."""
    steps = np.diff(np.unique(values))
    rounding = float(steps.min()) / np.sqrt(12) if len(steps) else 0.0
    return max(float(np.sqrt(np.sum(left**2) / max(len(left) - 3, 1))), rounding)


def tied(time: np.ndarray, values: np.ndarray, half: float) -> float:
    """The correlation of what neighbouring rows have beside their local parabola, 0 to 0.9.

    Three numbers were fitted to each window, which alone makes neighbours look opposed by about
    3 / rows; that much is added.
    """
    products, squares, count, windows = 0.0, 0.0, 0, 0
    for begin in np.arange(time[0], time[-1] - 2 * half, 2 * half):
        inside = (time >= begin) & (time < begin + 2 * half) & np.isfinite(values)
        if inside.sum() < LEAST_ROWS + 2:
            continue
        t, x = time[inside] - begin - half, values[inside]
        left = x - np.polynomial.Polynomial.fit(t, x, 2)(t)
        products += float(left[1:] @ left[:-1])
        squares += float(left @ left)
        count += len(left)
        windows += 1
    if squares <= 0:
        return 0.0
    return float(np.clip(products / squares + 3 * windows / count, 0.0, MOST_TIED))
