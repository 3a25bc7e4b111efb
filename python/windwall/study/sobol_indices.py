"""How much of the variance of an answer goes back to each of its inputs, alone and with others.

A. Saltelli and others, *Variance based sensitivity analysis of model output*, Computer Physics
Communications 181 (2010) 259: two independent samples A and B, and for each input A with that
column of B. First order by their equation (b), total by M. J. W. Jansen's (f).
"""

from __future__ import annotations

from typing import NamedTuple

import numpy as np

from windwall.results.leans_on import FEWEST_ROWS
from windwall.study.worlds import Array

__all__ = ["RESAMPLES", "Indices", "sobol_indices"]

RESAMPLES = 1000


class Indices(NamedTuple):
    """Shares of the variance, (inputs,), each with its standard error."""

    first: Array  # alone
    first_error: Array
    total: Array  # with everything that it does together with others
    total_error: Array
    variance: float


def sobol_indices(a: Array, b: Array, mixed: Array, seed: int = 0) -> Indices | None:
    """Indices of an answer at the rows of both samples, `a` and `b` (rows,), and at the rows of A
    with each input of B, `mixed` (rows, inputs). Standard errors by resampling rows 1000 times,
    as if they were independent; those of an even sequence are smaller. Rows that hold a NaN are
    left out. None where fewer than 16 are left or where nothing varies.
    """
    whole = np.isfinite(a) & np.isfinite(b) & np.isfinite(mixed).all(axis=1)
    a, b, mixed = a[whole], b[whole], mixed[whole]
    if len(a) < FEWEST_ROWS or not np.ptp([a, b]) > 0:
        return None
    middle = np.mean([a, b])
    terms = _terms(a - middle, b - middle, mixed - middle)
    first, total = _shares(terms.mean(axis=0))
    picks = np.random.default_rng(seed).multinomial(
        len(a), np.full(len(a), 1 / len(a)), size=RESAMPLES
    )
    firsts, totals = _shares(picks @ terms / len(a))
    errors = (np.nanstd(one, axis=0) for one in (firsts, totals))
    return Indices(first, next(errors), total, next(errors), float(np.var([a, b])))


def _terms(a: Array, b: Array, mixed: Array) -> Array:
    """What is averaged over rows: mean and mean square of the answer, then for each input what
    makes its first order, then what makes its total.
    """
    swapped = mixed - a[:, None]
    common = [(a + b) / 2, (a**2 + b**2) / 2]
    return np.column_stack([*common, b[:, None] * swapped, swapped**2 / 2])


def _shares(means: Array) -> tuple[Array, Array]:
    """First order and total, of one row of averages or of many; NaN where nothing varies."""
    inputs = (means.shape[-1] - 2) // 2
    variance = means[..., 1:2] - means[..., 0:1] ** 2
    variance = np.where(variance > 0, variance, np.nan)
    return means[..., 2 : 2 + inputs] / variance, means[..., 2 + inputs :] / variance
