"""A small table under a picture, for which numbers in the picture are the keys."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from windwall.report.plot_axes import FAMILY, ONE_LINE, PALE, SIZE, plain_title

if TYPE_CHECKING:
    from matplotlib.axes import Axes

__all__ = ["BELOW", "COLUMNS", "GAP", "LEFT", "LETTER", "LINE", "table_under"]

LINE = 14.0  # points from row to row
BELOW = 42.0  # points from the axes to the first row, past ticks and the name of the axis
LEFT = -46.0  # points from the left end of the axes to where names begin
COLUMNS = 154.0  # points from the axes to where columns begin
LETTER, GAP = 5.6, 6.0  # points of a digit, and between columns


def table_under(ax: Axes, rows: Sequence[tuple[str, Sequence[str]]], further: float = 0.0) -> None:
    """Names on the left, then cells in columns as wide as the longest cell; the keys first, with a
    rule under them. It begins so many points further down.
    """
    top = -BELOW - further
    apart = LETTER * max(len(cell) for _, cells in rows for cell in cells) + GAP
    for at, (name, cells) in enumerate(rows):
        down, weight = top - at * LINE, "bold" if at == 0 else "normal"
        _word(ax, name, LEFT, down, ha="left", fontweight=weight)
        for column, cell in enumerate(cells):
            across = COLUMNS + (column + 0.5) * apart
            _word(ax, cell, across, down, ha="center", fontweight=weight)
    _rule(ax, top - LINE / 2, COLUMNS + apart * len(rows[0][1]))


def _word(ax: Axes, text: str, across: float, down: float, **look: str) -> None:
    """A word so many points right of and below the lower left corner of the axes."""
    if text:
        ax.annotate(
            plain_title(text, ONE_LINE),
            (0, 0),
            xycoords="axes fraction",
            xytext=(across, down),
            textcoords="offset points",
            va="center",
            fontsize=SIZE,
            family=FAMILY,
            **look,
        )


def _rule(ax: Axes, down: float, right: float) -> None:
    """A line between the keys and what they stand for."""
    from matplotlib.lines import Line2D
    from matplotlib.transforms import ScaledTranslation

    corner = ax.figure.dpi_scale_trans + ScaledTranslation(0, 0, ax.transAxes)
    ends = [LEFT / 72, right / 72], [down / 72] * 2
    ax.add_artist(Line2D(*ends, color=PALE, linewidth=0.8, transform=corner, clip_on=False))
