"""Learning from what was observed: which of the vehicles that a description allows was seen."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from typing import Any, NamedTuple

import numpy as np

from windwall.errors import NoAnswer
from windwall.results.posterior import (
    OUTLYING,
    STILL_WIDE,
    HeldFact,
    LearnedInput,
    Posterior,
    interval,
)
from windwall.scenario.data import ScenarioData, of_the_menu
from windwall.scenario.inputs import uncertain_inputs
from windwall.study.calibrate_draws import Draws, as_believed, draws
from windwall.study.calibrate_facts import Fact, facts_of
from windwall.study.calibrate_likelihood import TAILS, Likelihood
from windwall.study.calibrate_maximum import STEP, Maximum, find_maximum
from windwall.study.calibrate_model import Chosen, Circumstance, Worlds
from windwall.study.calibrate_moments import Moments, moments
from windwall.study.calibrate_trades import trades
from windwall.study.calibrate_walkers import Walk, walked
from windwall.study.draws import normal_draws
from windwall.study.progress import Progress, listener
from windwall.study.slopes import slopes

__all__ = [
    "COUNT", "COUNTS", "Scores", "Screened", "calibrate", "learn", "most_probable", "nearest",
    "scores", "screen",
]  # fmt: skip

COUNT = 256  # worlds that are drawn each time, a power of two
# An input counts that moves a fact by this share of what the fact is known to, or the speed by that
# share of all that it is in doubt.
COUNTS = 0.02


class Screened(NamedTuple):
    """The vehicle as described, and what each of its numbers does."""

    answers: np.ndarray  # (facts + 1,), the speed last
    slopes: np.ndarray  # (facts + 1, numbers), per standard deviation
    numbers: np.ndarray  # those that count


def calibrate(
    scenario: ScenarioData,
    facts: Iterable[Mapping[str, Any]] | None = None,
    progress: bool | Progress | None = None,
    count: int = COUNT,
    walkers: Walk | None = None,
    threads: int = 0,
) -> Posterior:
    """What is believed of a vehicle once it was seen.

    `facts` are those of logs; without them what the file has observed is taken. First the most
    probable vehicle is found by least squares, then three times `count` worlds are drawn about
    it and weighted, or walkers draw them. Raises NoAnswer where nothing was observed that can be
    asked about.
    """
    return learn(scenario, facts_of(scenario, facts), progress, count, walkers, threads)


def learn(
    scenario: ScenarioData,
    told: list[Fact],
    progress: bool | Progress | None = None,
    count: int = COUNT,
    walkers: Walk | None = None,
    threads: int = 0,
) -> Posterior:
    """The same from facts that were read."""
    with listener(progress, "learning", "step") as callback:
        tell = _steps(callback)
        worlds, missing = _that_answer(scenario, told, threads)
        tell()
        screened = screen(worlds)
        about = worlds.circumstances()
        model = Chosen(worlds, screened.numbers, about)
        tell()
        at, likelihood = most_probable(model, worlds)
        tell()
        if walkers is None:
            drawn = draws(model, likelihood, at, count)
        else:
            drawn = walked(model, likelihood, moments(at, likelihood), walkers)
        found = moments(as_believed(at, drawn), likelihood)
        tell()
        return _posterior(worlds, screened, about, at, likelihood, found, drawn, missing, walkers)


def _steps(callback: Any) -> Any:
    """Four steps, each told to a listener that may stop."""
    done = 0

    def tell() -> None:
        nonlocal done
        done += 1
        if callback and callback(done, 4) is False:
            raise KeyboardInterrupt

    return tell


def _that_answer(
    scenario: ScenarioData, told: list[Fact], threads: int
) -> tuple[Worlds, tuple[str, ...]]:
    """Worlds with the facts that the vehicle as described has a number for, and the others."""
    worlds = Worlds(scenario, told, threads)
    usual = worlds.answers(np.zeros((1, len(worlds.prior.addresses))))[0, :-1]
    there = [fact for fact, value in zip(told, usual, strict=True) if np.isfinite(value)]
    if not there:
        raise NoAnswer(
            "Nothing was observed that can be learned from: a fact needs its ±, and what is heard "
            "of knock its retard.",
            "nothing_observed",
        )
    missing = tuple(fact.source for fact in told if fact not in there)
    return (Worlds(scenario, there, threads) if missing else worlds), missing


def screen(worlds: Worlds) -> Screened:
    """Which numbers move a fact or the speed."""
    own = [at for at, one in enumerate(worlds.prior.addresses) if not of_the_menu(one)]
    model = Chosen(worlds, np.array(own), ())
    answers, gradient = slopes(np.zeros(len(own)), lambda z: worlds.answers(model.spread(z)), STEP)
    sigma = np.array([np.hypot(one.sigma, one.model_sigma) for one in worlds.facts])
    in_doubt = np.sqrt(np.sum(gradient[-1] ** 2)) or 1.0
    moved = np.abs(gradient) / np.append(sigma, in_doubt)[:, None]
    kept = np.max(moved, axis=0) > COUNTS
    every = np.zeros((len(answers), len(worlds.prior.addresses)))
    every[:, own] = gradient
    return Screened(answers, every, np.array(own)[kept])


def most_probable(model: Chosen, worlds: Worlds) -> tuple[Maximum, Likelihood]:
    """By normal errors; where a reading then is an outlier, by errors with long tails."""
    likelihood = worlds.likelihood()
    at = find_maximum(model, likelihood, np.zeros(model.size))
    off = np.abs(likelihood.off(at.model))[~likelihood.bound]
    if not np.any(off > OUTLYING):
        return at, likelihood
    robust = worlds.likelihood(TAILS)
    return find_maximum(model, robust, at.z), robust


def nearest(
    screened: Screened, about: list[Circumstance], likelihood: Likelihood, at: int
) -> float:
    """How many standard deviations from the description the nearest vehicle is that explains one
    fact alone, along the slopes there; a bound that is met asks for none.
    """
    shifts = [one.shifts[at] for one in about]
    reach = np.sqrt(np.sum(screened.slopes[at] ** 2) + np.sum(np.square(shifts)))
    gap = float(screened.answers[at] - likelihood.value[at])
    side = likelihood.side[at]
    gap = min(side * gap, 0.0) if side else gap
    return abs(gap) / float(np.hypot(reach, likelihood.sigma[at]))


def _posterior(
    worlds: Worlds,
    screened: Screened,
    about: list[Circumstance],
    at: Maximum,
    likelihood: Likelihood,
    found: Moments,
    drawn: Draws,
    missing: tuple[str, ...],
    walkers: Walk | None,
) -> Posterior:
    scenario, numbers = worlds.scenario, screened.numbers
    believed = scores(worlds, screened, found)
    inputs = _learned(worlds, numbers, believed)
    own = np.ix_(numbers, numbers)
    before = normal_draws(len(worlds.prior), COUNT)
    usual = Worlds(scenario, [], worlds.threads).answers(before)[:, -1]
    size = len(screened.numbers)
    left = np.sqrt(np.diag(found.covariance))
    return Posterior(
        title=scenario.title,
        system=scenario.system,
        digest=scenario.digest,
        numbers=tuple(worlds.prior.addresses),
        inputs=inputs,
        circumstances=tuple(
            (one.name, float(found.mean[size + i]), float(left[size + i]))
            for i, one in enumerate(about)
        ),
        facts=tuple(_held(worlds, screened, about, at, likelihood)),
        unasked=missing,
        trades=trades(
            [one.address for one in inputs],
            believed.covariance[own],
            worlds.prior.correlation[own],
        ),
        unlearned=_unlearned(screened, inputs),
        tails=likelihood.tails,
        before=interval(usual, np.full(len(usual), 1 / len(usual))),
        after=interval(drawn.answers[:, -1], drawn.weights),
        mean=believed.mean[numbers],
        covariance=believed.covariance[own],
        draws=drawn.z,
        weights=drawn.weights,
        speeds=drawn.answers[:, -1],
        evaluations=worlds.solved,
        converged=at.converged,
        walked=walkers is not None,
    )


class Scores(NamedTuple):
    """Normal scores of all numbers: what z is, but where the description has correlations."""

    mean: np.ndarray
    covariance: np.ndarray


def scores(worlds: Worlds, screened: Screened, found: Moments) -> Scores:
    """Those that are believed; numbers that do not count as they were."""
    prior, size = worlds.prior, len(screened.numbers)
    factor = np.linalg.cholesky(prior.correlation)
    z, doubt = np.zeros(len(prior)), np.eye(len(prior))
    z[screened.numbers] = found.mean[:size]
    doubt[np.ix_(screened.numbers, screened.numbers)] = found.covariance[:size, :size]
    return Scores(factor @ z, factor @ doubt @ factor.T)


def _learned(worlds: Worlds, numbers: np.ndarray, found: Scores) -> tuple[LearnedInput, ...]:
    known = {one.address: one for one in uncertain_inputs(worlds.scenario)}
    prior, mean, left = worlds.prior, found.mean, np.sqrt(np.diag(found.covariance))
    ends = np.array([0 * mean, mean - left, mean, mean + left])
    factor = np.linalg.cholesky(prior.correlation)
    usual, low, middle, high = prior.to_values(np.linalg.solve(factor, ends.T).T)
    return tuple(
        LearnedInput(
            known[prior.addresses[at]],
            float(usual[at]),
            float(middle[at]),
            float(high[at] - low[at]) / 2,
            float(mean[at]),
            float(left[at]),
        )
        for at in numbers
    )


def _held(
    worlds: Worlds,
    screened: Screened,
    about: list[Circumstance],
    at: Maximum,
    likelihood: Likelihood,
) -> Iterable[HeldFact]:
    off = likelihood.off(at.model)
    for i, one in enumerate(worlds.facts):
        side = likelihood.side[i]
        missed = side * min(side * off[i], 0.0) if side else off[i]
        yield HeldFact(
            one.source,
            one.address,
            one.group,
            one.heard or one.value,
            one.sigma,
            float(screened.answers[i]),
            float(at.model[i]),
            float(missed),
            bool(not side and abs(missed) > OUTLYING),
            nearest(screened, about, likelihood, i),
            one.measure,
        )


def _unlearned(screened: Screened, inputs: tuple[LearnedInput, ...]) -> tuple[str, ...]:
    """Inputs that matter for the speed and are in doubt as before, what matters most first."""
    speed = np.abs(screened.slopes[-1, screened.numbers])
    order = np.argsort(-speed)
    matters = speed > 0.2 * np.sqrt(np.sum(speed**2))
    return tuple(inputs[at].address for at in order if matters[at] and inputs[at].left > STILL_WIDE)
