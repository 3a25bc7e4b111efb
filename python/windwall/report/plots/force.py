"""Force against speed: what every gear gives, what the road takes, and where they meet."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from windwall.quantities.measures import FORCE, SPEED
from windwall.report.plot_axes import (
    FAR,
    INK,
    MARKER_SIZE,
    ROOM,
    describe,
    finish,
    instead,
    looks,
    new_axes,
    title,
)
from windwall.report.wording.top_speed import limit_word
from windwall.results.top_speed import TopSpeed
from windwall.results.views import frame
from windwall.scenario.data import ScenarioData
from windwall.study.solve import full_throttle_curve, top_speed

if TYPE_CHECKING:
    from matplotlib.axes import Axes

__all__ = ["FINER", "HEADING", "NEAR", "force_against_speed"]

HEADING = "Force against speed"
NEAR = 1.03  # of the speed reached, to the end of the axis where no line goes further
FINER = 4  # points of a vehicle whose one gearing goes through all speeds


def force_against_speed(scenario: ScenarioData, ax: Axes | None = None, points: int = 30) -> Axes:
    """Thrust of every gear at full throttle, the road load crossing them, and the balance."""
    system, heading, best = scenario.system, title(HEADING, scenario.name), top_speed(scenario)
    if best.scenario_info.gears == 1:
        points *= FINER
    curve = frame(full_throttle_curve(scenario, points=points)).dropna(subset=["road/thrust"])
    curve = curve[curve["road/speed"] <= _end(curve, best)]
    if curve.empty:
        return instead(ax, heading, best.sentence)
    ax = new_axes(ax)
    several = curve["gear"].nunique() > 1
    for (gear, pulls), look in zip(curve.groupby("gear"), looks(), strict=False):
        ax.plot(
            SPEED.values(pulls["road/speed"], system),
            FORCE.values(pulls["road/thrust"], system),
            **look,
            markevery=max(1, len(pulls) // 6),
            label=f"gear {gear}" if several else "thrust",
        )
    _road_load(curve, ax, system)
    _balance(best, ax)
    ax.set_xlim(0, SPEED.value(_end(curve, best), system))
    ax.set_ylim(0, ROOM * FORCE.value(_top(curve), system))
    describe(ax, f"Thrust of every gear and what the road takes, over speed. {best.sentence}")
    return finish(
        ax,
        heading,
        f"Speed over the ground, {SPEED.shown(system)}",
        f"Force at the road, {FORCE.shown(system)}",
    )


def _road_load(curve: Any, ax: Axes, system: str) -> None:
    load = curve.dropna(subset=["road/air"]).sort_values("road/speed")
    ax.plot(
        SPEED.values(load["road/speed"], system),
        FORCE.values(_load(load), system),
        color=INK,
        linewidth=2.5,
        label="road load",
    )


def _balance(best: TopSpeed, ax: Axes) -> None:
    system = best.scenario_info.system
    if not best.answered:
        return
    ax.plot(
        SPEED.value(best.speed, system),
        FORCE.value(best.point.road.thrust, system),
        linestyle="none",
        marker="o",
        markersize=2.5 * MARKER_SIZE,
        markerfacecolor="none",
        color=INK,
        label=f"{SPEED.text(best.speed, system, 4)}, by {limit_word(best)}",
    )


def _top(curve: Any) -> float:
    """What is shown upwards, N: all thrust, and where the road takes more, that it does."""
    return max(float(curve["road/thrust"].max()), float(_load(curve).min()))


def _load(curve: Any) -> Any:
    return curve["road/air"] + curve["road/rolling"] + curve["road/grade"]


def _end(curve: Any, best: TopSpeed) -> float:
    """Where the vehicle can be, m/s, and a little further to see how the lines leave each other, or
    at least the whole mark of the balance.
    """
    end = float(curve["road/speed"].max())
    return min(max(end, NEAR * best.speed), FAR * best.speed) if best.answered else end
