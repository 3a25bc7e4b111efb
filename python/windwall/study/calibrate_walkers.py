"""The full posterior by an ensemble of walkers, where somebody asks for it: emcee draws it."""

from __future__ import annotations

from typing import NamedTuple

import numpy as np

from windwall.errors import NoAnswer
from windwall.study.calibrate_draws import Draws
from windwall.study.calibrate_likelihood import Likelihood
from windwall.study.calibrate_model import Chosen
from windwall.study.calibrate_moments import Moments

__all__ = ["MISSING", "SEED", "Walk", "cost", "log_posterior", "walked", "walkers"]

MISSING = 'The full posterior needs the package emcee: "pip install emcee", or ask without walkers.'
SEED = 21


class Walk(NamedTuple):
    """How far walkers go; twice as many as there are unknowns at least."""

    steps: int = 200
    burn_in: int = 100  # steps that are forgotten
    keep: int = 256  # worlds of all that came by


def cost(model: Chosen, walk: Walk) -> int:
    """Worlds that are solved."""
    return walkers(model.size) * (walk.steps + walk.burn_in)


def walkers(size: int) -> int:
    """How many walk: more than twice the unknowns, and even."""
    return 2 * size + 2


def log_posterior(model: Chosen, likelihood: Likelihood, z: np.ndarray) -> np.ndarray:
    """(worlds,), of the chosen numbers and circumstances."""
    facts = model(z)
    there = np.all(np.isfinite(facts), axis=1)
    log = likelihood.log(np.where(np.isfinite(facts), facts, 0.0)) - 0.5 * np.sum(z**2, axis=1)
    return np.where(there, log, -np.inf)


def walked(model: Chosen, likelihood: Likelihood, about: Moments, walk: Walk) -> Draws:
    """Worlds that the walkers came by, each counting the same."""
    try:
        import emcee
    except ImportError as missing:
        raise NoAnswer(MISSING, "no_emcee") from missing
    count = walkers(model.size)
    state = np.random.RandomState(SEED)
    start = state.normal(size=(count, model.size)) @ np.linalg.cholesky(about.covariance).T
    sampler = emcee.EnsembleSampler(
        count, model.size, lambda z: log_posterior(model, likelihood, z), vectorize=True
    )
    sampler.random_state = state.get_state()
    sampler.run_mcmc(about.mean + start, walk.steps + walk.burn_in)
    chain = sampler.get_chain(discard=walk.burn_in, flat=True)
    chosen = chain[np.linspace(0, len(chain) - 1, min(walk.keep, len(chain))).astype(int)]
    others = state.normal(size=(len(chosen), len(model.worlds.prior)))
    z = model.spread(chosen, others)
    answers = model.worlds.answers(z)
    facts = model.shifted(answers, chosen)[:, :-1]
    return Draws(z, np.full(len(z), 1 / len(z)), answers, chosen, facts)
