"""Plots as textbooks draw them. Each returns the axes, and draws into `ax` where one is given.

Lines differ by style and marker as well as by colour, and every axis names its unit.
"""

from __future__ import annotations

from itertools import cycle
from typing import TYPE_CHECKING, Any

from windwall.measures import FORCE, KILOWATTS, SPEED
from windwall.ranking import MIDDLE, Ranking

if TYPE_CHECKING:
    from matplotlib.axes import Axes

    from windwall.scenario import Scenario
    from windwall.top_speed import TopSpeed

LINE_STYLES = ("-", "--", "-.", ":")
MARKERS = ("o", "s", "^", "D", "v", "P", "X", "*")
HATCHES = ("", "//", "\\\\", "..")


def _axes(ax: Axes | None) -> Axes:
    if ax is not None:
        return ax
    import matplotlib.pyplot as plt

    return plt.subplots(layout="constrained")[1]


def force_against_speed(scenario: Scenario, ax: Axes | None = None, points: int = 30) -> Axes:
    """Thrust of every gear at full throttle, the road load crossing them, and the balance."""
    ax, system = _axes(ax), scenario.system
    curve = scenario.full_throttle_curve(points=points)
    styles = zip(cycle(LINE_STYLES), cycle(MARKERS), strict=False)
    for (gear, pulls), (line, marker) in zip(curve.groupby("gear"), styles, strict=False):
        ax.plot(
            SPEED.values(pulls["road/speed"], system),
            FORCE.values(pulls["road/thrust"], system),
            linestyle=line,
            marker=marker,
            markevery=max(1, points // 6),
            label=f"gear {gear}",
        )
    _road_load(curve, ax, system)
    _balance(scenario, ax)
    ax.set_xlabel(f"Speed over the ground, {SPEED.shown(system)}")
    ax.set_ylabel(f"Force at the road, {FORCE.shown(system)}")
    ax.set_title(_title(scenario.title))
    ax.set_xlim(left=0)
    ax.set_ylim(bottom=0)
    ax.legend()
    return ax


def _title(text: str) -> str:
    """A title from a file, with nothing in it that would be read as a formula."""
    return text.replace("$", r"\$")


def _road_load(curve: Any, ax: Axes, system: str) -> None:
    load = curve.dropna(subset=["road/air"]).sort_values("road/speed")
    force = load["road/air"] + load["road/rolling"] + load["road/grade"]
    ax.plot(
        SPEED.values(load["road/speed"], system),
        FORCE.values(force, system),
        color="black",
        linewidth=2.5,
        label="road load",
    )


def _balance(scenario: Scenario, ax: Axes) -> None:
    best, system = scenario.top_speed(), scenario.system
    if not best.answered:
        return
    ax.plot(
        SPEED.value(best.speed, system),
        FORCE.value(best.point.road.thrust, system),
        linestyle="none",
        marker="o",
        markersize=11,
        markerfacecolor="none",
        color="black",
        label=f"{best.limited_by.replace('_', ' ')}, {SPEED.text(best.speed, system, 4)}",
    )


def accounts(best: TopSpeed, ax: Axes | None = None) -> Axes:
    """Where the watts go at the balance speed: one bar for the shaft, one for the heat."""
    ax, system = _axes(ax), best._asked.system
    for row, series in enumerate((best.heat, best.shaft)):
        _stack(ax, row, series.iloc[1:], system)
    ax.set_yticks([0, 1], ["heat", "shaft"])
    ax.set_xlabel(f"Power, {KILOWATTS.shown(system)}")
    ax.set_title(_title(best._asked.title))
    ax.legend(bbox_to_anchor=(0.5, -0.2), loc="upper center", ncols=4, fontsize="small")
    return ax


def _stack(ax: Axes, row: int, entries: Any, system: str) -> None:
    """What is given goes to the right of zero, what is taken back to the left."""
    right = left = 0.0
    for at, (name, watts) in enumerate(entries.items()):
        width = KILOWATTS.value(watts, system)
        start = right if width >= 0 else left
        hatch = HATCHES[at // 10 % len(HATCHES)] if row == 0 else HATCHES[(at // 10 + 1) % 4]
        label = f"{('heat', 'shaft')[row]}: {name}"
        ax.barh(row, width, left=start, hatch=hatch, edgecolor="black", label=label)
        right, left = (right + width, left) if width >= 0 else (right, left + width)


def best_by_cost(ranking: Ranking, ax: Axes | None = None) -> Axes:
    """Every recommended set, and the fastest for every budget as steps."""
    ax, system = _axes(ax), ranking._asked.system
    sets = [one for one in ranking.sets if one.recommended]
    cost = [one.cost for one in sets]
    ax.plot(
        cost,
        [_speed(one, system) for one in sets],
        "x",
        color="grey",
        label="a set that passes no limit",
    )
    best = ranking.best_by_cost
    ax.step(
        [one.cost for one in best],
        [_speed(one, system) for one in best],
        where="post",
        marker="o",
        color="black",
        label="fastest for the money",
    )
    for one in best:
        place = (one.cost, _speed(one, system))
        ax.annotate(one.name, place, textcoords="offset points", xytext=(6, -10), fontsize="small")
    _goal(ranking, ax)
    ax.set_xlabel(f"Cost, {ranking.currency or 'none stated'}")
    ax.set_ylabel(f"Speed, {SPEED.shown(system)}")
    ax.set_title(_title(ranking._asked.title))
    ax.legend()
    return ax


def _speed(one: Any, system: str) -> float:
    return SPEED.value(one.speed[MIDDLE], system)


def _goal(ranking: Ranking, ax: Axes) -> None:
    goal = ranking._asked.goal_speed
    if goal is not None:
        ax.axhline(
            SPEED.value(goal, ranking._asked.system), linestyle=":", color="black", label="goal"
        )
