"""What is believed of a vehicle once it was seen: every input before and after, and every fact."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Any, NamedTuple

import numpy as np

from windwall.quantities.measures import Measure
from windwall.quantities.uncertain_input import UncertainInput
from windwall.results.views import Documented

__all__ = [
    "FEW_DRAWS", "OUTLYING", "STILL_WIDE", "HeldFact", "Interval", "LearnedInput", "Posterior",
    "Trade", "interval", "quantiles",
]  # fmt: skip

OUTLYING = 3.0  # standard deviations, beyond which a reading is called an outlier
STILL_WIDE = 0.95  # of its own standard deviation, above which nothing was learned of an input
FEW_DRAWS = 50.0  # equal draws, below which an interval is rough


class LearnedInput(NamedTuple):
    """An input before and after. SI; `moved` and `left` in its own standard deviations."""

    input: UncertainInput
    before: float  # the middle of what was believed: not what is stated, where that is at an end
    value: float  # the middle of what is believed afterwards
    sigma: float  # afterwards
    moved: float
    left: float  # of the standard deviation, 1 where nothing was learned

    @property
    def address(self) -> str:
        return self.input.address


class HeldFact(NamedTuple):
    """A fact beside the most probable vehicle. SI."""

    source: str
    address: str
    group: str
    observed: float | str
    sigma: float
    before: float  # of the model as it is described
    after: float  # of the most probable vehicle, in the circumstances that go with it
    off: float  # standard deviations of the reading that the model then lies above it
    outlier: bool
    nearest: float  # standard deviations from the description to a vehicle that explains this alone
    measure: Measure

    @property
    def unexplained(self) -> bool:
        """Whether no vehicle within the range of what is stated explains it."""
        return self.nearest > OUTLYING


class Trade(NamedTuple):
    """Inputs that only together were learned: each alone may still be about anything."""

    addresses: tuple[str, ...]
    ways: tuple[int, ...]  # with which sign each goes into what was learned
    known_to: float  # of the combination, in standard deviations of before


class Interval(NamedTuple):
    """Where 68 and 95 of 100 lie, and the middle. SI."""

    middle: float
    inner: tuple[float, float]
    outer: tuple[float, float]


@dataclass(frozen=True, repr=False)
class Posterior(Documented):
    """What was learned. `draws` are standard normals (draws, numbers) of every uncertain number of
    the scenario, in the order of `numbers`, each counting by its `weights`, which add up to one.
    """

    title: str
    system: str  # of units
    digest: str  # of the scenario that it was learned with
    numbers: tuple[str, ...]
    inputs: tuple[LearnedInput, ...]  # those that move a fact or the speed
    circumstances: tuple[tuple[str, float, float], ...]  # name, moved, left, in standard deviations
    facts: tuple[HeldFact, ...]
    unasked: tuple[str, ...]  # sources of facts that the vehicle as described has no number for
    trades: tuple[Trade, ...]
    unlearned: tuple[str, ...]  # inputs that matter for the speed, of which nothing was learned
    tails: float | None  # degrees of freedom of Student's t, where outliers asked for it
    before: Interval | None  # of the speed, m/s
    after: Interval | None
    mean: np.ndarray = field(compare=False)  # (inputs,), normal scores
    covariance: np.ndarray = field(compare=False)
    draws: np.ndarray = field(compare=False)
    weights: np.ndarray = field(compare=False)
    speeds: np.ndarray = field(compare=False)  # m/s, of the draws
    evaluations: int = 0
    converged: bool = True
    walked: bool = False  # whether walkers made the draws
    answered = True

    @property
    def correlation(self) -> np.ndarray:
        """Of the inputs with each other, (inputs, inputs)."""
        left = np.sqrt(np.diag(self.covariance))
        return self.covariance / np.outer(left, left)

    @property
    def equal_draws(self) -> float:
        """How many equally probable draws the weighted ones are worth."""
        return float(1 / np.sum(self.weights**2))

    @property
    def rough(self) -> bool:
        """Whether the draws are worth too few for an interval."""
        return self.equal_draws < FEW_DRAWS

    def __getitem__(self, address: str) -> LearnedInput:
        """An input by its address."""
        return next(one for one in self.inputs if one.address == address)


def quantiles(values: np.ndarray, weights: np.ndarray, shares: Any) -> np.ndarray:
    """Of weighted draws, where those shares lie below, straight in between; NaN are left out."""
    there = np.isfinite(values)
    if not there.any():
        return np.full(np.shape(shares), np.nan)
    order = np.argsort(values[there])
    weight = weights[there][order] / weights[there].sum()
    return np.interp(shares, np.cumsum(weight) - weight / 2, values[there][order])


def interval(values: np.ndarray, weights: np.ndarray) -> Interval | None:
    """The interval of weighted draws; None where none of them has a number."""
    if not np.isfinite(values).any():
        return None
    found = quantiles(values, weights, [0.5, 0.16, 0.84, 0.025, 0.975])
    middle, low, high, lowest, highest = map(float, found)
    return Interval(middle, (low, high), (lowest, highest))
