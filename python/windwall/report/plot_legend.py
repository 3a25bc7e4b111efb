"""What is what, under the picture, where nothing drawn can lie, whatever the vehicle does."""

from __future__ import annotations

from math import ceil
from typing import TYPE_CHECKING, Any

import numpy as np

if TYPE_CHECKING:
    from matplotlib.axes import Axes

__all__ = ["DOWN", "FAMILY", "GAP", "LETTER", "LINE", "POINTS", "SAMPLE", "SIZE", "legend_below"]

SIZE = 9  # points, of all type
FAMILY = "DejaVu Sans"  # which matplotlib brings along
DOWN = 34.0  # points from the axes, past ticks and the name of the axis
LINE = 14.0  # points from row to row
GAP = 6.0  # points, to what follows
LETTER, SAMPLE = 5.2, 36.0  # points of a letter, and of what is drawn before a name
POINTS = 72.0  # of an inch


def legend_below(ax: Axes, handles: list[Any] | None = None) -> float:
    """Names what is drawn, or these handles, in as many columns as fit; the points it takes."""
    found = ax.get_legend_handles_labels()
    drawn, names = (handles, [one.get_label() for one in handles]) if handles else found
    if not names:
        return 0.0
    columns = _columns(ax, names)
    ax.legend(
        drawn,
        names,
        loc="upper center",
        bbox_to_anchor=(0.5, 0.0),
        bbox_transform=_below(ax),
        ncols=columns,
        prop={"size": SIZE, "family": FAMILY},
        frameon=False,
        borderaxespad=0.0,
        columnspacing=1.2,
    )
    lines = max(name.count("\n") + 1 for name in names)
    return LINE * lines * ceil(len(names) / columns) + GAP


def _columns(ax: Axes, names: list[str]) -> int:
    """As many as stand side by side under the axes, each as wide as its longest line."""
    room = ax.bbox.width / ax.figure.dpi * POINTS
    letters = [max(map(len, name.split("\n"))) for name in names]
    for columns in range(len(names), 1, -1):
        wide = (max(part) for part in np.array_split(letters, columns))
        if sum(LETTER * one + SAMPLE for one in wide) <= room:
            return columns
    return 1


def _below(ax: Axes) -> Any:
    """The axes moved down, so that its lower end is where a legend begins."""
    from matplotlib.transforms import ScaledTranslation

    return ax.transAxes + ScaledTranslation(0.0, -DOWN / POINTS, ax.figure.dpi_scale_trans)
