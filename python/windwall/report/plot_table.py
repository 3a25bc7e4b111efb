"""A small table under a picture, for which numbers in the picture are the keys."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from windwall.report.plot_axes import FAMILY, PALE, SIZE

if TYPE_CHECKING:
    from matplotlib.axes import Axes

LINE = 14.0  # points from row to row
BELOW = 42.0  # points from the axes to the first row, past ticks and the name of the axis
LEFT = -34.0  # points from the axes to where names begin


def table_under(
    ax: Axes, rows: Sequence[tuple[str, Sequence[str]]], first: float, apart: float
) -> None:
    """Names on the left, then cells in columns of a width; the first row is the keys.

    `first` and `apart` are points from the left end of the axes to the middle of the first column
    and from there to the next.
    """
    for at, (name, cells) in enumerate(rows):
        down = -BELOW - at * LINE
        _word(ax, name, LEFT, down, "left", bold=at == 0)
        for column, cell in enumerate(cells):
            _word(ax, cell, first + column * apart, down, "center", bold=at == 0)
    bottom = -BELOW - LINE / 2
    ax.annotate(
        "",
        (0, 0),
        xycoords="axes fraction",
        xytext=(LEFT, bottom),
        textcoords="offset points",
    )
    _rule(ax, bottom, first + apart * (len(rows[0][1]) - 0.5))


def _word(ax: Axes, text: str, across: float, down: float, side: str, bold: bool) -> None:
    ax.annotate(
        text,
        (0, 0),
        xycoords="axes fraction",
        xytext=(across, down),
        textcoords="offset points",
        ha=side,
        va="center",
        fontsize=SIZE,
        family=FAMILY,
        fontweight="bold" if bold else "normal",
    )


def _rule(ax: Axes, down: float, right: float) -> None:
    """A line between the keys and what they stand for."""
    from matplotlib.lines import Line2D
    from matplotlib.transforms import ScaledTranslation

    inch = ax.figure.dpi_scale_trans
    corner = ScaledTranslation(0, 0, ax.transAxes)
    across = [LEFT / 72, right / 72]
    ax.add_artist(
        Line2D(
            across,
            [down / 72] * 2,
            color=PALE,
            linewidth=0.8,
            transform=inch + corner,
            clip_on=False,
        )
    )
