"""Sets of upgrades by a run that is driven. The quick ranking solves them all; driven are those
that could be the best for their price, judged by a straight line over the quick speed at the end
of the same road.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from typing import Any

from windwall.errors import NoAnswer
from windwall.results.driven_ranking import DrivenRanking, DrivenSet, Pruning
from windwall.results.gearing import Mark
from windwall.results.ranking import MIDDLE, Ranking, UpgradeSet
from windwall.scenario.arguments import wrong
from windwall.scenario.data import ScenarioData
from windwall.study.driven_gains import Measured, by
from windwall.study.progress import Progress, listener
from windwall.study.pruning import Line, front, spread_over
from windwall.study.standing_start import read_mark, timed

__all__ = [
    "CHECKED", "FORMS", "MOST", "ROADS", "SPREAD", "Search", "driven_rank", "goal_mark", "goal_of",
    "over_road", "quick_road", "ranked_by_runs", "wanted_mark",
]  # fmt: skip

SPREAD = 12  # sets driven over the whole order before any is passed over
CHECKED = 12  # of those passed over, driven all the same
MOST = 400  # sets that are driven; what could still win behind them is said
ROADS = (50.0, 30000.0)  # m, that a quick run may be over
FORMS = '"driven_speed", "time over 1600 m", "time to 100 km/h" or "goal"'


def wanted_mark(scenario: ScenarioData, text: str) -> Mark | None:
    """What a run is timed to; None for the speed at its end."""
    words = text.replace("_", " ").split()
    if words == ["driven", "speed"]:
        return None
    if words == ["goal"]:
        return goal_mark(scenario)
    kind = {"over": "distance", "to": "speed"}.get(words[1] if len(words) > 2 else "")
    if kind and words[0] == "time":
        mark = read_mark(" ".join(words[2:]))
        if getattr(mark, kind) is not None:
            return mark
    raise wrong("by", f"{text!r} is nothing to rank by: write {FORMS}")


def goal_mark(scenario: ScenarioData) -> Mark | None:
    """What the time of the goal is of; None where the goal is a speed."""
    over, to_speed = scenario.get("goal/over"), scenario.get("goal/to_speed")
    if over is None and to_speed is None:
        if scenario.get("goal/speed") is None:
            raise wrong("by", "the file states no goal; write " + FORMS)
        return None
    return Mark(speed=to_speed, distance=over)


def goal_of(scenario: ScenarioData, mark: Mark | None) -> float | None:
    """The wanted time, where it is that of this mark; the wanted speed of a run without one."""
    if mark is None:
        return scenario.get("goal/speed")
    asked = Mark(scenario.get("goal/to_speed"), scenario.get("goal/over"))
    return scenario.get("goal/time") if mark == asked else None


def quick_road(scenario: ScenarioData, mark: Mark | None) -> float | None:
    """m of road whose quick speed goes along with what is ranked by."""
    if mark is None:
        return scenario.get("goal/run_up")
    distance = mark.distance
    if distance is None:
        try:
            distance = timed(scenario, mark).distance
        except NoAnswer:
            return scenario.get("goal/run_up")
    return min(max(distance, ROADS[0]), ROADS[1])


def over_road(scenario: ScenarioData, road: float | None) -> ScenarioData:
    """The same with the quick speed at the end of that road."""
    return scenario if road is None else scenario.set({"goal/run_up": f"{road!r} m"})


def driven_rank(
    scenario: ScenarioData, quick: Ranking, mark: Mark | None, progress: bool | Progress | None
) -> DrivenRanking:
    """Drives the sets of a quick ranking that could win."""
    paid = [one for one in quick.sets if quick.affords(one.cost)]
    may_win = [one for one in paid if not one.upgrades or quick.may_be_named(one)]
    search = Search(scenario, may_win, mark, [quick.may_be_named(one) for one in may_win])
    with listener(progress, "driving", "set") as callback:
        complete = search.run(callback)
    stock = next((one for one in search.driven.values() if not one.fitted.upgrades), None)
    return DrivenRanking(
        title=scenario.name,
        system=scenario.system,
        currency=scenario.currency,
        mark=mark,
        run_up=scenario.get("goal/run_up"),
        goal=goal_of(scenario, mark),
        stock=stock or DrivenSet(quick.set_at(0), None, "it was not driven"),
        runs=tuple(sorted(search.driven.values(), key=search.worth)),
        best_for_price=tuple(front(search.named(), _cost, search.worth)),
        pruning=search.pruning(),
        complete=complete,
        passed=tuple(quick.base.passed) if quick.answered else (),
        left_aside=len(paid) - len(may_win),
        stopped=search.stopped,
    )


def _cost(one: DrivenSet) -> float:
    return one.fitted.cost


class Search:
    """Which sets are driven, and in which order. Merits are such that less is better."""

    def __init__(
        self,
        scenario: ScenarioData,
        fits: list[UpgradeSet],
        mark: Mark | None,
        holds: list[bool],
    ) -> None:
        self.scenario, self.fits, self.mark, self.holds = scenario, fits, mark, holds
        self.measure: Callable[[ScenarioData], Measured] = by(mark, {})
        self.quick = [one.speed[MIDDLE] for one in fits]
        self.order = sorted(range(len(fits)), key=lambda at: -self.quick[at])
        self.driven: dict[int, DrivenSet] = {}
        self.checked: list[int] = []
        self.line = Line()
        self.stopped = False

    def worth(self, one: DrivenSet) -> float:
        """What sorts it: the best first, those without an answer last."""
        if one.merit is None:
            return float("inf")
        return -one.merit if self.mark is None else one.merit

    def run(self, callback: Progress | None) -> bool:
        """Whether everything that could win was driven."""
        try:
            self._drive_all(self._first(), callback)
            complete = self._drive_all(self._rest(), callback)
            self.checked = spread_over([at for at in self.order if at not in self.driven], CHECKED)
            return self._drive_all(self.checked, callback, most=None) and complete
        except KeyboardInterrupt:
            self.stopped = True
            return False

    def named(self) -> list[DrivenSet]:
        """What was driven and holds every limit: as it is, the vehicle may pass some."""
        return [one for one in self.driven.values() if one.holds]

    def _first(self) -> list[int]:
        """As it is, the best by the quick speed for every price, and some over the whole order."""
        stock = [at for at, one in enumerate(self.fits) if not one.upgrades]
        by_cost = front(range(len(self.fits)), lambda at: self.fits[at].cost, self._slowness)
        return list(dict.fromkeys([*stock, *by_cost, *spread_over(self.order, SPREAD)]))

    def _slowness(self, at: int) -> float:
        return -self.quick[at]

    def _rest(self) -> Iterable[int]:
        """By the quick speed, those that the line does not rule out."""
        for at in self.order:
            if at not in self.driven and self._could_win(at):
                yield at

    def _could_win(self, at: int) -> bool:
        """Whether it may be better than everything driven that costs no more."""
        cost = self.fits[at].cost
        better = (self.worth(one) for one in self.named() if _cost(one) <= cost)
        return self.line.best_at(self.quick[at]) < min(better, default=float("inf"))

    def _drive_all(
        self, places: Iterable[int], callback: Progress | None, most: int | None = MOST
    ) -> bool:
        for at in places:
            if most is not None and len(self.driven) >= most:
                return False
            found, why = self.measure(self.scenario.install(self.fits[at]))
            self.driven[at] = DrivenSet(self.fits[at], found, why, self.holds[at])
            if found is not None:
                self.line.note(self.quick[at], self.worth(self.driven[at]))
            if callback and callback(len(self.driven), len(self.fits)) is False:
                raise KeyboardInterrupt
        return True

    def pruning(self) -> Pruning:
        """How what was passed over was held against the road."""
        checked = {id(self.driven[at]) for at in self.checked if at in self.driven}
        kept = [one for one in self.named() if id(one) not in checked]
        behind = [self._behind(self.driven[at], kept) for at in self.checked if at in self.driven]
        known = [one for one in behind if one is not None]
        return Pruning(
            candidates=sum(self.holds),
            driven=len(self.named()),
            checked=len(behind),
            missed=sum(one < 0 for one in known),
            nearest=min(known, default=None),
            spread=self.line.spread,
        )

    def _behind(self, one: DrivenSet, kept: list[DrivenSet]) -> float | None:
        """How far it stays behind the best that costs no more."""
        best = min(
            (self.worth(other) for other in kept if _cost(other) <= _cost(one)),
            default=float("inf"),
        )
        worth = self.worth(one)
        return None if float("inf") in (worth, best) else worth - best


def ranked_by_runs(
    scenario: ScenarioData,
    text: str,
    quick: Callable[[ScenarioData], Any],
    progress: bool | Progress | None,
) -> DrivenRanking:
    """A ranking by what the text says; `quick` ranks a scenario by its quick speed."""
    mark = wanted_mark(scenario, text)
    ranking = quick(over_road(scenario, quick_road(scenario, mark)))
    return driven_rank(scenario, ranking, mark, progress)
