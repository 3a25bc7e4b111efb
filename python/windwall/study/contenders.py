"""Which sets of a ranking could be the one to build, once everything uncertain is drawn.

Of thousands of sets most cannot: they are slower than the fastest by more than worlds can make up
for, or cost more than a faster one. They are left out by halving: many in few worlds, those that
are left in more. A test measures what that costs against drawing all of them.
"""

from __future__ import annotations

from itertools import zip_longest

import numpy as np

from windwall.results.ranking import Ranking, UpgradeSet
from windwall.study.drawn_sets import DrawnSets, Ids
from windwall.study.progress import Progress
from windwall.study.worlds import Array

__all__ = [
    "ANSWERED", "FIRST", "MAY_WIN", "REACH", "ROUNDS", "SURE", "TINY", "could_win", "kept",
    "within_reach",
]  # fmt: skip

# m/s behind the fastest at the best of the three anchors, beyond what can be told on the road.
REACH = 1.5
ROUNDS = ((16, 384), (64, 128), (128, 64))  # worlds, and how many sets go into them
FIRST = ROUNDS[0][0]  # worlds
SURE = 3.0  # standard errors of a mean lead, within which a set is kept
MAY_WIN = 3.0  # standard deviations of a lead, within which it wins in some world
ANSWERED = 0.95  # of the worlds, at least, in a set that is to be chosen
TINY = 1e-9  # m/s


def within_reach(ranking: Ranking) -> list[UpgradeSet]:
    """The sets that may be named whose speed is not beyond all worlds, the fastest first."""
    fastest = ranking.fastest
    if fastest is None:
        return []
    reach = ranking.smallest_lead + REACH
    named = filter(ranking.may_be_named, ranking.sets)
    near = [one for one in named if _least_lead(fastest, one) <= reach]
    return sorted(near, key=lambda one: -max(one.speed))


def _least_lead(fastest: UpgradeSet, one: UpgradeSet) -> float:
    return float(np.nanmin(np.subtract(fastest.speed, one.speed)))


def could_win(
    near: list[UpgradeSet],
    unseen: float,
    sets: DrawnSets,
    worlds: int,
    heard: Progress | None = None,
) -> tuple[list[Ids], bool]:
    """Of the sets within reach those that are left after all rounds, the fastest of them first, and
    whether it came to that; where it was stopped those that the worlds solved by then leave, none
    before the first.
    """
    costs = {frozenset(one.upgrades): one.cost for one in near}
    left = list(costs)
    whole = True
    for count, most in ROUNDS:
        if count >= worlds or len(left) <= 1 or not whole:
            break
        left = left[:most]
        whole = sets.solve(left, count, heard)
        done = min(count, *map(sets.solved, left))
        if not done:
            return [], False
        left = kept(left, sets.table(left, done), costs, unseen)
    return left[: ROUNDS[-1][1]], whole


def kept(left: list[Ids], speeds: Array, costs: dict[Ids, float], unseen: float) -> list[Ids]:
    """The fastest in the mean; then in turn the cheapest that cannot be told from it, those still
    cheaper that may turn out so, and those that win in some world or may.
    """
    means = np.where(_mostly_answered(speeds), _mean(speeds), -np.inf)
    best = int(means.argmax())
    leads = speeds[:, [best]] - speeds
    lead = np.where(np.isfinite(means), _mean(leads), np.inf)
    spread = np.sqrt(_mean((leads - _mean(leads)) ** 2))
    error = spread / np.sqrt(len(speeds)) + TINY
    price = np.array([costs[one] for one in left])
    known = np.where(np.isfinite(speeds), speeds, -np.inf)
    wins = np.bincount(known.argmax(axis=1), minlength=len(left))
    alike = np.flatnonzero(lead <= unseen)
    alike = alike[np.argsort(price[alike], kind="stable")]
    cheaper = np.flatnonzero(
        (price < price[alike[0]]) & (lead > unseen) & (lead - SURE * error <= unseen)
    )
    cheaper = cheaper[np.argsort(((lead - unseen) / error)[cheaper], kind="stable")]
    winning = np.flatnonzero((wins > 0) | (lead <= MAY_WIN * spread))
    winning = winning[np.lexsort((lead[winning] / (spread[winning] + TINY), -wins[winning]))]
    turns = zip_longest(alike, cheaper, winning)
    order = dict.fromkeys([best, *(int(i) for turn in turns for i in turn if i is not None)])
    return [left[i] for i in order]


def _mostly_answered(speeds: Array) -> Array:
    return np.isfinite(speeds).mean(axis=0) >= ANSWERED


def _mean(columns: Array) -> Array:
    """Of what is known in each column; 0 where nothing is."""
    known = np.isfinite(columns)
    return np.where(known, columns, 0.0).sum(axis=0) / np.maximum(known.sum(axis=0), 1)
