"""Plots inside a page: as elements in the colours of the page, whatever light it is read in."""

from __future__ import annotations

import re
from collections.abc import Callable
from typing import TYPE_CHECKING

from windwall.report.plot_files import inline_svg

if TYPE_CHECKING:
    from matplotlib.axes import Axes

__all__ = ["NAMED", "TONES", "WIDTH", "picture", "whole"]

WIDTH = 5.6  # inches: type of one size then reads on a page in two columns as on a phone
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


def picture(name: str, draw: Callable[[Axes], Axes], height: float) -> str:
    """The plot that is drawn into new axes, inches high, as an element."""
    import matplotlib.pyplot as plt

    ax = plt.subplots(figsize=(WIDTH, height), layout="constrained")[1]
    return _element(name, draw(ax))


def whole(name: str, axes: Axes) -> str:
    """A plot that has made its own figure."""
    return _element(name, axes)


def _element(name: str, axes: Axes) -> str:
    import matplotlib.pyplot as plt

    drawn = inline_svg(axes, name)
    plt.close(axes.figure)
    return NAMED.sub(lambda found: TONES[found[0].lower()], drawn)
