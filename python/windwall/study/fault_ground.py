"""The vehicle that faults are looked for in: as it is described, or as it was read when sound."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from windwall.scenario.data import ScenarioData
from windwall.study.calibrate_likelihood import NUMBER, Likelihood
from windwall.study.calibrate_maximum import find_maximum
from windwall.study.fault_curves import Readings
from windwall.study.fault_facts import Read
from windwall.study.prior import Prior
from windwall.study.slopes import Slopes, slopes

if TYPE_CHECKING:
    from numpy import ndarray

__all__ = ["Ground", "described", "once_read", "remaining"]


class Ground(NamedTuple):
    """A sound vehicle and how its readings (columns) move with what is not known of it."""

    scenario: ScenarioData
    middle: ndarray  # (columns)
    gradient: ndarray  # (columns, directions), each one standard deviation


def described(readings: Readings) -> Ground:
    """As its file says: every number at the middle of what is thought of it."""
    import numpy as np

    prior = Prior(readings.scenario)
    middle = np.zeros(len(prior.addresses))
    return _ground(readings, prior, middle, np.eye(len(middle)))


def once_read(readings: Readings, before: list[Read]) -> Ground:
    """As the same gauges found it when nothing was wrong: the likeliest vehicle, and what is left
    of the doubt, by straight lines about it.
    """
    import numpy as np

    prior = Prior(readings.scenario)
    columns = [(one.situation, one.address) for one in before]
    were = Readings(readings.scenario, columns, shown=False)
    value, sigma = (np.array([getattr(one, key) for one in before]) for key in ("value", "sigma"))
    read = Likelihood(value, sigma, np.full(len(before), NUMBER))
    found = find_maximum(
        lambda z: were.answers(were.scenario, prior.to_values(z)),
        read,
        np.zeros(len(prior.addresses)),
    )
    return _ground(readings, prior, found.z, remaining(found.slopes, np.diag(sigma**2)))


def _ground(readings: Readings, prior: Prior, at: ndarray, root: ndarray) -> Ground:
    """About one place, with what is not known about it."""
    here = _slopes(readings, prior, at)
    values = prior.to_values(at[None, :])[0]
    there = readings.scenario.set(dict(zip(prior.addresses, map(float, values), strict=True)))
    return Ground(there, here.middle, here.gradient @ root)


def _slopes(readings: Readings, prior: Prior, at: ndarray) -> Slopes:
    return slopes(
        at, lambda deviations: readings.answers(readings.scenario, prior.to_values(deviations))
    )


def remaining(gradient: ndarray, noise: ndarray) -> ndarray:
    """A root of the covariance that readings leave of deviations known to one each before."""
    import numpy as np

    spread = gradient @ gradient.T + noise
    left = np.eye(gradient.shape[1]) - gradient.T @ np.linalg.solve(spread, gradient)
    values, vectors = np.linalg.eigh((left + left.T) / 2)
    return vectors * np.sqrt(np.clip(values, 0, None))
