"""What a description says of its uncertain numbers before anything was measured."""

from __future__ import annotations

import numpy as np

from windwall import _core
from windwall.scenario.data import ScenarioData
from windwall.study.worlds import Array, Uncertain, uncertain

__all__ = ["Prior", "correlations"]


class Prior:
    """Every uncertain number, made of standard normal numbers z, one each, in the order of
    `addresses`.

    A number is log-normal, with what is stated as its median, where its range begins above zero,
    and else normal; both are cut at the range. Correlated numbers have correlated normal scores.
    """

    def __init__(self, scenario: ScenarioData, correlation: Array | None = None) -> None:
        known = uncertain(scenario)
        self.addresses = known.address
        self.value, self.sigma = known.value, known.sigma
        self.low, self.high = known.low, known.high
        self.positive = (known.low > 0) & (known.value > 0)
        self.correlation = correlations(scenario, known) if correlation is None else correlation
        self._factor = np.linalg.cholesky(self.correlation)
        self._width = _width(known, self.positive)
        self._lowest = self._score(known.low)
        self._highest = self._score(known.high)

    def __len__(self) -> int:
        return len(self.addresses)

    def to_values(self, z: Array) -> Array:
        """SI, (worlds, numbers), of standard normal numbers of the same shape."""
        return self._number(self._cut(np.asarray(z, float) @ self._factor.T))

    def to_z(self, values: Array) -> Array:
        """The standard normal numbers that make these values."""
        scores = self._uncut(self._score(np.asarray(values, float)))
        return np.linalg.solve(self._factor, scores.T).T

    def _score(self, values: Array) -> Array:
        """Standard deviations from what is stated, before anything is cut."""
        with np.errstate(divide="ignore", invalid="ignore"):
            ratio = np.log(values / self.value) / self._width
        return np.where(self.positive, ratio, (values - self.value) / self._width)

    def _number(self, scores: Array) -> Array:
        by = scores * self._width
        with np.errstate(over="ignore"):
            values = np.where(self.positive, self.value * np.exp(by), self.value + by)
        return np.clip(values, self.low, self.high)

    def _cut(self, scores: Array) -> Array:
        """Normal scores onto those of the distribution cut at both ends. In the nearer tail, where
        a share keeps its digits.
        """
        from scipy.special import ndtr, ndtri

        low, high = ndtr(self._lowest), ndtr(self._highest)
        below = ndtri(low + (high - low) * ndtr(scores))
        over, under = ndtr(-self._highest), ndtr(-self._lowest)
        above = -ndtri(over + (under - over) * ndtr(-scores))
        return np.where(scores < 0, below, above)

    def _uncut(self, scores: Array) -> Array:
        from scipy.special import ndtr, ndtri

        low, high = ndtr(self._lowest), ndtr(self._highest)
        share = (ndtr(scores) - low) / (high - low)
        from_above = (ndtr(-scores) - ndtr(-self._highest)) / (
            ndtr(-self._lowest) - ndtr(-self._highest)
        )
        return np.where(share < 0.5, ndtri(share), -ndtri(from_above))


def correlations(scenario: ScenarioData, known: Uncertain) -> Array:
    """What the file states, and what the rated figures leave between the inputs they settled."""
    place = {address: i for i, address in enumerate(known.address)}
    matrix = np.eye(len(place))
    for one, other, correlation in _core.correlations(scenario.core):
        i, j = place[one], place[other]
        matrix[i, j] = matrix[j, i] = correlation
    return matrix


def _width(known: Uncertain, positive: Array) -> Array:
    """One standard deviation of the score: of the logarithm where the number is log-normal."""
    with np.errstate(divide="ignore", invalid="ignore"):
        relative = known.sigma / known.value
    return np.where(positive, np.sqrt(np.log1p(relative**2)), known.sigma)
