"""A ranking over common draws: how sure each gain is, each set, and the choice between them."""

from __future__ import annotations

from collections.abc import Iterable

import numpy as np

from windwall.results.drawn import Beats, DrawnGain, DrawnRanking, DrawnSet, Spread, share
from windwall.results.ranking import Ranking, set_name
from windwall.scenario.data import ScenarioData
from windwall.study.carry_out import means_of
from windwall.study.contenders import ANSWERED, FIRST, could_win, within_reach
from windwall.study.drawn_sets import DrawnSets, Ids
from windwall.study.draws import FEWEST, SEED, checked_count, drawn_values, for_chances
from windwall.study.executors import Executor
from windwall.study.journal import JournalLike
from windwall.study.prior import Prior
from windwall.study.progress import Progress, listener
from windwall.study.set_shares import MOST, share_weights
from windwall.study.worlds import Array

__all__ = ["AS_IT_IS", "Drawn", "NamedSets", "draw_ranking", "within"]

AS_IT_IS: Ids = frozenset()


def draw_ranking(
    scenario: ScenarioData,
    ranking: Ranking,
    count: int = FEWEST,
    seed: int = SEED,
    progress: bool | Progress | None = None,
    threads: int = 0,
    executor: Executor = None,
    journal: JournalLike = None,
) -> DrawnRanking:
    """The gains and the sets of a ranking in the same worlds, all of them within its budget. Ctrl-C
    keeps the worlds that are done, and the sets that were left by then. `executor` and `journal`
    are those of a sweep.
    """
    named, near = NamedSets(ranking), within_reach(ranking)
    values = drawn_values(Prior(scenario), for_chances(checked_count(count)), seed)
    with (
        means_of(scenario, executor, journal, threads) as means,
        listener(progress, "drawing", "world") as heard,
    ):
        sets = DrawnSets(scenario, values, threads, means)
        # First, so that whoever stops while sets are sorted out has the gains in some worlds.
        whole = sets.solve(named.sets, min(FIRST, count), heard)
        winners, whole = (
            could_win(near, ranking.smallest_lead, sets, count, heard) if whole else ([], False)
        )
        everything = [*named.sets, *winners]
        whole = whole and sets.solve(everything, count, heard)
        worlds = min(count, *map(sets.solved, everything))
        drawn = Drawn(scenario, ranking, named, sets, winners, worlds)
        if whole:
            sets.solve(drawn.weighed(), len(values), heard)
    return drawn.told(count, seed, len(near))


def within(budget: float | None, cost: float, sigma: float) -> float | None:
    """The chance that a sum known to so much is no more than a budget."""
    if budget is None:
        return None
    if sigma == 0:
        return float(cost <= budget)
    from scipy.special import ndtr

    return float(ndtr((budget - cost) / sigma))


class NamedSets:
    """The sets that gains are made of, and those that a ranking names."""

    def __init__(self, ranking: Ranking) -> None:
        self.costs = {members: one.cost for members, one in ranking.by_members.items()}
        self.allowed = self.costs.keys()
        self.alone = {
            one: (need, need - {one})
            for one in ranking.within_budget
            if (need := ranking.with_required(one)) in self.allowed
        }
        self.target = None if ranking.target is None else frozenset(ranking.target.upgrades)
        self.last = dict(self._last(ranking)) if self.target else {}
        named = [ranking.fastest, ranking.cheapest_to_goal, *ranking.best_by_cost]
        by_name = [frozenset(one.upgrades) for one in named if one is not None]
        self.weights = self._weights()
        self.sets: list[Ids] = list(
            dict.fromkeys(
                [AS_IT_IS, *by_name, *([self.target] if self.target is not None else [])]
                + [one for pair in [*self.alone.values(), *self.last.values()] for one in pair]
                + [one for weights in self.weights.values() for one in weights]
            )
        )

    def _last(self, ranking: Ranking) -> Iterable[tuple[str, tuple[Ids, Ids]]]:
        """The target, and what is left of it without an upgrade and all that requires it."""
        for one in self.target or ():
            left = frozenset(
                other for other in self.target or () if one not in ranking.with_required(other)
            )
            if left in self.allowed:
                yield one, (self.target, left)

    def _weights(self) -> dict[str, dict[Ids, float]]:
        if not self.target or len(self.target) > MOST:
            return {}
        return share_weights(self.target, self.allowed.__contains__) or {}


class Drawn:
    """Speeds that were drawn, as they are read."""

    def __init__(
        self,
        scenario: ScenarioData,
        ranking: Ranking,
        named: NamedSets,
        sets: DrawnSets,
        winners: list[Ids],
        worlds: int,
    ) -> None:
        self.scenario, self.ranking, self.named = scenario, ranking, named
        self.sets, self.winners, self.worlds = sets, winners, worlds
        self.goal = scenario.get("goal/speed")

    def weighed(self) -> list[Ids]:
        """The sets whose chances are told in sentences, which deserve more worlds."""
        fastest = self._fastest()
        chosen = [AS_IT_IS, fastest, self._recommended(fastest), self._other(fastest)]
        pairs = [self.named.alone[one] for one in self._first_gains()]
        known = [one for one in chosen if one is not None]
        return list(dict.fromkeys([*known, *(one for pair in pairs for one in pair)]))

    def told(self, count: int, seed: int, near: int) -> DrawnRanking:
        fastest = self._fastest()
        recommended = self._recommended(fastest)
        gains = tuple(self._gain(one) for one in self.ranking.within_budget)
        shown = list(dict.fromkeys([*self.named.sets, *self.winners]))
        best = self._best_of_each_world()
        return DrawnRanking(
            system=self.scenario.system,
            currency=self.scenario.currency,
            asked=count,
            worlds=self.worlds,
            seed=seed,
            goal_speed=self.goal,
            told_apart=self.ranking.smallest_lead,
            gains=gains,
            sets=self._sets(shown, best),
            by_gain=self._by_gain(),
            by_speed=self._by_speed(fastest),
            fastest=self._ordered(fastest),
            recommended=self._ordered(recommended),
            regret=self._regret(recommended, best),
            could_win=near,
            drawn_whole=len(self.winners),
            ends=dict(self.sets.ends),
        )

    def speed(self, one: Ids) -> Array:
        return self.sets.speed(one, self.worlds)

    def _lead(self, one: Ids, other: Ids) -> Array:
        """Over all worlds in which both are known, which a chance is counted over."""
        worlds = min(self.sets.solved(one), self.sets.solved(other))
        return self.sets.speed(one, worlds) - self.sets.speed(other, worlds)

    def _mean(self, one: Ids) -> float:
        """m/s; of a set that has no answer in too many worlds nothing is believed."""
        spread = Spread.of(self.speed(one))
        believed = spread is not None and spread.worlds >= ANSWERED * self.worlds
        return spread.mean if believed else -np.inf

    def _ordered(self, one: Ids | None) -> tuple[str, ...] | None:
        """A set in the order of the menu."""
        return None if one is None else tuple(key for key in self.ranking.upgrades if key in one)

    def _fastest(self) -> Ids | None:
        return max(self.winners, key=self._mean, default=None)

    def _recommended(self, fastest: Ids | None) -> Ids | None:
        """The cheapest set that cannot be told from the fastest in the mean; of equals the
        faster.
        """
        if fastest is None:
            return None
        unseen = self.ranking.smallest_lead
        alike = [one for one in self.winners if self._mean(fastest) - self._mean(one) <= unseen]
        return min(alike, key=lambda one: (self.named.costs[one], -self._mean(one)))

    def _gain(self, one: str) -> DrawnGain:
        named = self.named
        alone = self._difference(named.alone.get(one))
        weights = named.weights.get(one)
        part = None if weights is None else sum(w * self.speed(s) for s, w in weights.items())
        known = alone[np.isfinite(alone)]
        return DrawnGain(
            one,
            Spread.of(alone),
            Spread.of(self._difference(named.last.get(one))),
            None if part is None else Spread.of(part),
            share(known > 0),
        )

    def _difference(self, pair: tuple[Ids, Ids] | None) -> Array:
        if pair is None:
            return np.full(self.worlds, np.nan)
        return self.speed(pair[0]) - self.speed(pair[1])

    def _sets(self, shown: list[Ids], best: Array) -> tuple[DrawnSet, ...]:
        base, *others = shown
        others.sort(key=lambda one: -self._mean(one))
        return tuple(self._set(one, best) for one in (base, *others))

    def _set(self, one: Ids, best: Array) -> DrawnSet:
        speed = self.speed(one)
        whole = self.sets.speed(one, self.sets.solved(one))
        known = whole[np.isfinite(whole)]
        cost, sigma = self.named.costs[one], self._cost_sigma(one)
        return DrawnSet(
            self._ordered(one) or (),
            cost,
            sigma,
            within(self.ranking.budget, cost, sigma),
            Spread.of(speed),
            None if self.goal is None else share(known >= self.goal),
            len(known),
            Spread.of(best - speed),
        )

    def _cost_sigma(self, one: Ids) -> float:
        """What is bought from different people errs apart, and apart from every speed."""
        return float(np.hypot.reduce([self.ranking.menu[key].cost_sigma or 0.0 for key in one]))

    def _best_of_each_world(self) -> Array:
        if not self.winners:
            return np.full(self.worlds, np.nan)
        table = self.sets.table(self.winners, self.worlds)
        return np.where(np.isfinite(table), table, -np.inf).max(axis=1, initial=-np.inf)

    def _regret(self, recommended: Ids | None, best: Array) -> float | None:
        if recommended is None:
            return None
        spread = Spread.of(best - self.speed(recommended))
        return None if spread is None else spread.mean

    def _first_gains(self) -> list[str]:
        """The two upgrades that gain most alone, as far as there are two."""
        alone = {one: Spread.of(self._difference(pair)) for one, pair in self.named.alone.items()}
        known = {one: spread.mean for one, spread in alone.items() if spread}
        return sorted(known, key=lambda one: -known[one])[:2]

    def _by_gain(self) -> Beats | None:
        order = self._first_gains()
        if len(order) < 2:
            return None
        gains = [self._lead(*self.named.alone[one]) for one in order]
        worlds = min(map(len, gains))
        return self._beats(*order, gains[0][:worlds] - gains[1][:worlds])

    def _other(self, fastest: Ids | None) -> Ids | None:
        """What the fastest is held against: the recommended set, or the next where they are one."""
        recommended = self._recommended(fastest)
        if recommended != fastest:
            return recommended
        return max((one for one in self.winners if one != fastest), key=self._mean, default=None)

    def _by_speed(self, fastest: Ids | None) -> Beats | None:
        other = self._other(fastest)
        if fastest is None or other is None:
            return None
        names = (set_name(self._ordered(one) or ()) for one in (fastest, other))
        return self._beats(*names, self._lead(fastest, other))

    @staticmethod
    def _beats(first: str, second: str, lead: Array) -> Beats | None:
        known = lead[np.isfinite(lead)]
        return Beats(first, second, float((known > 0).mean()), len(known)) if len(known) else None
