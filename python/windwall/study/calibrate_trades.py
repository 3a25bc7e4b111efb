"""Inputs that trade against each other: what was seen fixes them together, and not one by one."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from windwall.results.posterior import Trade

__all__ = ["ALONE", "LEARNED", "PART", "trades"]

LEARNED = 0.5  # of before, the standard deviation of a combination that counts as learned
ALONE = 0.7  # of before, the standard deviation above which an input alone does not
PART = 0.35  # of a combination of length one, the share that an input has at least in it


def trades(
    addresses: Sequence[str], covariance: np.ndarray, before: np.ndarray | None = None
) -> tuple[Trade, ...]:
    """Of a covariance of normal scores: its short axes that lie between the inputs, the shortest
    first. Counted from the correlation that they had before, each input turned as little as can be.
    """
    if before is not None:
        lengths, axes = np.linalg.eigh(before)
        back = axes / np.sqrt(lengths) @ axes.T
        covariance = back @ covariance @ back
    lengths, axes = np.linalg.eigh(covariance)
    alone = np.sqrt(np.diag(covariance))
    found = []
    for length, axis in zip(np.sqrt(np.maximum(lengths, 0)), axes.T, strict=True):
        parts = [at for at in np.argsort(-np.abs(axis)) if abs(axis[at]) >= PART]
        wide = [at for at in parts if alone[at] >= ALONE]
        if length <= LEARNED and len(wide) >= 2:
            names = tuple(addresses[at] for at in wide)
            ways = tuple(int(np.sign(axis[at] * axis[wide[0]])) for at in wide)
            found.append(Trade(names, ways, float(length)))
    return tuple(found)
