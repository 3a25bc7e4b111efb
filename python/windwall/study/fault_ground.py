"""The vehicle that faults are looked for in: as it is described, or as it was read when sound."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from windwall.scenario.data import ScenarioData
from windwall.study.fault_curves import Readings
from windwall.study.fault_facts import Read
from windwall.study.prior import Prior
from windwall.study.slopes import Slopes, slopes

if TYPE_CHECKING:
    from numpy import ndarray

ROUNDS = 4  # of straight lines through the model, each about where the last one led
SHARES = (0.125, 0.25, 0.5, 0.75, 1.0)  # of the way there that are tried


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
    values = np.array([one.value for one in before])
    noise = np.diag([one.sigma**2 for one in before])
    at = np.zeros(len(prior.addresses))
    found = _slopes(were, prior, at)
    for _ in range(ROUNDS):
        spread = found.gradient @ found.gradient.T + noise
        off = values - found.middle + found.gradient @ at
        wanted = found.gradient.T @ np.linalg.solve(spread, off)
        there = _nearer(were, prior, before, at, wanted)
        if there is None:
            break
        at, found = there, _slopes(were, prior, there)
    return _ground(readings, prior, at, remaining(found.gradient, noise))


def _nearer(
    were: Readings, prior: Prior, before: list[Read], at: ndarray, wanted: ndarray
) -> ndarray | None:
    """As far on the way to a place as it gets likelier; None where it does not."""
    import numpy as np

    steps = np.array([0.0, *SHARES])[:, None]
    places = at + steps * (wanted - at)
    answers = were.answers(were.scenario, prior.to_values(places))
    off = (answers - [one.value for one in before]) / [one.sigma for one in before]
    unlikely = np.sum(places**2, axis=1) + np.sum(off**2, axis=1)
    best = int(np.nanargmin(unlikely))
    return places[best] if best > 0 else None


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
