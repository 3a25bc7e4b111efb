"""The knock margin over engine speed: the middle of a band, never a promise."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from windwall.quantities.measures import ENGINE_SPEED
from windwall.report.plot_axes import (
    BAND,
    BEYOND,
    BLUE,
    FAMILY,
    INK,
    MARKER_SIZE,
    SIZE,
    describe,
    finish,
    instead,
    new_axes,
    note,
    one_size,
    title,
)
from windwall.report.wording.knock import of_a_hundred
from windwall.results.knock import KnockBand
from windwall.results.views import frame
from windwall.scenario.data import ScenarioData
from windwall.study.solve import full_throttle_curve, top_speed

if TYPE_CHECKING:
    from matplotlib.axes import Axes

__all__ = [
    "BEST_SPARK", "CHANCES", "HEADING", "MARKS", "NOTHING_KNOWN", "SAME", "knock_over_engine_speed",
]  # fmt: skip

HEADING = "Knock margin at full throttle"
NOTHING_KNOWN = "A torque curve says nothing of knock."
BEST_SPARK = "knock/margin_at_best_spark"
SAME = 0.05  # octane numbers, below what can be seen
MARKS: dict[str, Any] = {"markevery": 5, "markersize": MARKER_SIZE}
CHANCES = (95, 80, 50, 20, 5)  # of a hundred engines, marked on the right


def knock_over_engine_speed(
    scenario: ScenarioData, ax: Axes | None = None, points: int = 40
) -> Axes:
    """Octane numbers to spare of detonation in the gear of the top speed, with the band to which
    they are known, and what the spark of best torque would leave.
    """
    heading = title(HEADING, scenario.name)
    if not scenario.has_knock_anchor:
        return instead(ax, heading, NOTHING_KNOWN)
    best = top_speed(scenario)
    gear = best.gear if best.answered else None
    curve = frame(full_throttle_curve(scenario, gear, points)).dropna(subset=["knock/margin"])
    if curve.empty:
        return instead(ax, heading, best.sentence)
    if gear is None:
        curve = curve[curve["gear"] == curve["gear"].max()]
    ax = new_axes(ax)
    _band(curve, scenario.knock_sigma, ENGINE_SPEED.values(curve["engine/speed"], "metric"), ax)
    _chances(scenario.knock_sigma, ax)
    describe(ax, _told(curve, scenario.knock_sigma))
    where = f" in gear {gear}" if gear and best.scenario_info.gears > 1 else ""
    x = f"Engine speed{where}, {ENGINE_SPEED.shown(scenario.system)}"
    return finish(ax, heading, x, "Octane numbers to spare")


def _band(curve: Any, sigma: float, speed: Any, ax: Axes) -> None:
    margin = curve["knock/margin"]
    ax.fill_between(speed, margin - sigma, margin + sigma, **BAND, label=f"known to ± {sigma:.1f}")
    ax.plot(speed, margin, color=INK, linestyle="-", marker="o", **MARKS, label="as it runs")
    lowest = (margin - sigma).min()
    if BEST_SPARK in curve and (margin - curve[BEST_SPARK]).max() > SAME:
        best = curve[BEST_SPARK]
        lowest = min(lowest, best.min())
        ax.plot(
            speed,
            best,
            color=BLUE,
            linestyle="--",
            marker="s",
            **MARKS,
            label="spark of best torque",
        )
    bottom, top = min(lowest, -sigma) - 1, (margin + sigma).max() + 0.35 * sigma
    ax.set_xlim(speed.min(), speed.max())
    ax.set_ylim(bottom, top)
    ax.axhspan(bottom, 0, **BEYOND)
    ax.axhline(0, color=INK, linewidth=1)
    note(
        ax,
        "detonation likely",
        (1, 0),
        xycoords=("axes fraction", "data"),
        xytext=(-6, -6),
        textcoords="offset points",
        ha="right",
        va="top",
    )


def _chances(sigma: float, ax: Axes) -> None:
    """On the right how many of a hundred such engines would knock, where the middle lies there."""
    low, high = ax.get_ylim()
    margins = {chance: -sigma * _normal(chance / 100) for chance in CHANCES}
    inside = {chance: at for chance, at in margins.items() if low <= at <= high}
    other = ax.secondary_yaxis("right")
    other.set_yticks(list(inside.values()), [str(chance) for chance in inside])
    other.set_ylabel("Of 100 engines would knock", fontsize=SIZE, family=FAMILY)
    other.tick_params(labelsize=SIZE)
    one_size(ax)


def _normal(share: float) -> float:
    """So many standard deviations below which this share of a normal distribution lies."""
    from statistics import NormalDist

    return NormalDist().inv_cdf(share)


def _told(curve: Any, sigma: float) -> str:
    at = curve["knock/margin"].idxmin()
    least = KnockBand(float(curve["knock/margin"][at]), sigma)
    speed = ENGINE_SPEED.text(curve["engine/speed"][at], "metric", 4)
    return (
        f"The least knock margin is {least.margin:+z.1f} octane numbers at {speed}, known to +/- "
        f"{sigma:.1f}: of 100 engines described like this about {of_a_hundred(least.chance)} "
        "would knock."
    )
