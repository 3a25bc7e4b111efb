"""Speed for money: the fastest set for every budget, its steps numbered and told in a table."""

from __future__ import annotations

import textwrap
from typing import TYPE_CHECKING, Any

from windwall.quantities.measures import SPEED
from windwall.report.plot_axes import (
    FAMILY,
    INK,
    MARKER_SIZE,
    PALE,
    SIZE,
    describe,
    finish,
    instead,
    new_axes,
    title,
)
from windwall.report.plot_legend import legend_below
from windwall.report.plot_table import table_under
from windwall.report.plots.menu import no_base, upgrade_title
from windwall.report.wording.sets import sum_of_money
from windwall.results.ranking import MIDDLE, Ranking, UpgradeSet

if TYPE_CHECKING:
    from matplotlib.axes import Axes

__all__ = [
    "FITTED", "HEADING", "MANY", "MOST_KEYS", "NAME_WIDTH", "NO_MENU", "NO_SETS", "best_by_cost",
    "keyed_sets",
]  # fmt: skip

HEADING = "Speed for the money"
NO_SETS = "No set of upgrades has an answer and passes no limit, so nothing can be bought."
NO_MENU = "The file names no upgrades, so there is nothing to buy."
MOST_KEYS = 8
NAME_WIDTH = 44  # letters, for which the table leaves room
MANY = 500  # dots, from which a file holds them as a picture
FITTED = "\N{BLACK CIRCLE}"


def best_by_cost(ranking: Ranking, ax: Axes | None = None, *, table: bool = True) -> Axes:
    """Every set that passes no limit, and the fastest for every budget as steps. The numbers at
    the steps are the columns of a table under the picture: what each costs, how fast it is, and
    what is fitted. Without the `table` they are keys to what stands beside the picture.
    """
    heading = title(HEADING, ranking.scenario_info)
    if not ranking.answered:
        return instead(ax, heading, no_base(ranking))
    if not ranking.upgrades:
        return instead(ax, heading, NO_MENU)
    best = ranking.best_by_cost
    if not best:
        return instead(ax, heading, NO_SETS)
    keyed = keyed_sets(ranking)
    rows = _table(keyed, ranking) if table else []
    ax = new_axes(ax, height=4.0 + 0.2 * len(rows))
    _clouds(ranking, ax)
    _steps(best, keyed, ranking, ax)
    _goal(ranking, ax)
    below = legend_below(ax)
    if table:
        table_under(ax, rows, below)
    describe(ax, _told(keyed, ranking))
    system = ranking.scenario_info.system
    cost = f"Cost, {ranking.currency}" if ranking.currency else "Cost; the file states none"
    return finish(ax, heading, cost, f"Speed, {SPEED.shown(system)}", legend=False)


def _speed(one: UpgradeSet, ranking: Ranking) -> float:
    return SPEED.value(one.speed[MIDDLE], ranking.scenario_info.system)


def _clouds(ranking: Ranking, ax: Axes) -> None:
    sets = [one for one in ranking.sets if ranking.may_be_named(one)]
    costs, speeds = [one.cost for one in sets], [_speed(one, ranking) for one in sets]
    drawn: dict[str, Any] = {"color": PALE, "markersize": 2.5, "rasterized": len(sets) > MANY}
    ax.plot(costs, speeds, "o", label="a set that passes no limit", **drawn)


def _steps(best: list[UpgradeSet], keyed: list[UpgradeSet], ranking: Ranking, ax: Axes) -> None:
    costs, speeds = [one.cost for one in best], [_speed(one, ranking) for one in best]
    ax.step(
        costs,
        speeds,
        where="post",
        marker="o",
        markersize=MARKER_SIZE,
        color=INK,
        label="fastest for the money",
    )
    for number, one in enumerate(keyed, 1):
        ax.annotate(
            str(number),
            (one.cost, _speed(one, ranking)),
            xytext=(-4, 3),
            textcoords="offset points",
            ha="right",
            va="bottom",
            fontsize=SIZE,
            family=FAMILY,
            fontweight="bold",
        )
    ax.margins(y=0.14)


def keyed_sets(ranking: Ranking) -> list[UpgradeSet]:
    """The fastest for every budget that have a number in the picture, in its order: no more than
    can be told apart, the first, the last, and steps of some height between.
    """
    best = ranking.best_by_cost
    if not best:
        return []
    apart = (_speed(best[-1], ranking) - _speed(best[0], ranking)) / MOST_KEYS
    kept = [best[0]]
    for one in best[1:]:
        if _speed(one, ranking) >= _speed(kept[-1], ranking) + apart:
            kept.append(one)
    if kept[-1] is not best[-1]:
        kept = [*kept[: MOST_KEYS - 1], best[-1]]
    return kept


def _table(keyed: list[UpgradeSet], ranking: Ranking) -> list[tuple[str, list[str]]]:
    """The keys, cost and speed, and a row for whatever is fitted in any of them."""
    system, currency = ranking.scenario_info.system, ranking.currency
    labels = [frozenset(map(one.label, one.upgrades)) for one in keyed]
    order = {key: at for at, key in enumerate(ranking.menu)}
    fitted = sorted(
        frozenset().union(*labels), key=lambda one: (order[one.partition(": ")[0]], one)
    )
    rows = [
        ("", [str(number) for number in range(1, len(keyed) + 1)]),
        (f"cost, {currency}".rstrip(", "), [f"{one.cost:.0f}" for one in keyed]),
        (f"speed, {SPEED.shown(system)}", [f"{_speed(one, ranking):.1f}" for one in keyed]),
    ]
    for label in fitted:
        first, *more = textwrap.wrap(upgrade_title(label, ranking), NAME_WIDTH)
        rows.append((first, [FITTED if label in one else "" for one in labels]))
        rows += [(line, []) for line in more]
    return rows


def _goal(ranking: Ranking, ax: Axes) -> None:
    goal = ranking.scenario_info.goal_speed
    if goal is not None:
        ax.axhline(
            SPEED.value(goal, ranking.scenario_info.system),
            linestyle=":",
            color=INK,
            label="goal",
        )


def _told(keyed: list[UpgradeSet], ranking: Ranking) -> str:
    system = ranking.scenario_info.system
    said = [
        f"for {sum_of_money(one.cost, ranking.currency)} {_speed(one, ranking):.1f} "
        f"{SPEED.shown(system)}"
        for one in keyed
    ]
    return f"The fastest set for the money: {', '.join(said)}."
