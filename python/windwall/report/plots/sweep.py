"""A sweep as a curve: speed over one input, a line for each value of another."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from windwall.report.plot_axes import (
    BEYOND,
    INK,
    MARKER_SIZE,
    REFUSED,
    describe,
    finish,
    instead,
    looks,
    new_axes,
    plain_title,
)
from windwall.report.plots.swept import NO_ANSWER, Axis, Swept, edges, heading

if TYPE_CHECKING:
    import xarray
    from matplotlib.axes import Axes

__all__ = ["LEGEND_WIDTH", "MOST_LINES", "NO_ANSWERS", "TOO_MANY_LINES", "sweep_curve"]

MOST_LINES = 8
LEGEND_WIDTH = 34
TOO_MANY_LINES = (
    "A curve has one input, or two of which one has no more than {most} values; this sweep has "
    "{shape}. Two inputs with many values each are a map."
)
NO_ANSWERS = "No variant of this sweep has an answer."


def sweep_curve(dataset: xarray.Dataset, of: str = "speed", ax: Axes | None = None) -> Axes:
    """The result of a sweep over its input, or over the longer of two with a line for each value
    of the other. Where there is no answer it is hatched one way, and where a limit is passed, as
    `with_limits` found it, the other way.
    """
    swept = Swept(dataset, of)
    swept.dims = dims = sorted(swept.dims, key=lambda dim: -dataset.sizes[dim])
    said = heading(swept)
    if len(dims) > 2 or (len(dims) == 2 and dataset.sizes[dims[1]] > MOST_LINES):
        shape = " by ".join(str(dataset.sizes[dim]) for dim in dims)
        return instead(ax, said, TOO_MANY_LINES.format(most=MOST_LINES, shape=shape))
    if swept.unanswered.all():
        return instead(ax, said, NO_ANSWERS)
    ax, x = new_axes(ax), swept.axis(dims[0])
    ax.set_xlim(*edges(x.values)[[0, -1]])
    (_one_line if len(dims) == 1 else _several)(swept, x, ax)
    describe(ax, _told(swept, x))
    ax.ticklabel_format(axis="y", useOffset=False)
    return finish(ax, said, x.name, swept.name)


def _one_line(swept: Swept, x: Axis, ax: Axes) -> None:
    """The line, and what is refused as hatched columns."""
    ax.plot(x.values, swept.values, color=INK, marker="o", markersize=MARKER_SIZE)
    cells = edges(x.values)
    for word, where in swept.refused():
        look = REFUSED if word == NO_ANSWER else BEYOND
        label: str | None = plain_title(word, LEGEND_WIDTH)
        for begins, ends in _runs(where):
            ax.axvspan(cells[begins], cells[ends], **look, label=label)
            label = None


def _runs(where: Any) -> list[tuple[int, int]]:
    """Places from which to which, without the last, something holds."""
    found, begins = [], None
    for at, holds in enumerate([*where, False]):
        if holds and begins is None:
            begins = at
        elif not holds and begins is not None:
            found.append((begins, at))
            begins = None
    return found


def _several(swept: Swept, x: Axis, ax: Axes) -> None:
    """A line for each value of the other input; where one ends there is no answer."""
    other, values = swept.axis(swept.dims[1]), swept.values
    for at, look in zip(range(len(other.values)), looks(), strict=False):
        ax.plot(
            x.values,
            values[:, at],
            **look,
            label=f"{other.short} {other.values[at]:.4g} {other.unit}".rstrip(),
        )
    ax.margins(y=0.08)
    marks = {NO_ANSWER: ("x", "a line ends: no answer"), "": ("o", "")}
    for word, where in swept.refused():
        if word == NO_ANSWER:
            continue
        marker, label = marks[""][0], plain_title(word, LEGEND_WIDTH)
        ax.plot(
            (x.values[:, None] + 0 * values)[where],
            values[where],
            marker,
            color=INK,
            markerfacecolor="none",
            markersize=2.2 * MARKER_SIZE,
            label=label,
        )
    if swept.unanswered.any():
        ax.plot([], [], linestyle="none", label=marks[NO_ANSWER][1])


def _told(swept: Swept, x: Axis) -> str:
    import numpy as np

    values = swept.values
    at = np.unravel_index(np.nanargmax(values), values.shape)
    greatest = f"{values[at]:.4g} {swept.measure.shown(swept.system)}"
    where = f"{x.short} {x.values[at[0]]:.4g} {x.unit}".rstrip()
    return f"{swept.name.partition(',')[0]} is greatest, {greatest}, at {where}."
