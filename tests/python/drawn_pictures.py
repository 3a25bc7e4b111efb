"""What is really on a picture: every text that is drawn, where it lies, and which lies on which."""

from itertools import combinations
from typing import Any, NamedTuple

import matplotlib as mpl
from matplotlib.text import Text

mpl.use("Agg")

TOUCH = 1.0  # pixels, by which boxes may meet: a box is wider than its letters


class Written(NamedTuple):
    """Something that is written on a picture."""

    words: str
    box: Any  # pixels
    size: float  # points


def drawn_texts(figure):
    """Everything that is written when the figure is drawn."""
    found, draw = [], Text.draw

    def spy(self, renderer, *rest, **further):
        draw(self, renderer, *rest, **further)
        if self.get_visible() and self.get_text().strip():
            found.append(self)

    figure.canvas.draw()  # the layout settles
    Text.draw = spy
    try:
        figure.canvas.draw()
    finally:
        Text.draw = draw
    return [
        Written(one.get_text(), one.get_window_extent(), one.get_fontsize())
        for one in dict.fromkeys(found)
    ]


def cut(texts, page):
    """The texts that do not lie wholly on the page."""
    return [
        one.words
        for one in texts
        if one.box.x0 < page.x0 - TOUCH
        or one.box.y0 < page.y0 - TOUCH
        or one.box.x1 > page.x1 + TOUCH
        or one.box.y1 > page.y1 + TOUCH
    ]


def overlapping(texts):
    """Pairs of texts of which one lies on the other."""
    return [
        (one.words, other.words)
        for one, other in combinations(texts, 2)
        if min(one.box.x1, other.box.x1) - max(one.box.x0, other.box.x0) > TOUCH
        and min(one.box.y1, other.box.y1) - max(one.box.y0, other.box.y0) > TOUCH
    ]


def under_a_legend(figure):
    """The axes on which a legend lies, where it might lie on what is drawn."""
    legends = [one.get_legend().get_window_extent() for one in figure.axes if one.get_legend()]
    return [one for one in figure.axes if one.bbox.count_overlaps(legends)]


def looks(axes):
    """How each named line is drawn, without its colour."""
    return {
        line.get_label(): (
            line.get_linestyle(),
            line.get_marker(),
            line.get_markerfacecolor() == "none",
            line.get_linewidth() > 2,
        )
        for one in axes.figure.axes
        for line in one.get_lines()
        if not line.get_label().startswith("_")
    }
