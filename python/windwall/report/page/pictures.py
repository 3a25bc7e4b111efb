"""Plots inside a page: as elements in the colours of the page, whatever light it is read in."""

from __future__ import annotations

import re
from collections.abc import Callable
from typing import TYPE_CHECKING

from windwall.report.plot_files import inline_svg

if TYPE_CHECKING:
    from matplotlib.axes import Axes

__all__ = ["NAMED", "TONES", "WIDTH", "picture"]

WIDTH = 4.5  # inches, as a column of the page: type is as large as drawn, and on paper 7 points
# What plots are drawn in, by what the style of the page calls it.
TONES = {
    "#000000": "currentColor",
    "#ffffff": "var(--ground)",
    "#1f4e8c": "var(--blue)",
    "#595959": "var(--strong)",
    "#c7c7c7": "var(--weak)",
    "#e0e0e0": "var(--band)",
    "#808080": "var(--middle)",
}
NAMED = re.compile("|".join(TONES), re.IGNORECASE)


def picture(name: str, draw: Callable[[Axes], Axes], height: float, under: str = "") -> str:
    """The plot that is drawn into new axes, inches high, as an element. It says what it is without
    the name of the vehicle, which leads the page, and nothing where it stands under the same words.
    """
    import matplotlib.pyplot as plt

    axes = draw(plt.subplots(figsize=(WIDTH, height), layout="constrained")[1])
    heading = axes.get_title().partition("\n")[0]
    axes.title.set_text(heading)
    axes.title.set_visible(heading != under)
    drawn = inline_svg(axes, name)
    plt.close(axes.figure)
    return NAMED.sub(lambda found: TONES[found[0].lower()], drawn)
