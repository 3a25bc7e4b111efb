"""Mean and covariance of what is left to be believed, along a model that is straight near its most
probable vehicle.

Numbers are the closed form of linear regression with a normal prior. A bound is a probit, whose
mean and variance along the margin are known in closed form, one after the other until nothing
moves: expectation propagation (T. P. Minka, 2001).
"""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from windwall.study.calibrate_likelihood import Likelihood, hazard
from windwall.study.calibrate_maximum import Maximum

if TYPE_CHECKING:
    import numpy as np

__all__ = ["LIKELY_ENOUGH", "ROUNDS", "SETTLED", "Moments", "moments", "of_numbers", "proposal"]

ROUNDS = 50
SETTLED = 1e-10


class Moments(NamedTuple):
    """A normal distribution of standard normals that were told something."""

    mean: np.ndarray  # (inputs,)
    covariance: np.ndarray  # (inputs, inputs)


def of_numbers(at: Maximum, likelihood: Likelihood) -> Moments:
    """With the numbers alone, bounds left out."""
    import numpy as np

    weights = likelihood.weights(at.model[None, :])[0]
    pull = np.where(likelihood.bound, 0.0, likelihood.value - at.model) + at.slopes @ at.z
    precision = np.eye(len(at.z)) + at.slopes.T @ (weights[:, None] * at.slopes)
    covariance = np.linalg.inv(precision)
    return Moments(covariance @ (at.slopes.T @ (weights * pull)), covariance)


def moments(at: Maximum, likelihood: Likelihood) -> Moments:
    """With all facts."""
    import numpy as np

    found = of_numbers(at, likelihood)
    bounds = np.flatnonzero(likelihood.bound)
    sites = np.zeros((len(at.model), 2))  # precision, and precision times mean
    for _ in range(ROUNDS if len(bounds) else 0):
        before = sites.copy()
        for one in bounds:
            slope = at.slopes[one]
            offset = at.model[one] - slope @ at.z
            found, sites[one] = _with_bound(found, slope, offset, sites[one], likelihood, int(one))
        if np.all(np.abs(sites - before) <= SETTLED * (1 + np.abs(sites))):
            break
    return found


def _with_bound(
    found: Moments,
    slope: np.ndarray,
    offset: float,
    site: np.ndarray,
    likelihood: Likelihood,
    one: int,
) -> tuple[Moments, np.ndarray]:
    """The moments with one bound told anew, and what it then counts."""
    import numpy as np

    across = found.covariance @ slope
    variance, mean = slope @ across, offset + slope @ found.mean
    if variance <= 0:
        return found, site
    cavity = 1 / (1 / variance - site[0])
    middle = cavity * (mean / variance - site[1])
    side, sigma = likelihood.side[one], likelihood.sigma[one]
    spread = np.hypot(sigma, np.sqrt(cavity))
    inside = side * (middle - likelihood.value[one]) / spread
    push = hazard(inside)
    new_mean = middle + side * cavity * push / spread
    new_variance = cavity - (cavity / spread) ** 2 * push * (inside + push)
    made = np.array([1 / new_variance - 1 / cavity, new_mean / new_variance - middle / cavity])
    covariance = found.covariance - np.outer(across, across) * (
        (variance - new_variance) / variance**2
    )
    return Moments(found.mean + across * (new_mean - mean) / variance, covariance), made


LIKELY_ENOUGH = 0.2  # of bounds all met by chance, above which they are left to the draws' weights


def proposal(at: Maximum, likelihood: Likelihood) -> Moments:
    """What worlds are drawn from: without the bounds, whose weights then are one at most, unless
    hardly any world would meet them.
    """
    import numpy as np
    from scipy.special import ndtr

    found = of_numbers(at, likelihood)
    bound = likelihood.bound
    slopes = at.slopes[bound]
    mean = at.model[bound] + slopes @ (found.mean - at.z)
    spread = np.sqrt(likelihood.sigma[bound] ** 2 + _along(slopes, found.covariance))
    met = ndtr(likelihood.side[bound] * (mean - likelihood.value[bound]) / spread)
    return found if np.prod(met) > LIKELY_ENOUGH else moments(at, likelihood)


def _along(slopes: np.ndarray, covariance: np.ndarray) -> np.ndarray:
    return (slopes @ covariance * slopes).sum(axis=1)
