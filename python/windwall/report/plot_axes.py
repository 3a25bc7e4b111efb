"""The one style of every plot: sizes, lines told apart without colour, hatches, titles and words.

Nothing here knows what is drawn. Colours differ in lightness too, so that a print in grey keeps
them apart, and no line relies on its colour alone.
"""

from __future__ import annotations

import textwrap
from collections.abc import Iterator
from itertools import cycle
from typing import TYPE_CHECKING, Any

from windwall.report.plot_legend import FAMILY as FAMILY
from windwall.report.plot_legend import SIZE as SIZE
from windwall.report.plot_legend import legend_below
from windwall.results.scenario_info import ScenarioInfo

if TYPE_CHECKING:
    from matplotlib.axes import Axes

__all__ = [
    "BAND", "BEYOND", "BLUE", "COLOURS", "EMPTY", "FAR", "GREY", "HEIGHT", "INK", "LINE_STYLES",
    "MARKERS", "MARKER_SIZE", "OCHRE", "ONE_LINE", "PALE", "REFUSED", "ROOM", "SENTENCE_WIDTH",
    "TITLE_WIDTH", "WIDTH", "describe", "described", "finish", "human", "instead", "is_path",
    "looks", "new_axes", "note", "one_size", "plain_title", "title",
]  # fmt: skip

WIDTH, HEIGHT = 7.0, 4.6  # inches, of a picture of its own
EMPTY = 1.8  # inches, the height of one that has nothing but a sentence
TITLE_WIDTH = 64
SENTENCE_WIDTH = 56
ONE_LINE = 999  # letters, more than any text has
INK, BLUE, OCHRE, GREY, PALE = "black", "#1f4e8c", "#e0a030", "0.5", "0.72"
COLOURS = (INK, BLUE, OCHRE, GREY)
LINE_STYLES = ("-", "--", "-.", ":")
MARKERS = ("o", "s", "^", "D", "v", "P", "X", "*")
MARKER_SIZE = 4.5
REFUSED = {"facecolor": "none", "edgecolor": "0.45", "hatch": "xxx", "linewidth": 0.0}
BEYOND: dict[str, Any] = {"facecolor": "none", "edgecolor": "0.6", "hatch": "///", "linewidth": 0.0}
BAND: dict[str, Any] = {"facecolor": "0.88", "edgecolor": "none"}
ROOM = 1.06  # of what is drawn, to the end of an axis
FAR = 1.15  # of the speed reached, to the end of an axis of speed


def new_axes(ax: Axes | None, height: float = HEIGHT) -> Axes:
    """Those that were handed over, or new ones on a figure of their own."""
    if ax is not None:
        return ax
    import matplotlib.pyplot as plt

    with plt.rc_context({"hatch.linewidth": 0.5}):
        return plt.subplots(figsize=(WIDTH, height), layout="constrained")[1]


def looks(markers: bool = True) -> Iterator[dict[str, Any]]:
    """How one line after the other is drawn: no two of the first 32 share style and marker."""
    styles = zip(cycle(LINE_STYLES), cycle(COLOURS), strict=False)
    for at, (line, colour) in enumerate(styles):
        marker = MARKERS[(at + at // len(MARKERS)) % len(MARKERS)] if markers else None
        yield {"linestyle": line, "color": colour, "marker": marker, "markersize": MARKER_SIZE}


def finish(ax: Axes, heading: str, x: str = "", y: str = "", legend: bool = True) -> Axes:
    """Title and axes named, all in one size of type, with a legend below where lines have names."""
    ax.set_title(heading, fontsize=SIZE, family=FAMILY, fontweight="bold")
    ax.set_xlabel(x, fontsize=SIZE, family=FAMILY)
    ax.set_ylabel(y, fontsize=SIZE, family=FAMILY)
    one_size(ax)
    if legend:
        legend_below(ax)
    return ax


def one_size(ax: Axes) -> None:
    """Ticks in the size of all other type, without thin ones that nobody reads."""
    ax.tick_params(labelsize=SIZE, labelfontfamily=FAMILY)
    for side in ("top", "right"):
        ax.spines[side].set_visible(False)


def title(what: str, of: str | ScenarioInfo, width: int = TITLE_WIDTH) -> str:
    """What is shown, and under it of which vehicle; a file that has no title is not called by its
    path.
    """
    name = of.title if isinstance(of, ScenarioInfo) else of
    lines = [what] if not name or is_path(name) else [what, name]
    return "\n".join(plain_title(line, width) for line in lines)


def is_path(name: str) -> bool:
    """Whether a file's name stands where it states no title."""
    return name.endswith(".json") or name.lower() in ("scenario", "standard input")


def plain_title(text: str, width: int = TITLE_WIDTH) -> str:
    """A text from a file, with nothing in it that would be read as a formula."""
    return "\n".join(textwrap.wrap(text.replace("$", r"\$"), width))


def human(name: str) -> str:
    """An id as people would write it."""
    return name.replace("_", " ")


def instead(ax: Axes | None, heading: str, sentence: str) -> Axes:
    """A picture of what cannot be drawn: one sentence that says why."""
    ax = new_axes(ax, EMPTY)
    ax.set_axis_off()
    ax.text(
        0.5,
        0.5,
        plain_title(sentence, SENTENCE_WIDTH),
        transform=ax.transAxes,
        ha="center",
        va="center",
        fontsize=SIZE,
        family=FAMILY,
    )
    ax.set_title(heading, fontsize=SIZE, family=FAMILY, fontweight="bold")
    return describe(ax, sentence)


def describe(ax: Axes, sentence: str) -> Axes:
    """What the picture comes to, for whoever does not see it."""
    ax.set_label(sentence)
    return ax


def described(ax: Axes) -> str:
    """The same, read back."""
    return str(ax.get_label())


def note(ax: Axes, text: str, at: tuple[float, float], **further: Any) -> Any:
    """A few words at a place of the data, in the one size."""
    box = {"facecolor": "white", "edgecolor": "none", "alpha": 0.85, "pad": 1.0}
    return ax.annotate(
        text, at, fontsize=SIZE, family=FAMILY, **({"bbox": box, "zorder": 5} | further)
    )
