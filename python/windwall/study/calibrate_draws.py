"""Draws of what is left to be believed: proposed by normal distributions, and each counted by how
much likelier or less likely facts and prior make it (importance sampling).

Some worlds are drawn about the most probable vehicle. Through these the model is laid straight
anew, by least squares, and what it bends away from that is taken for an error more, once as it is
and once much larger; the rest is drawn from what then is believed. All count as one mixture, so
that no world far out can count for more than it should.
"""

from __future__ import annotations

from typing import NamedTuple

import numpy as np

from windwall.study.calibrate_likelihood import Likelihood
from windwall.study.calibrate_maximum import Maximum
from windwall.study.calibrate_model import Chosen
from windwall.study.calibrate_moments import Moments, proposal
from windwall.study.draws import normal_draws

__all__ = [
    "BENT", "SEED", "STIFF", "WIDER", "Draws", "Pool", "as_believed", "draws", "normalised",
    "pooled", "straightened",
]  # fmt: skip

SEED = 20
# Proposals are a little wider than what was found, so that none of their tails is missed.
WIDER = 1.02
BENT = (1.0, 4.0)  # times what a straight model misses, as an error more; the second reaches far
STIFF = 30.0  # worlds that the slopes at the most probable vehicle count as, in laying it straight


class Draws(NamedTuple):
    """Weighted worlds."""

    z: np.ndarray  # (draws, numbers of the scenario), standard normals
    weights: np.ndarray  # (draws,), adding up to one
    answers: np.ndarray  # (draws, facts + 1), SI, the speed last
    chosen: np.ndarray  # (draws, chosen numbers and circumstances)
    facts: np.ndarray  # (draws, facts), in their circumstances


class Pool(NamedTuple):
    """Worlds that were proposed from one normal distribution."""

    about: Moments
    z: np.ndarray
    chosen: np.ndarray  # (draws, chosen numbers and circumstances)
    answers: np.ndarray
    facts: np.ndarray  # (draws, facts), in their circumstances


def draws(model: Chosen, likelihood: Likelihood, at: Maximum, count: int) -> Draws:
    """Worlds as they are believed: `count`, a power of two, from the most probable vehicle, and
    twice as many from what a straight model through these says.
    """
    first = _proposed(model, proposal(at, likelihood), count, SEED)
    straight, bent = straightened(at, first)
    pools = [first]
    for seed, share in enumerate(BENT, SEED + 1):
        wider = likelihood._replace(sigma=np.hypot(likelihood.sigma, share * bent))
        pools.append(_proposed(model, proposal(straight, wider), count, seed))
    return pooled(pools, likelihood)


def _proposed(model: Chosen, about: Moments, count: int, seed: int) -> Pool:
    """Worlds about a normal distribution of the chosen numbers; the others as they were before."""
    of_all = len(model.worlds.prior.addresses)
    drawn = normal_draws(of_all + model.size, count, seed)
    chosen = about.mean + WIDER * drawn[:, of_all:] @ np.linalg.cholesky(about.covariance).T
    z = model.spread(chosen, drawn[:, :of_all])
    answers = model.worlds.answers(z)
    return Pool(about, z, chosen, answers, model.shifted(answers, chosen)[:, :-1])


def straightened(at: Maximum, pool: Pool) -> tuple[Maximum, np.ndarray]:
    """The straight model that lies best through worlds, and what (facts,) it misses them by."""
    counts = np.all(np.isfinite(pool.facts), axis=1).astype(float)
    return _through(at, pool.about.mean, pool.chosen, pool.facts, counts)


def as_believed(at: Maximum, drawn: Draws) -> Maximum:
    """The straight model that lies best through what is believed."""
    there = np.all(np.isfinite(drawn.facts), axis=1)
    counts = np.where(there, drawn.weights, 0.0) / np.sum(drawn.weights**2)
    middle = drawn.weights @ drawn.chosen
    return _through(at, middle, drawn.chosen, drawn.facts, counts)[0]


def _through(
    at: Maximum, middle: np.ndarray, chosen: np.ndarray, facts: np.ndarray, counts: np.ndarray
) -> tuple[Maximum, np.ndarray]:
    """By least squares about a middle, held to the slopes of before."""
    away = chosen - middle
    level = at.model + at.slopes @ (middle - at.z)
    missed = np.where(counts[:, None] > 0, facts - level - away @ at.slopes.T, 0.0)
    terms = np.hstack([np.ones((len(away), 1)), away])
    stiff = STIFF * np.diag(np.arange(terms.shape[1]) > 0)
    more = np.linalg.solve(
        terms.T @ (counts[:, None] * terms) + stiff, terms.T @ (counts[:, None] * missed)
    )
    rest = missed - terms @ more
    bent = np.sqrt(counts @ rest**2 / max(counts.sum(), 1.0))
    return at._replace(z=middle, model=level + more[0], slopes=at.slopes + more[1:].T), bent


def pooled(pools: list[Pool], likelihood: Likelihood) -> Draws:
    """All of them as draws of one mixture."""
    chosen = np.vstack([one.chosen for one in pools])
    facts = np.vstack([one.facts for one in pools])
    proposed = np.logaddexp.reduce([_log_density(one, chosen) for one in pools], axis=0)
    log = _log(likelihood, facts) - 0.5 * np.sum(chosen**2, axis=1) - proposed
    z, answers = (np.vstack([getattr(one, key) for one in pools]) for key in ("z", "answers"))
    return Draws(z, normalised(log), answers, chosen, facts)


def _log_density(pool: Pool, chosen: np.ndarray) -> np.ndarray:
    """Of all that is proposed there, from one pool; but for a constant of all."""
    factor = WIDER * np.linalg.cholesky(pool.about.covariance)
    from scipy.linalg import solve_triangular

    free = solve_triangular(factor, (chosen - pool.about.mean).T, lower=True)
    size = np.sum(np.log(np.diag(factor)))
    return np.log(len(pool.chosen)) - 0.5 * np.sum(free**2, axis=0) - size


def _log(likelihood: Likelihood, facts: np.ndarray) -> np.ndarray:
    """A world without an answer is none that was seen."""
    there = np.all(np.isfinite(facts), axis=1)
    found = likelihood.log(np.where(np.isfinite(facts), facts, likelihood.value))
    return np.where(there, found, -np.inf)


def normalised(log: np.ndarray) -> np.ndarray:
    """Weights that add up to one; equal where nothing has any."""
    highest = log.max()
    if not np.isfinite(highest):
        return np.full(len(log), 1 / len(log))
    weights = np.exp(log - highest)
    return weights / weights.sum()
