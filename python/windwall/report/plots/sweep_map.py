"""A sweep as a map: speed over two inputs, with what is refused hatched."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from windwall.report.plot_axes import (
    FAMILY,
    INK,
    MARKER_SIZE,
    SIZE,
    describe,
    finish,
    instead,
    new_axes,
    plain_title,
)
from windwall.report.plot_legend import legend_below
from windwall.report.plots.swept import Axis, Swept, capital, edges, heading

if TYPE_CHECKING:
    import xarray
    from matplotlib.axes import Axes

__all__ = [
    "ALL_REFUSED", "DARK", "HATCHES", "LEGEND_WIDTH", "LIGHT", "NAMES", "NO_ANSWERS", "ONE_INPUT",
    "inside", "sweep_map",
]  # fmt: skip

ONE_INPUT = "A map has two inputs, each with several values; this sweep varies {number}."
NO_ANSWERS = "No variant of this sweep has an answer."
ALL_REFUSED = "Every variant of this sweep passes a limit or has no answer."
LIGHT, DARK = 0.97, 0.55  # of white, at the least and the greatest value
HATCHES = {"no answer": "xxx", "": "//"}
LEGEND_WIDTH = 60
NAMES = ("zero", "one", "two", "three", "four", "five")


def sweep_map(dataset: xarray.Dataset, of: str = "speed", ax: Axes | None = None) -> Axes:
    """The result over two inputs, the first to the right: darker is more, with lines of equal
    value, the greatest that is not refused marked, and what is refused hatched.
    """
    swept = Swept(dataset, of)
    said = heading(swept)
    if len(swept.dims) != 2:
        number = NAMES[len(swept.dims)] if len(swept.dims) < len(NAMES) else "more"
        return instead(ax, said, ONE_INPUT.format(number=number))
    if swept.unanswered.all():
        return instead(ax, said, NO_ANSWERS)
    ax = new_axes(ax)
    x, y = (swept.axis(dim) for dim in swept.dims)
    _shades(swept, x, y, ax)
    refused = _refused(swept, x, y, ax)
    best = _best(swept, x, y, ax)
    handles = [*best, *refused]
    if handles:
        legend_below(ax, handles)
    describe(ax, f"{capital(best[0].get_label())}." if best else ALL_REFUSED)
    return finish(ax, said, x.name, y.name, legend=False)


def _shades(swept: Swept, x: Axis, y: Axis, ax: Axes) -> None:
    from matplotlib.colors import LinearSegmentedColormap

    shades = LinearSegmentedColormap.from_list("greys", [str(LIGHT), str(DARK)])
    values = swept.values.T
    mesh = ax.pcolormesh(edges(x.values), edges(y.values), values, cmap=shades, rasterized=True)
    bar = ax.figure.colorbar(mesh, ax=ax, pad=0.02)
    bar.set_label(swept.name, fontsize=SIZE, family=FAMILY)
    bar.ax.tick_params(labelsize=SIZE)
    if swept.unanswered.sum() < values.size - 3:
        lines = ax.contour(x.values, y.values, values, colors=INK, linewidths=0.8, levels=6)
        _label(ax, lines)


def _label(ax: Axes, lines: Any) -> None:
    """Values on the lines, as many as lie clear of one another."""
    labels = ax.clabel(lines, fontsize=SIZE, inline=False)
    ax.figure.draw_without_rendering()  # so that it is known where they lie
    clear: list[Any] = []
    for label in labels:
        box = label.get_window_extent().padded(2)
        if any(box.overlaps(other) for other in clear) or not inside(box, ax):
            label.remove()
            continue
        label.set(family=FAMILY, bbox={"facecolor": "white", "edgecolor": "none", "pad": 0.5})
        clear.append(box)


def inside(box: Any, ax: Axes) -> bool:
    """Whether a box in pixels lies wholly on the axes."""
    return bool(ax.bbox.contains(box.x0, box.y0) and ax.bbox.contains(box.x1, box.y1))


def _refused(swept: Swept, x: Axis, y: Axis, ax: Axes) -> list[Any]:
    """Hatched cells, and what they stand for."""
    from matplotlib.patches import Patch, Rectangle

    across, up, handles = edges(x.values), edges(y.values), []
    for word, where in swept.refused():
        look: dict[str, Any] = {"facecolor": "none", "edgecolor": "0.25", "linewidth": 0.0}
        look["hatch"] = HATCHES.get(word, HATCHES[""])
        for row, column in zip(*where.nonzero(), strict=True):
            corner = across[row], up[column]
            size = across[row + 1] - across[row], up[column + 1] - up[column]
            ax.add_patch(Rectangle(corner, *size, **look))
        handles.append(Patch(**look, label=plain_title(word, LEGEND_WIDTH)))
    return handles


def _best(swept: Swept, x: Axis, y: Axis, ax: Axes) -> list[Any]:
    """The greatest value that is not refused."""
    import numpy as np

    values = swept.values.copy()
    for _, where in swept.refused():
        values[where] = np.nan
    if np.isnan(values).all():
        return []
    row, column = np.unravel_index(np.nanargmax(values), values.shape)
    unit = swept.measure.shown(swept.system)
    limits = "" if swept.passed is None else " that passes no limit"
    result = swept.name.partition(",")[0].lower()
    label = f"greatest {result}{limits}, {values[row, column]:.1f} {unit}"
    return ax.plot(
        x.values[row],
        y.values[column],
        "*",
        color=INK,
        markerfacecolor="white",
        markersize=3 * MARKER_SIZE,
        linestyle="none",
        label=label,
    )
