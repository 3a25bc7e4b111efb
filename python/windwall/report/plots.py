"""Plots as textbooks draw them. Each returns the axes, and draws into `ax` where one is given.

Lines differ by style and marker as well as by colour, and every axis names its unit.
"""

from __future__ import annotations

import textwrap
from itertools import cycle
from typing import TYPE_CHECKING, Any

from windwall.quantities.measures import FORCE, KILOWATTS, LENGTH, SPEED, TIME, Measure
from windwall.report.plot_axes import LINE_STYLES, MARKERS, new_axes, plain_title
from windwall.report.sure_plots import forecast as forecast
from windwall.report.sure_plots import leans_on as leans_on
from windwall.report.wording.top_speed import limit_word
from windwall.results.drive import Drive
from windwall.results.ranking import MIDDLE, Ranking, UpgradeSet
from windwall.results.top_speed import TopSpeed
from windwall.results.views import frame
from windwall.scenario.data import ScenarioData
from windwall.study.solve import full_throttle_curve, top_speed

if TYPE_CHECKING:
    from matplotlib.axes import Axes

SMALLEST_BAR = 0.005  # in the unit shown; a smaller entry has no bar
MOST_LABELS = 9
LABEL_WIDTH = 40
MINUTES = Measure("time", "min")
LONG = 600  # s, from which a time axis counts minutes
# What is marked on a line of a drive, and how.
HAPPENED = {
    "clutch_grips": ("o", "clutch grips"),
    "shift_begins": ("v", "shift"),
    "ratio_begins": ("<", "variator leaves its lowest gearing"),
    "ratio_ends": (">", "variator at its highest gearing"),
    "rev_limit": ("x", "rev limit"),
    "tyres_spin": ("s", "tyres spin"),
    "line_full": ("^", "nozzle sprays"),
    "speed_lost": ("d", "speed lost"),
}


def force_against_speed(scenario: ScenarioData, ax: Axes | None = None, points: int = 30) -> Axes:
    """Thrust of every gear at full throttle, the road load crossing them, and the balance."""
    ax, system = new_axes(ax), scenario.system
    curve = frame(full_throttle_curve(scenario, points=points))
    several = curve["gear"].nunique() > 1
    styles = zip(cycle(LINE_STYLES), cycle(MARKERS), strict=False)
    for (gear, pulls), (line, marker) in zip(curve.groupby("gear"), styles, strict=False):
        ax.plot(
            SPEED.values(pulls["road/speed"], system),
            FORCE.values(pulls["road/thrust"], system),
            linestyle=line,
            marker=marker,
            markevery=max(1, points // 6),
            label=f"gear {gear}" if several else "thrust",
        )
    _road_load(curve, ax, system)
    _balance(scenario, ax)
    ax.set_xlabel(f"Speed over the ground, {SPEED.shown(system)}")
    ax.set_ylabel(f"Force at the road, {FORCE.shown(system)}")
    ax.set_title(plain_title(scenario.title))
    ax.set_xlim(left=0)
    ax.set_ylim(bottom=0)
    ax.legend()
    return ax


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


def _balance(scenario: ScenarioData, ax: Axes) -> None:
    best, system = top_speed(scenario), scenario.system
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
        label=f"{limit_word(best)}, {SPEED.text(best.speed, system, 4)}",
    )


def accounts(best: TopSpeed, ax: Axes | None = None) -> Axes:
    """Where the watts go at the balance speed: what the shaft gives, then what the fuel gives."""
    ax, system = new_axes(ax), best.scenario_info.system
    entries = [(f"shaft: {name}", power) for name, power in best.shaft.items()]
    entries += [(f"heat: {name}", power) for name, power in best.heat.items()]
    entries = [(name, KILOWATTS.value(power, system)) for name, power in entries]
    entries = [(name, power) for name, power in entries if abs(power) > SMALLEST_BAR]
    for kind, hatch, color in (("shaft", "", "0.75"), ("heat", "//", "0.9")):
        rows = [(at, power) for at, (name, power) in enumerate(entries) if name.startswith(kind)]
        places, powers = zip(*rows, strict=True)
        bars = ax.barh(places, powers, color=color, hatch=hatch, edgecolor="black", label=kind)
        ax.bar_label(bars, fmt="%.2f", padding=3, fontsize="small")
    ax.set_yticks(range(len(entries)), [name for name, _ in entries])
    ax.invert_yaxis()
    ax.margins(x=0.12)
    ax.set_xlabel(f"Power, {KILOWATTS.shown(system)}")
    ax.set_title(plain_title(best.scenario_info.title))
    return ax


def best_by_cost(ranking: Ranking, ax: Axes | None = None) -> Axes:
    """Every set that passes no limit, and the fastest for every budget as steps.

    A label says what is fitted and taken off since the label before.
    """
    ax, system = new_axes(ax), ranking.scenario_info.system
    sets = [one for one in ranking.sets if ranking.may_be_named(one)]
    speeds = [_speed(one, system) for one in sets]
    costs = [one.cost for one in sets]
    ax.plot(costs, speeds, ".", color="0.8", markersize=3, label="a set that passes no limit")
    best = ranking.best_by_cost
    ax.step(
        [one.cost for one in best],
        [_speed(one, system) for one in best],
        where="post",
        marker="o",
        markersize=4,
        color="black",
        label="fastest for the money",
    )
    _label_steps(best, ax, system)
    _goal(ranking, ax)
    ax.set_xlabel(f"Cost, {ranking.currency or 'none stated'}")
    ax.set_ylabel(f"Speed, {SPEED.shown(system)}")
    ax.set_title(plain_title(ranking.scenario_info.title))
    ax.legend(loc="lower right")
    return ax


def _label_steps(best: list[UpgradeSet], ax: Axes, system: str) -> None:
    """No more labels than can be told apart; above and left of the steps nothing else is drawn."""
    if not best:
        return
    apart = (_speed(best[-1], system) - _speed(best[0], system)) / MOST_LABELS
    before, height = frozenset(), -float("inf")
    for one in best:
        if _speed(one, system) < height + apart:
            continue
        now, height = frozenset(map(one.label, one.upgrades)), _speed(one, system)
        label = "\n".join(textwrap.wrap(_change(before, now, one), LABEL_WIDTH))
        right = one.cost > best[-1].cost / 3
        ax.annotate(
            label,
            (one.cost, height),
            textcoords="offset points",
            xytext=(-6, 2) if right else (6, -9),
            ha="right" if right else "left",
            fontsize="x-small",
        )
        before = now


def _change(before: frozenset[str], now: frozenset[str], one: UpgradeSet) -> str:
    fitted = [f"+{name}" for name in map(one.label, one.upgrades) if name not in before]
    return " ".join([*fitted, *(f"-{name}" for name in sorted(before - now))]) or one.name


def _speed(one: Any, system: str) -> float:
    return SPEED.value(one.speed[MIDDLE], system)


def _goal(ranking: Ranking, ax: Axes) -> None:
    goal = ranking.scenario_info.goal_speed
    if goal is not None:
        ax.axhline(
            SPEED.value(goal, ranking.scenario_info.system),
            linestyle=":",
            color="black",
            label="goal",
        )


def over_time(drive: Drive, address: str = "road/speed", ax: Axes | None = None) -> Axes:
    """A column of a drive over the whole outing, with what happened; a line where a leg begins."""
    ax = new_axes(ax)
    time = MINUTES if drive["time"][-1] > LONG else TIME
    x = time.values(drive["time"], drive.scenario_info.system)
    ax.plot(x, _shown(drive, address), color="black", linewidth=1)
    _events(drive, address, x, ax)
    for at in _places(drive, "leg_begins"):
        ax.axvline(x[at], color="0.8", linewidth=0.8, zorder=0)
    return _finish(drive, address, f"Time, {time.shown(drive.scenario_info.system)}", ax)


def over_distance(
    drive: Drive, address: str = "road/speed", run: int = 1, ax: Axes | None = None
) -> Axes:
    """A column of one run over the distance from where it set out, with what happened."""
    return runs_overlaid({f"run {run}": (drive, run)}, address, ax)


def runs_overlaid(
    runs: dict[str, tuple[Drive, int]], address: str = "road/speed", ax: Axes | None = None
) -> Axes:
    """The same column of several runs, each `{label: (drive, number of the run)}`, over distance:
    the first and the third of an afternoon, or one that sets out hot and one that sets out cold.
    """
    ax = new_axes(ax)
    for (label, (drive, run)), line in zip(runs.items(), cycle(LINE_STYLES), strict=False):
        its = drive.runs == run
        if not its.any():
            raise ValueError(f"there is no run {run} in {drive.outing.id!r}")
        x = LENGTH.values(drive["distance"] - drive["distance"][its][0], drive.scenario_info.system)
        ax.plot(x[its], _shown(drive, address)[its], line, color="black", label=label)
        _events(drive, address, x, ax, its)
    return _finish(drive, address, f"Distance, {LENGTH.shown(drive.scenario_info.system)}", ax)


def _shown(drive: Drive, address: str) -> Any:
    return drive.measure(address).values(drive[address], drive.scenario_info.system)


def _places(drive: Drive, what: str) -> list[int]:
    """The moments at which something happened."""
    import numpy as np

    times = [one.time for one in drive.happened if one.what == what]
    return [int(at) for at in np.searchsorted(drive["time"], times)]


def _events(drive: Drive, address: str, x: Any, ax: Axes, its: Any = None) -> None:
    """Marks of what happened, each word once in the legend."""
    known = set(ax.get_legend_handles_labels()[1])
    y = _shown(drive, address)
    for what, (marker, label) in HAPPENED.items():
        at = [place for place in _places(drive, what) if its is None or its[place]]
        if at:
            shown = None if label in known else label
            ax.plot(x[at], y[at], marker, color="black", markersize=4, label=shown)


def _finish(drive: Drive, address: str, along: str, ax: Axes) -> Axes:
    measure, system = drive.measure(address), drive.scenario_info.system
    ax.set_xlabel(along)
    ax.set_ylabel(f"{address.replace('/', ' ').replace('_', ' ')}, {measure.shown(system)}")
    ax.set_title(plain_title(drive.scenario_info.title))
    if ax.get_legend_handles_labels()[1]:
        ax.legend(fontsize="small")
    return ax
