"""The sets of a menu that could be the fastest, whatever is not known yet."""

from __future__ import annotations

from windwall.results.ranking import MIDDLE, Ranking, UpgradeSet

__all__ = ["BEHIND", "MOST", "nearest", "price"]

MOST = 16
BEHIND = 2.0  # m/s that a set may lie behind the fastest at every knock anchor and still be drawn


def nearest(ranking: Ranking) -> list[UpgradeSet]:
    """Allowed and paid for: the recommended one, then those that come nearest to the fastest at any
    of the three knock anchors, the number known worst.
    """
    allowed = list(filter(ranking.may_be_named, ranking.sets))
    if ranking.target is None or not allowed:
        return []
    best = [max(one.speed[at] for one in allowed) for at in range(3)]

    def behind(one: UpgradeSet) -> float:
        return min(top - speed for top, speed in zip(best, one.speed, strict=True))

    near = sorted((one for one in allowed if behind(one) <= BEHIND), key=behind)
    return [ranking.target, *(one for one in near if one != ranking.target)][:MOST]


def price(ranking: Ranking) -> float | None:
    """Money for one m/s: of the recommended set over what it gains; None where that is nothing."""
    target = ranking.target
    gained = target.speed[MIDDLE] - ranking.base.speed[MIDDLE] if target else 0.0
    return target.cost / gained if gained > 0 and target.cost else None
