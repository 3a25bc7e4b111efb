"""How well single faults fit what was read, the rest of the vehicle's doubt taken as it is.

Readings are normal about the model's: their covariance is that of the sensors and what one standard
deviation of each uncertain number moves them by. A fault has one severity, spread evenly from none
to the most of its row; how well the fault fits is the mean over it. What was heard of knock counts
with the chance of hearing that.
"""

from __future__ import annotations

from math import log, pi
from typing import TYPE_CHECKING, NamedTuple

if TYPE_CHECKING:
    from numpy import ndarray

__all__ = [
    "FINE", "HEARD", "LISTENING", "Curve", "Fit", "Seen", "chances", "fit", "fit_without",
    "interpolated", "log_likelihoods",
]  # fmt: skip

HEARD = {"heard": -1.0, "not heard": 1.0}  # the side of zero on which the margin lies
LISTENING = 1.0  # octane numbers, by which an ear may miss the edge; chosen by the project
FINE = 401  # severities over which a fit is averaged


class Seen(NamedTuple):
    """What was read, in the order of the model's columns; NaN where a word of knock stands."""

    values: ndarray  # (facts)
    sigmas: ndarray  # (facts)
    words: dict[int, str]  # of knock, by place
    gradient: ndarray  # (facts, numbers), the model's, per standard deviation


class Curve(NamedTuple):
    """What the model reads with a fault, (severities, columns), from none on."""

    severities: ndarray
    readings: ndarray
    most: float  # SI, the end of the prior; beyond the last severity the model has no answer


class Fit(NamedTuple):
    """How well one fault fits."""

    evidence: float  # logarithm
    severity: float  # mean of the posterior
    spread: float  # one standard deviation of it
    misfit: float  # of the best severity: squares of what is left, in standard deviations


def fit(seen: Seen, curve: Curve) -> Fit:
    """A fault by its severity alone."""
    import numpy as np

    severities = np.linspace(0, curve.severities[-1], FINE)
    likely, misfits = log_likelihoods(seen, interpolated(curve, severities))
    best = int(np.argmax(likely))
    weights = np.exp(likely - likely[best])
    whole = np.trapezoid(weights, severities)
    mean = np.trapezoid(weights * severities, severities) / whole
    spread = np.sqrt(np.trapezoid(weights * (severities - mean) ** 2, severities) / whole)
    evidence = likely[best] + log(whole / curve.most)
    return Fit(float(evidence), float(mean), float(spread), float(misfits[best]))


def fit_without(seen: Seen, readings: ndarray) -> Fit:
    """No fault: the model as it is, `readings` (columns)."""
    likely, misfits = log_likelihoods(seen, readings[None, :])
    return Fit(float(likely[0]), 0.0, 0.0, float(misfits[0]))


def interpolated(curve: Curve, severities: ndarray) -> ndarray:
    """Readings between those that were solved."""
    from scipy.interpolate import PchipInterpolator

    return PchipInterpolator(curve.severities, curve.readings, axis=0)(severities)


def log_likelihoods(seen: Seen, readings: ndarray) -> tuple[ndarray, ndarray]:
    """Of what was seen, for each row of readings; and what is left of the numbers, squared."""
    import numpy as np

    count = len(seen.values)
    number = [at for at in range(count) if at not in seen.words]
    slopes = seen.gradient[number]
    spread = slopes @ slopes.T + np.diag(seen.sigmas[number] ** 2)
    off = seen.values[number] - readings[:, number]
    solved = np.linalg.solve(spread, off.T).T
    misfits = np.sum(off * solved, axis=1)
    _, logarithm = np.linalg.slogdet(2 * pi * spread)
    likely = -0.5 * (misfits + logarithm)
    for at, word in seen.words.items():
        likely = likely + _heard(seen, at, word, readings[:, at], slopes, spread, solved)
    return likely, misfits


def _heard(
    seen: Seen,
    at: int,
    word: str,
    margin: ndarray,
    slopes: ndarray,
    spread: ndarray,
    solved: ndarray,
) -> ndarray:
    """Logarithm of the chance of what was heard, the numbers given."""
    import numpy as np
    from scipy.stats import norm

    own = seen.gradient[at]
    with_numbers = slopes @ own
    expected = margin + solved @ with_numbers
    variance = own @ own - with_numbers @ np.linalg.solve(spread, with_numbers) + LISTENING**2
    if word in HEARD:
        return norm.logcdf(HEARD[word] * expected / np.sqrt(variance))
    return norm.logpdf(expected, scale=np.sqrt(variance))


def chances(evidences: list[float], priors: list[float]) -> list[float]:
    """Of each alternative after what was read."""
    import numpy as np

    logarithms = np.array(evidences) + np.log(priors)
    weights = np.exp(logarithms - logarithms.max())
    return [float(one) for one in weights / weights.sum()]
