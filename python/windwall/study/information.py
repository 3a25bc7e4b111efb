"""What a reading teaches, by linear theory: numbers as standard normal deviations, straight lines
through them, and sensors whose errors are normal.
"""

from __future__ import annotations

from functools import cache
from math import sqrt
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from numpy import ndarray

__all__ = [
    "POWER_OF_TWO", "SEED", "common_normals", "gain_of_choosing", "gain_of_two", "left", "taught",
]  # fmt: skip

POWER_OF_TWO = 13  # of the draws that the largest of several numbers is averaged over
SEED = 20_120


def taught(gradients: ndarray, noise: ndarray) -> ndarray:
    """What readings take off the covariance of the deviations, which is one of each before:
    `gradients` (readings, numbers) per deviation, `noise` their covariance (readings, readings).
    """
    import numpy as np

    spread = gradients @ gradients.T + noise
    return gradients.T @ np.linalg.pinv(spread, hermitian=True) @ gradients


def left(gradient: ndarray, taken: ndarray) -> float:
    """Standard deviation of a number after over before; 1 where it had none."""
    before = float(gradient @ gradient)
    return sqrt(max(1 - float(gradient @ taken @ gradient) / before, 0.0)) if before > 0 else 1.0


def gain_of_two(ahead: float, spread: float) -> float:
    """What choosing between two is worth beyond taking the one that leads, where a reading will
    move their difference by `spread`, one standard deviation; in the unit of both.
    """
    from scipy.stats import norm

    if spread <= 0:
        return 0.0
    share = abs(ahead) / spread
    return max(spread * float(norm.pdf(share) - share * norm.sf(share)), 0.0)


def gain_of_choosing(means: ndarray, gradients: ndarray, taken: ndarray) -> float:
    """The same of any number of actions, `means` (actions) and `gradients` (actions, numbers): the
    largest of correlated normal numbers, of two in closed form, of more over draws that are the
    same for every reading. Never below zero, and zero where nothing is taught.
    """
    import numpy as np

    moves = gradients @ taken @ gradients.T
    if len(means) < 2:
        return 0.0
    if len(means) == 2:
        spread = moves[0, 0] + moves[1, 1] - 2 * moves[0, 1]
        return gain_of_two(means[0] - means[1], sqrt(max(spread, 0.0)))
    there = means + common_normals(len(means)) @ _root(moves).T
    return float(np.mean(there.max(axis=1) - there[:, np.argmax(means)]))


@cache
def common_normals(count: int) -> ndarray:
    """Standard normal draws (draws, count), always the same."""
    from scipy.stats import norm, qmc

    sobol = qmc.Sobol(count, seed=SEED)
    return norm.ppf(sobol.random_base2(POWER_OF_TWO).clip(1e-12, 1 - 1e-12))


def _root(covariance: ndarray) -> ndarray:
    import numpy as np

    values, vectors = np.linalg.eigh(covariance)
    return vectors * np.sqrt(np.clip(values, 0, None))
