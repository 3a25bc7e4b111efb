"""What a reading teaches, over draws of the whole model: no straight lines and no bells."""

from __future__ import annotations

from math import sqrt
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from numpy import ndarray

__all__ = [
    "SEED", "TERMS_FOR", "expected_from", "gain_over_draws", "left_over_draws", "with_errors",
]  # fmt: skip

SEED = 20_121
TERMS_FOR = 8  # draws for each term of a curve, at least


def gain_over_draws(readings: ndarray, noise: ndarray, speeds: ndarray) -> tuple[float, float]:
    """What choosing after the readings gains, and the standard error of that: in each world, seen
    through its sensors, the action that the other worlds speak for, against the one that is
    fastest of all worlds together. `readings` (draws, readings) without the sensors' errors,
    `noise` their covariance, `speeds` (draws, actions).
    """
    import numpy as np

    expected = expected_from(with_errors(readings, noise), speeds)
    chosen = np.argmax(expected, axis=1)
    gains = speeds[np.arange(len(speeds)), chosen] - speeds[:, np.argmax(speeds.mean(axis=0))]
    return max(float(gains.mean()), 0.0), float(gains.std()) / sqrt(len(gains))


def left_over_draws(readings: ndarray, noise: ndarray, number: ndarray) -> float:
    """Standard deviation of a number (draws) after the readings over before."""
    before = float(number.var())
    column = number[:, None]
    missed = column - expected_from(with_errors(readings, noise), column)
    return min(sqrt(float((missed**2).mean()) / before), 1.0) if before > 0 else 1.0


def with_errors(readings: ndarray, noise: ndarray) -> ndarray:
    """What the sensors show."""
    import numpy as np

    errors = np.random.default_rng(SEED).multivariate_normal(
        np.zeros(len(noise)), noise, len(readings), method="eigh"
    )
    return readings + errors


def expected_from(seen: ndarray, numbers: ndarray) -> ndarray:
    """Numbers (draws, numbers) as curves through what was seen (draws, readings), each draw by the
    curves of all others.
    """
    import numpy as np

    terms = _terms(seen)
    basis, _ = np.linalg.qr(terms)
    fitted = basis @ (basis.T @ numbers)
    leverage = np.sum(basis**2, axis=1)[:, None]
    return numbers - (numbers - fitted) / np.clip(1 - leverage, 1e-6, None)


def _scores(seen: ndarray) -> ndarray:
    """The normal score of each reading's rank, so that no far world draws a curve to itself."""
    from scipy.special import ndtri
    from scipy.stats import rankdata

    return ndtri((rankdata(seen, axis=0) - 0.5) / len(seen)) if seen.size else seen


def _terms(seen: ndarray) -> ndarray:
    """One, each reading, its square, and its cube or the products with others: as many as the
    draws can bear.
    """
    import numpy as np

    scaled = _scores(seen[:, seen.std(axis=0) > 0])
    count = scaled.shape[1]
    products = [scaled[:, i] * scaled[:, j] for i in range(count) for j in range(i, count)]
    columns = [np.ones(len(seen)), *scaled.T, *products]
    if count == 1:
        columns.append(scaled[:, 0] ** 3)
    most = max(len(seen) // TERMS_FOR, 1)
    return np.column_stack(columns[:most])
