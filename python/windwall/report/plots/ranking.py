"""What every upgrade is worth alone: at three knock anchors, and to which ± it is known."""

from __future__ import annotations

import textwrap
from math import isfinite
from typing import TYPE_CHECKING

from windwall.quantities.measures import SPEED
from windwall.report.plot_axes import (
    INK,
    MARKER_SIZE,
    ONE_LINE,
    PALE,
    describe,
    finish,
    instead,
    new_axes,
    plain_title,
    title,
)
from windwall.report.plots.menu import no_base, upgrade_title
from windwall.results.drawn import DrawnRanking, Spread
from windwall.results.ranking import MIDDLE, Ranking, UpgradeGain

if TYPE_CHECKING:
    from matplotlib.axes import Axes

__all__ = [
    "ANCHOR_MARKS", "HEADING", "NAME_WIDTH", "NO_GAINS", "NO_MENU", "REFUSED", "TITLE_WIDTH",
    "by_gain", "gains", "lines",
]  # fmt: skip

HEADING = "What each upgrade adds alone"
NO_MENU = "The file names no upgrades, so there is nothing to rank."
NO_GAINS = "No upgrade has a gain that can be drawn."
NAME_WIDTH = 34
TITLE_WIDTH = 42  # letters above the axes, beside which names have their room
ANCHOR_MARKS = (("<", "white", "lower"), ("o", INK, "as stated"), (">", "white", "upper"))
REFUSED = "x"


def gains(
    ranking: Ranking,
    drawn: DrawnRanking | None = None,
    ax: Axes | None = None,
    *,
    most: int | None = None,
) -> Axes:
    """Gain in speed of every upgrade that can be paid for, the greatest above, at the lower, the
    stated and the upper knock anchor; with a drawn ranking of the same menu, one standard
    deviation over its worlds as a bar. No more than the first so many, if `most` is stated.
    """
    heading = title(HEADING, ranking.scenario_info, TITLE_WIDTH)
    if not ranking.answered:
        return instead(ax, heading, no_base(ranking))
    shown = by_gain(ranking)[:most]
    if not shown:
        return instead(ax, heading, NO_GAINS if ranking.upgrades else NO_MENU)
    system = ranking.scenario_info.system
    names = [_name(one, ranking) for one in shown]
    every = sum(name.count("\n") + 1.4 for name in names) + heading.count("\n")
    ax = new_axes(ax, height=1.3 + 0.19 * every)
    spreads = [drawn.gain(one.id).alone if drawn else None for one in shown]
    _spreads(spreads, ax, system)
    _anchors(shown, ranking, ax)
    _over_limits(shown, ranking, ax)
    ax.axvline(0, color=INK, linewidth=0.8, zorder=0)
    ax.set_yticks(range(len(shown)), names)
    ax.set_ylim(len(shown) - 0.4, -0.6)
    describe(ax, _told(shown, ranking))
    return finish(ax, heading, f"Gain in speed, {SPEED.shown(system)}")


def lines(ranking: Ranking, most: int | None = None) -> float:
    """How many lines of type the rows need, all of one height, so that no name touches another."""
    names = [_name(one, ranking) for one in by_gain(ranking)[:most]]
    longest = max((name.count("\n") + 1 for name in names), default=0)
    return len(names) * max(longest, 1.4)


def by_gain(ranking: Ranking) -> list[UpgradeGain]:
    """The upgrades that can be paid for and have a gain, the greatest first."""
    every = ranking.within_budget.values()
    shown = [one for one in every if any(map(isfinite, one.alone))]
    return sorted(shown, key=lambda one: -one.alone[MIDDLE])


def _name(one: UpgradeGain, ranking: Ranking) -> str:
    name = plain_title(upgrade_title(one.label, ranking), ONE_LINE)
    return textwrap.fill(name, NAME_WIDTH)


def _spreads(spreads: list[Spread | None], ax: Axes, system: str) -> None:
    known = [(at, one) for at, one in enumerate(spreads) if one]
    if known:
        ax.barh(
            [at for at, _ in known],
            [SPEED.value(2 * one.sigma, system) for _, one in known],
            0.5,
            left=[SPEED.value(one.mean - one.sigma, system) for _, one in known],
            color=PALE,
            edgecolor="none",
            label="mean ± one standard deviation",
        )


def _anchors(shown: list[UpgradeGain], ranking: Ranking, ax: Axes) -> None:
    """The three on a thin line; the octane numbers in the legend."""
    system = ranking.scenario_info.system
    for at, one in enumerate(shown):
        known = [SPEED.value(gain, system) for gain in one.alone if isfinite(gain)]
        ax.plot([min(known), max(known)], [at, at], color=INK, linewidth=0.8)
    looks = zip(ANCHOR_MARKS, ranking.knock_anchors, strict=True)
    for view, ((marker, fill, word), octane) in enumerate(looks):
        ax.plot(
            [SPEED.value(one.alone[view], system) for one in shown],
            range(len(shown)),
            marker,
            color=INK,
            markerfacecolor=fill,
            markersize=MARKER_SIZE + 1,
            label=f"knock anchor {word}, {octane:.0f}",
        )


def _over_limits(shown: list[UpgradeGain], ranking: Ranking, ax: Axes) -> None:
    """A cross behind those that pass a limit when they are fitted alone."""
    system = ranking.scenario_info.system
    crossed = [
        (SPEED.value(max(filter(isfinite, one.alone)), system), at)
        for at, one in enumerate(shown)
        if (first := ranking.alone_with(one.id)) and first.passed
    ]
    if crossed:
        ax.plot(
            *zip(*crossed, strict=True),
            REFUSED,
            color=INK,
            markersize=MARKER_SIZE + 3,
            markeredgewidth=1.2,
            label="passes a limit",
        )


def _told(shown: list[UpgradeGain], ranking: Ranking) -> str:
    system = ranking.scenario_info.system
    said = [
        f"{upgrade_title(one.label, ranking)} {SPEED.change(one.alone[MIDDLE], system)}"
        for one in shown
    ]
    return f"Gains alone in {SPEED.shown(system)}: {'; '.join(said)}."
