"""What common draws say, as plain numbers in SI."""

from __future__ import annotations

from typing import Any

from windwall.results.drawn import (
    AtTheEnd,
    DrawnRanking,
    DrawnSet,
    DrawnSpeed,
    Spread,
    share_error,
)
from windwall.results.views import document

__all__ = ["drawn_ranking_document", "drawn_speed_document", "plain"]


@document.register(DrawnSpeed)
def drawn_speed_document(drawn: DrawnSpeed) -> dict[str, Any]:
    """Of one vehicle."""
    return {
        "worlds": drawn.asked,
        "seed": drawn.seed,
        "ends": drawn.ends,
        "speed": plain(drawn.spread),
        "middle": drawn.middle,
        "as_stated": drawn.stated,
        "chance_of_goal": drawn.chance_of_goal,
        "chance_error": _error(drawn.chance_of_goal, drawn.spread.worlds if drawn.spread else 0),
        "at_the_end_of_their_range": [_edge(one) for one in drawn.one_sided],
        "all_of_these": drawn.all_moved,
    }


def _edge(one: AtTheEnd) -> dict[str, Any]:
    return {key: value for key, value in one._asdict().items() if key != "measure"}


@document.register(DrawnRanking)
def drawn_ranking_document(drawn: DrawnRanking) -> dict[str, Any]:
    """Of a ranking."""
    choice = {
        "recommended": drawn.recommended,
        "fastest": drawn.fastest,
        "told_apart": drawn.told_apart,
        "regret": drawn.regret,
        "by_gain": drawn.by_gain._asdict() if drawn.by_gain else None,
        "by_speed": drawn.by_speed._asdict() if drawn.by_speed else None,
    }
    return {
        "asked": drawn.asked,
        "worlds": drawn.worlds,
        "interrupted": drawn.interrupted,
        "seed": drawn.seed,
        "ends": drawn.ends,
        "could_win": drawn.could_win,
        "drawn_whole": drawn.drawn_whole,
        "gains": [{key: plain(part) for key, part in one._asdict().items()} for one in drawn.gains],
        "sets": [_set(one) for one in drawn.sets],
        "choice": choice,
    }


def _set(one: DrawnSet) -> dict[str, Any]:
    made = {key: plain(part) for key, part in one._asdict().items()}
    return made | {"reaches_goal_error": _error(one.reaches_goal, one.counted)}


def _error(chance: float | None, worlds: int) -> float | None:
    return None if chance is None or not worlds else share_error(chance, worlds)


def plain(one: Any) -> Any:
    """A spread with its names."""
    return one._asdict() if isinstance(one, Spread) else one
