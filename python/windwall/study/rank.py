"""Ranks the menu: which upgrade, or which set of them, buys the most speed."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any, overload

from windwall import _core
from windwall.errors import Problem, ScenarioError, whole_letters
from windwall.quantities.si import is_foreign
from windwall.results.driven_ranking import DrivenRanking
from windwall.results.ranking import Ranking
from windwall.scenario.arguments import listed
from windwall.scenario.data import ScenarioData, a_scenario
from windwall.scenario.info import scenario_info
from windwall.study.carry_out import means_of
from windwall.study.driven_rank import ranked_by_runs
from windwall.study.executors import Executor
from windwall.study.journal import JournalLike
from windwall.study.menu_pieces import solved_sets
from windwall.study.progress import Progress, listener

__all__ = ["NO_BUDGET", "Heard", "Ids", "Sum", "money", "rank"]

NO_BUDGET = "none"  # asked for in place of that of the file

Sum = str | float | None
Ids = Iterable[str] | None
Heard = bool | Progress | None


@overload
def rank(
    scenario: ScenarioData, budget: Sum = None, upgrades: Ids = None, progress: Heard = None,
    threads: int = 0, by: None = None, executor: Executor = None, journal: JournalLike = None,
) -> Ranking: ...  # fmt: skip


@overload
def rank(
    scenario: ScenarioData, budget: Sum = None, upgrades: Ids = None, progress: Heard = None,
    threads: int = 0, *, by: str, executor: Executor = None, journal: JournalLike = None,
) -> DrivenRanking: ...  # fmt: skip


def rank(
    scenario: ScenarioData,
    budget: Sum = None,
    upgrades: Ids = None,
    progress: Heard = None,
    threads: int = 0,
    by: str | None = None,
    executor: Executor = None,
    journal: JournalLike = None,
) -> Ranking | DrivenRanking:
    """Ranks the menu: every upgrade alone, last and by its fair share; best set for every budget.

    `budget` is a text such as `"500 EUR"` or a number in the currency of the file; it goes before
    the file's own `goal/budget`, and `"none"` asks for none at all. `progress` is
    True or False for a bar, by default one in front of a person only, or a callable of
    `(done, total)` that may return False to stop. Ctrl-C stops it too.

    `by` ranks sets by a run that is driven, with launch, shifts and what warms up: "driven_speed",
    "time over 1600 m", "time to 100 km/h", or the file's own "goal". Driven are those that could
    be the best for their price; the answer says how many were not. Raises `ScenarioError` where
    the budget or an upgrade is not understood.

    `executor` and `journal` are those of `windwall.sweep`: they solve and keep sets, of which the
    ranking is then made here. A ranking by runs keeps those of the road that it drives on.

    >>> ranking = ww.rank(car, upgrades=["small_pulley", "hard_tyres"], progress=False)
    >>> bool(ranking.table.loc["small_pulley", "alone_middle"] > 1)  # m/s
    True
    """
    scenario = a_scenario(scenario, "rank")
    if by is not None:

        def quick(over: ScenarioData) -> Ranking:
            means = {"executor": executor, "journal": journal}
            return rank(over, budget, upgrades, progress, threads, **means)

        return ranked_by_runs(scenario, by, quick, progress)
    amount = money(scenario, budget)
    chosen = None if upgrades is None else _known(scenario, upgrades)
    with (
        listener(progress, "ranking", "speed") as callback,
        means_of(scenario, executor, journal, threads) as means,
    ):
        if means is None:
            numbers = _core.rank(scenario.core, amount, chosen, threads, callback)
        else:
            solved = solved_sets(scenario, chosen, means, callback)
            packed: Any = solved  # bytes, of which the core takes no text
            numbers = _core.rank(scenario.core, amount, chosen, threads, None, packed)
    of_file = budget is None and amount is not None
    terms = {"currency": scenario.currency, "budget": amount, "budget_of_file": of_file}
    return Ranking(numbers, scenario_info(scenario), scenario.upgrades, terms)


def _known(scenario: ScenarioData, ids: Iterable[str]) -> list[str]:
    menu = scenario.upgrades
    ids = listed("upgrades", ids, '["cooler"]')
    unknown = [
        Problem("upgrades", 0, 0, f"no upgrade is called {name!r}; there are {', '.join(menu)}")
        for name in ids
        if name not in menu
    ]
    if unknown:
        raise ScenarioError(unknown)
    return ids


def money(scenario: ScenarioData, budget: Any) -> float | None:
    """A budget as a number in the currency of the file, by default its own; raises where it is not
    understood.
    """
    if budget is None:
        own: float | None = scenario.get("goal/budget")
        return own
    if isinstance(budget, str) and budget.strip() == NO_BUDGET:
        return None
    if isinstance(budget, str):
        return scenario.core.money(whole_letters(budget))
    if is_foreign(budget) or isinstance(budget, bool) or budget < 0:
        raise ValueError(f'a budget is a sum of money such as "500 EUR", not {budget!r}')
    return float(budget)
