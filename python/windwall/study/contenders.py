"""Which sets of a ranking could be the one to build, once everything uncertain is drawn.

Of thousands of sets most cannot: they are slower than the fastest by more than worlds can make up
for, or cost more than a faster one. They are left out by halving: many in few worlds, those that
are left in more. A test measures what that costs against drawing all of them.
"""

from __future__ import annotations

import numpy as np

from windwall.results.ranking import Ranking, UpgradeSet
from windwall.study.drawn_sets import DrawnSets, Ids
from windwall.study.progress import Progress
from windwall.study.worlds import Array

# m/s behind the fastest at the best of the three anchors, beyond what can be told on the road.
REACH = 1.5
ROUNDS = ((16, 384), (64, 96), (128, 32))  # worlds, and how many sets go into them
SURE = 3.0  # standard errors of a mean lead, within which a set is kept
MAY_WIN = 2.0  # standard deviations of a lead, within which it wins in some world


def within_reach(ranking: Ranking) -> list[UpgradeSet]:
    """The sets that may be named whose speed is not beyond all worlds, the fastest first."""
    fastest = ranking.fastest
    if fastest is None:
        return []
    reach = ranking.smallest_lead + REACH
    named = (one for one in ranking.sets if one.recommended and ranking.affords(one.cost))
    near = [one for one in named if _least_lead(fastest, one) <= reach]
    return sorted(near, key=lambda one: -max(one.speed))


def _least_lead(fastest: UpgradeSet, one: UpgradeSet) -> float:
    return float(np.nanmin(np.subtract(fastest.speed, one.speed)))


def could_win(
    ranking: Ranking, sets: DrawnSets, worlds: int, heard: Progress | None = None
) -> list[Ids] | None:
    """The sets that are left after all rounds, the fastest of them first; None where it was
    stopped.
    """
    left = [frozenset(one.upgrades) for one in within_reach(ranking)]
    costs = {frozenset(one.upgrades): one.cost for one in ranking.sets}
    for count, most in ROUNDS:
        if count >= worlds or len(left) <= 1:
            break
        left = left[:most]
        if not sets.solve(left, count, heard):
            return None
        left = kept(left, sets.table(left, count), costs, ranking.smallest_lead)
    return left[: ROUNDS[-1][1]]


def kept(left: list[Ids], speeds: Array, costs: dict[Ids, float], unseen: float) -> list[Ids]:
    """The sets that may be the fastest in the mean, the cheaper ones that may not be told from it,
    and those that win in some world or may. First those that are cheaper than all faster ones, then by
    the worlds that they win, then by their mean speed.
    """
    known = np.where(np.isfinite(speeds), speeds, -np.inf)
    means = np.where(np.isfinite(speeds).all(axis=0), known.mean(axis=0), -np.inf)
    best = int(means.argmax())
    leads = known[:, [best]] - known
    with np.errstate(invalid="ignore"):  # a set without an answer somewhere is behind by infinity
        lead, spread = leads.mean(axis=0), leads.std(axis=0)
        near = lead - SURE * spread / np.sqrt(len(known)) <= unseen
        near |= lead <= MAY_WIN * spread
    wins = np.bincount(known.argmax(axis=1), minlength=len(left))
    stays = [i for i in np.argsort(-means) if near[i] or wins[i]]
    frontier = _cheaper_than_faster(stays, [costs[one] for one in left])
    others = sorted((i for i in stays if i not in frontier), key=lambda i: -wins[i])
    return [left[i] for i in [*frontier, *others]]


def _cheaper_than_faster(by_speed: list[int], costs: list[float]) -> list[int]:
    """Those that cost less than all before them."""
    cheapest, found = np.inf, []
    for i in by_speed:
        if costs[i] < cheapest:
            found.append(i)
            cheapest = costs[i]
    return found
