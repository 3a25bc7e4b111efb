"""How sure an answer is, as plots; each returns its axes."""

from __future__ import annotations

import textwrap
from typing import TYPE_CHECKING

from windwall.quantities.measures import PRESSURE, SPEED, TEMPERATURE
from windwall.report.plot_axes import (
    INK,
    describe,
    finish,
    human,
    instead,
    looks,
    new_axes,
    plain_title,
    title,
)
from windwall.report.wording.leans_on import set_name
from windwall.results.day import Forecast
from windwall.results.leans_on import Lean, LeansOn

if TYPE_CHECKING:
    from matplotlib.axes import Axes

__all__ = ["BESIDE_NAMES", "HALF", "LEAST_SHARE", "MOST_BARS", "NAME_WIDTH", "forecast", "leans_on"]

MOST_BARS = 10
NAME_WIDTH = 32
BESIDE_NAMES = 36  # width of a title over axes that leave room for names
HALF = 0.38  # of the place of one number, for each of its two bars
LEAST_SHARE = 0.01


def leans_on(found: LeansOn, of: str = "speed", ax: Axes | None = None) -> Axes:
    """Bars of what the `speed` leans on, or the `difference` of the two sets: the share of its
    variance of each number alone, and with everything that it does together with others.
    """
    leaning = {one.of: one for one in found.leanings}.get(of)
    if leaning is None:
        raise ValueError(f"nothing was asked about the {of}; there is {found.leanings[0].of}")
    heading = title(*_heading(found, of), BESIDE_NAMES)
    if not leaning.leans:
        return instead(ax, heading, found.sentence)
    ax = new_axes(ax)
    *own, rest = leaning.leans
    shown = [one for one in own if one.total >= LEAST_SHARE][:MOST_BARS]
    names = [textwrap.fill(one.title, NAME_WIDTH) for one in shown]
    if rest.addresses:
        shown, names = [*shown, rest], [*names, f"{len(rest.addresses)} others together"]
    _bars(shown, ax)
    ax.set_yticks(range(len(shown)), [plain_title(one, NAME_WIDTH) for one in names])
    ax.invert_yaxis()
    ax.set_xlim(left=0)
    describe(ax, found.sentence)
    return finish(ax, heading, "Share of the variance, %")


def _bars(shown: list[Lean], ax: Axes) -> None:
    """Alone, filled; with others, open and hatched; whiskers are one standard error."""
    kinds = (
        ("first", "alone", -HALF / 2, {"color": "0.55"}),
        ("total", "with others", HALF / 2, {"color": "white", "hatch": "///"}),
    )
    for key, label, shift, look in kinds:
        ax.barh(
            [at + shift for at in range(len(shown))],
            [100 * max(getattr(one, key), 0.0) for one in shown],
            HALF,
            xerr=[100 * getattr(one, f"{key}_error") for one in shown],
            error_kw={"linewidth": 0.9, "capsize": 2},
            edgecolor=INK,
            label=label,
            **look,
        )


def _heading(found: LeansOn, of: str) -> tuple[str, str]:
    if of == "speed":
        return "What the speed leans on", found.title
    first, second = map(set_name, found.pair)
    return f"What decides between {human(first)} and {human(second)}", ""


def forecast(found: Forecast, ax: Axes | None = None) -> Axes:
    """Speed over the air's temperature, a line for each pressure."""
    system = found.system
    heading = title("What the day does to the speed", found.title)
    if not (found.speed > 0).any():
        return instead(ax, heading, "On none of these days is there an answer.")
    ax = new_axes(ax)
    celsius = [TEMPERATURE.value(one, system) for one in found.temperatures]
    for (at, pressure), look in zip(enumerate(found.pressures), looks(), strict=False):
        label = f"barometer {PRESSURE.short(pressure, system)}"
        ax.plot(celsius, SPEED.values(found.speed[:, at], system), **look, label=label)
    ax.ticklabel_format(axis="y", useOffset=False)
    describe(ax, f"Speed over the temperature of the air, from {_ends(found, system)}.")
    x = f"Air temperature, {TEMPERATURE.shown(system)}"
    return finish(ax, heading, x, f"Speed, {SPEED.shown(system)}")


def _ends(found: Forecast, system: str) -> str:
    least, most = (SPEED.text(one, system) for one in (found.speed.min(), found.speed.max()))
    return f"{least} to {most}"
