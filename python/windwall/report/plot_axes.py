"""What every plot needs: axes, lines that are told apart without colour, a title from a file."""

from __future__ import annotations

import textwrap
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from matplotlib.axes import Axes

TITLE_WIDTH = 48
LINE_STYLES = ("-", "--", "-.", ":")
MARKERS = ("o", "s", "^", "D", "v", "P", "X", "*")


def new_axes(ax: Axes | None) -> Axes:
    """Those that were handed over, or new ones."""
    if ax is not None:
        return ax
    import matplotlib.pyplot as plt

    return plt.subplots(layout="constrained")[1]


def plain_title(text: str, width: int = TITLE_WIDTH) -> str:
    """A title from a file, with nothing in it that would be read as a formula."""
    return "\n".join(textwrap.wrap(text.replace("$", r"\$"), width))
