"""Where the watts go, as two waterfalls: the shaft's down to the road, and the fuel's heat."""

from __future__ import annotations

from collections.abc import Iterable
from typing import TYPE_CHECKING, Any, NamedTuple

from windwall.quantities.measures import KILOWATTS
from windwall.report.plot_axes import (
    INK,
    describe,
    finish,
    human,
    instead,
    new_axes,
    note,
    title,
)
from windwall.report.wording.names import name
from windwall.results.entry import Use
from windwall.results.top_speed import TopSpeed

if TYPE_CHECKING:
    from matplotlib.axes import Axes

__all__ = [
    "ENGINE_USES", "GAP", "HEADING", "LOOKS", "NOTHING", "NO_ENTRY", "ROAD_USES", "SMALLEST",
    "TOGETHER", "Step", "accounts", "bars",
]  # fmt: skip

HEADING = "Where the watts go"
SMALLEST = 0.01  # of the total; smaller entries share one bar
NOTHING = 1e-4  # of the total; what is less has none
NO_ENTRY = "in no entry"
TOGETHER = "{number} smaller ones"
GAP = 1.0  # rows between the two
ENGINE_USES = ("rubbing", "pumping", "accessories", "belt", "shaft", "crank_slowing")
ROAD_USES = ("rolling", "air", "grade", "acceleration")
LOOKS: dict[str, dict[str, Any]] = {
    "total": {"facecolor": "0.35", "edgecolor": INK},
    "takes": {"facecolor": "0.78", "edgecolor": INK},
    "gives": {"facecolor": "white", "edgecolor": INK, "hatch": "///"},
}


class Step(NamedTuple):
    """One bar: what it is, where it begins and ends as shares of the total, watts, its look."""

    name: str
    begins: float
    ends: float
    power: float
    look: str


def accounts(best: TopSpeed, ax: Axes | None = None) -> Axes:
    """What the pistons give, flowing down to the road, and where the heat of the fuel goes, both
    as shares of their total at the balance speed.
    """
    heading = title(HEADING, best.scenario_info)
    if not best.answered:
        return instead(ax, heading, best.sentence)
    shaft, heat = _shaft(best), _heat(best)
    ax = new_axes(ax, height=1.4 + 0.21 * (len(shaft) + len(heat)))
    names, places = [], []
    for steps, first in ((shaft, 0.0), (heat, len(shaft) + GAP)):
        _draw(steps, first, ax, best.scenario_info.system)
        names += [step.name for step in steps]
        places += [first + at for at in range(len(steps))]
    ax.set_yticks(places, names)
    ax.set_ylim(places[-1] + 0.7, -0.7)
    ax.set_xlim(0, 128)
    ax.set_xticks(range(0, 101, 20))
    describe(ax, f"{_told(shaft)} {_told(heat)}")
    return finish(ax, heading, "Share of what the pistons give, and of the heat of the fuel, %")


def bars(best: TopSpeed) -> int:
    """How many bars it takes."""
    return len(_shaft(best)) + len(_heat(best)) if best.answered else 0


def _shaft(best: TopSpeed) -> list[Step]:
    """From the pistons to the crank, to the road, to nothing left."""
    first, *uses = best.account("shaft").entries
    parts = (
        [one for one in uses if one.use in ENGINE_USES],
        [one for one in uses if one.use not in ENGINE_USES + ROAD_USES],
        [one for one in uses if one.use in ROAD_USES],
    )
    return _waterfall("pistons give", first.number or 0.0, parts, ("crank gives", "road gets"))


def _heat(best: TopSpeed) -> list[Step]:
    """From the fuel, what is most first, to what reaches the road."""
    first, road, *uses = best.account("heat").entries
    lost = sorted(uses, key=lambda one: -abs(one.number or 0.0))
    return _waterfall("fuel holds", first.number or 0.0, (lost, [road]), ())


def _waterfall(
    given: str, total: float, parts: Iterable[list[Use]], left: Iterable[str]
) -> list[Step]:
    """Bars of which each begins where the one before ended; after a part what is left then."""
    steps, level, left = [Step(given, 0.0, 1.0, total, "total")], 1.0, iter(left)
    for uses in parts:
        for label, power in _together(uses, total):
            ends = level - power / total
            steps.append(Step(label, level, ends, power, "takes" if power >= 0 else "gives"))
            level = ends
        if rest := next(left, None):
            steps.append(Step(rest, 0.0, level, level * total, "total"))
    if abs(level) >= SMALLEST:
        steps.append(Step(NO_ENTRY, level, 0.0, level * total, "gives"))
    return steps


def _together(uses: list[Use], total: float) -> list[tuple[str, float]]:
    """Names and watts; several that are too small for a bar of their own are one together."""
    named = [(human(name(one)), one.number or 0.0) for one in uses]
    there = [(label, power) for label, power in named if abs(power) >= NOTHING * total]
    small = [one for one in there if abs(one[1]) < SMALLEST * total]
    if len(small) < 2:
        return there
    large = [one for one in there if one not in small]
    return [*large, (TOGETHER.format(number=len(small)), sum(power for _, power in small))]


def _draw(steps: list[Step], first: float, ax: Axes, system: str) -> None:
    for at, step in enumerate(steps):
        place, width = first + at, 100 * (step.ends - step.begins)
        ax.barh(place, width, 0.72, left=100 * step.begins, **LOOKS[step.look], linewidth=0.7)
        if at + 1 < len(steps):
            down = 100 * step.ends
            ax.plot([down, down], [place, place + 1], color=INK, linewidth=0.6, zorder=0)
        share = 100 * step.power / steps[0].power
        text = f"{KILOWATTS.text(step.power, system, 3)}, {share:.{0 if share > 99.95 else 1}f} %"
        edge = 100 * max(step.begins, step.ends)
        note(ax, text, (edge, place), xytext=(4, 0), textcoords="offset points", va="center")


def _told(steps: list[Step]) -> str:
    total = steps[0].power
    shares = [f"{step.name} {100 * step.power / total:.0f} %" for step in steps[1:]]
    return f"Of what the {steps[0].name}: {', '.join(shares)}."
