"""The fair share of each upgrade of a set as weights on the speeds of its subsets."""

from __future__ import annotations

from collections.abc import Callable

from windwall.study.drawn_sets import Ids

__all__ = ["MOST", "share_weights"]

MOST = 7  # upgrades of a set whose subsets are all drawn


def share_weights(
    target: Ids, allowed: Callable[[Ids], bool]
) -> dict[str, dict[Ids, float]] | None:
    """For each upgrade the factor of every subset's speed: the mean over all orders of fitting in
    which every step is allowed, of what it adds when its turn comes. None without such an order.

    L. S. Shapley, "A value for n-person games", where nothing is restricted.
    """
    up = _paths(frozenset(), target, allowed, lambda here, one: here | {one})
    down = _paths(target, target, allowed, lambda here, one: here - {one})
    if not up.get(target):
        return None
    weights: dict[str, dict[Ids, float]] = {one: {} for one in target}
    for here, ways in up.items():
        for one in target - here:
            after = here | {one}
            part = ways * down.get(after, 0) / up[target]
            if part:
                weights[one][after] = weights[one].get(after, 0.0) + part
                weights[one][here] = weights[one].get(here, 0.0) - part
    return weights


def _paths(
    start: Ids, target: Ids, allowed: Callable[[Ids], bool], step: Callable[[Ids, str], Ids]
) -> dict[Ids, int]:
    """In how many ways each allowed subset is come to from one end."""
    ways, ring = {start: 1}, {start: 1}
    for _ in target:
        further: dict[Ids, int] = {}
        for here, number in ring.items():
            for one in target:
                there = step(here, one)
                if there != here and allowed(there):
                    further[there] = further.get(there, 0) + number
        ways |= further
        ring = further
    return ways
