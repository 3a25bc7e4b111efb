"""Chances over common draws and over independent draws of NumPy and SciPy, side by side."""

from functools import cache

import numpy as np
from scipy import stats

import windwall as ww
from windwall.study.draws import SEED, drawn_values
from windwall.study.prior import Prior
from windwall.study.worlds import uncertain, world_speeds

MANY = 20_000
SHARES = [0.1, 0.3, 0.5, 0.7, 0.9]  # of goals: not the one at which it happens to agree


def independent(car, rng):
    """Every number by SciPy's own distributions; those that err together by their ranks."""
    known, prior = uncertain(car), Prior(car)
    together = rng.multivariate_normal(np.zeros(len(prior)), prior.correlation, MANY)
    shares = stats.norm.cdf(together)
    columns = []
    for value, sigma, low, high, share in zip(*known[1:], shares.T, strict=True):
        if low > 0:
            whole = stats.lognorm(np.sqrt(np.log1p((sigma / value) ** 2)), scale=value)
            ends = whole.cdf([low, high])
            columns.append(whole.ppf(ends[0] + share * (ends[1] - ends[0])))
        else:
            cut = stats.truncnorm((low - value) / sigma, (high - value) / sigma, value, sigma)
            columns.append(cut.ppf(share))
    return np.column_stack(columns)


@cache
def independent_speeds(text, sets):
    car = ww.loads(text)
    return world_speeds(car, independent(car, np.random.default_rng(4)), sets).speed


def differences(text, sets, draws, seeds=(SEED,)):
    """By how much the chance of a goal differs: (seeds, sets, goals)."""
    car, many = ww.loads(text), independent_speeds(text, sets)
    return np.array([
        [
            [np.nanmean(few >= goal) - np.nanmean(all_of_them >= goal)
             for goal in np.nanquantile(all_of_them, SHARES)]
            for few, all_of_them in zip(drawn(car, sets, draws, seed).T, many.T, strict=True)
        ]
        for seed in seeds
    ])  # fmt: skip


def drawn(car, sets, draws, seed):
    return world_speeds(car, drawn_values(Prior(car), draws, seed), sets).speed


def farthest(text, sets, draws):
    """The most by which the chance of a goal differs, over sets and goals."""
    return np.abs(differences(text, sets, draws)).max()


def within(text, sets, draws, most, seeds):
    """The share of chances that differ by no more, over seeds, sets and goals."""
    return (np.abs(differences(text, sets, draws, seeds)) <= most).mean()
