"""The charge from station to station: its pressure and its temperature."""

from __future__ import annotations

import textwrap
from typing import TYPE_CHECKING, Any, NamedTuple

from windwall.quantities.measures import PRESSURE, TEMPERATURE, Measure
from windwall.report.frames import station_rows
from windwall.report.plot_axes import (
    BLUE,
    INK,
    MARKER_SIZE,
    describe,
    finish,
    human,
    instead,
    new_axes,
    note,
    title,
)
from windwall.report.plot_legend import GAP, LETTER, POINTS
from windwall.results.outcome import Outcome
from windwall.results.record import Record

if TYPE_CHECKING:
    from matplotlib.axes import Axes

__all__ = ["BEHIND", "BELOW", "FINE", "HEADING", "LOWER", "NAME_WIDTH", "UPPER", "Half", "stations"]

HEADING = "The charge, station by station"
NAME_WIDTH = 11
BEHIND = "behind "
BELOW = "Behind each part"
FINE = 25.0  # in the unit shown; below it, as pounds per square inch are, two decimals count


class Half(NamedTuple):
    """What is drawn in one half of the picture, and how."""

    name: str
    key: str
    measure: Measure
    least: float  # SI, that the line is at least drawn over: less would look like much
    room: tuple[float, float]  # below the lowest and above it, in heights of the line
    look: dict[str, Any]


UPPER = Half(
    "Pressure (above)",
    "pressure",
    PRESSURE,
    10e3,
    (1.9, 1.4),
    {"linestyle": "-", "marker": "o", "color": INK},
)
LOWER = Half(
    "Temperature (below)",
    "temperature",
    TEMPERATURE,
    10.0,
    (0.3, 3.0),
    {"linestyle": "--", "marker": "s", "color": BLUE},
)


def stations(answer: Outcome, ax: Axes | None = None) -> Axes:
    """Pressure above and temperature below, in front of the first part and behind each part."""
    info = answer.scenario_info
    heading = title(HEADING, info)
    if not answer.answered:
        return instead(ax, heading, answer.sentence)
    rows = station_rows(answer.point)
    ax = new_axes(ax)
    other = ax.twinx()
    for axes, half in ((ax, UPPER), (other, LOWER)):
        _strip(axes, rows, half, info.system)
    _ticks(ax, [human(name).removeprefix(BEHIND) for name, _ in rows])
    ax.set_xlim(-0.4, len(rows) - 0.6)
    describe(ax, _told(rows, info.system))
    finish(other, "", y=f"{LOWER.name}, {LOWER.measure.shown(info.system)}", legend=False)
    other.spines["right"].set_visible(True)
    return finish(
        ax, heading, BELOW, f"{UPPER.name}, {UPPER.measure.shown(info.system)}", legend=False
    )


def _strip(ax: Axes, rows: list[tuple[str, Record]], half: Half, system: str) -> None:
    """One line in its half of the picture, its numbers beside its marks, ticks in that half."""
    from matplotlib.ticker import MaxNLocator

    values = [half.measure.value(gas[half.key], system) for _, gas in rows]
    ax.plot(range(len(rows)), values, **half.look, markersize=MARKER_SIZE + 1)
    least, most = min(values), max(values)
    spread = max(most - least, half.measure.spread.value(half.least, system))
    low, high = half.room
    ax.set_ylim(least - low * spread, least + high * spread)
    around = [(least + most - 1.4 * spread) / 2, (least + most + 1.4 * spread) / 2]
    ticks = MaxNLocator(4).tick_values(*around)
    ax.set_yticks([one for one in ticks if around[0] <= one <= around[1]])
    decimals = 2 if most < FINE else 1
    for at, value in enumerate(values):
        note(
            ax,
            f"{value:.{decimals}f}",
            (at, value),
            xytext=(0, 6),
            textcoords="offset points",
            ha="center",
        )


def _ticks(ax: Axes, names: list[str]) -> None:
    """The parts, upright where they stand side by side."""
    wrapped = [textwrap.fill(one, NAME_WIDTH) for one in names]
    longest = max(len(line) for one in wrapped for line in one.split("\n"))
    room = ax.bbox.width / ax.figure.dpi * POINTS / len(names)
    if LETTER * longest + GAP <= room:
        ax.set_xticks(range(len(names)), wrapped)
    else:
        ax.set_xticks(range(len(names)), names, rotation=35, ha="right", rotation_mode="anchor")


def _told(rows: list[tuple[str, Record]], system: str) -> str:
    def gas(of: Measure, value: float) -> str:
        return of.short(value, system, 3)

    said = [
        f"{human(name)} {gas(PRESSURE, at.pressure)} and {gas(TEMPERATURE, at.temperature)}"
        for name, at in rows
    ]
    return f"{'; '.join(said)}."
