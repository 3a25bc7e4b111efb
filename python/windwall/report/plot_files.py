"""Pictures as files, the same bytes each time, with words for whoever does not see them."""

from __future__ import annotations

import io
import os
import re
from html import escape
from pathlib import Path
from typing import TYPE_CHECKING, Any

from windwall.report.plot_axes import FAMILY, described

if TYPE_CHECKING:
    from matplotlib.axes import Axes

__all__ = [
    "DOTS", "FAMILIES", "FORMATS", "NAMED", "REFERRED", "SALT", "STYLE", "inline_svg", "save",
    "svg",
]  # fmt: skip

FORMATS = (".svg", ".png", ".pdf")
SALT = "windwall"  # of the names inside an SVG, which would be random
STYLE = {"svg.fonttype": "none", "svg.hashsalt": SALT, "hatch.linewidth": 0.5}
FAMILIES = f"'{FAMILY}', Verdana, sans-serif"  # the first two are equally wide
DOTS = 160  # per inch, of a PNG
NAMED = re.compile(r'\bid="([^"]+)"')
REFERRED = re.compile(r'(url\(#|xlink:href="#)')


def save(axes: Axes, path: str | os.PathLike[str]) -> None:
    """Writes the picture of these axes, by the end of the name as SVG, PNG or PDF."""
    kind = Path(path).suffix.lower()
    if kind == ".svg":
        Path(path).write_text(svg(axes), encoding="utf-8")
        return
    said = {"Title": _words(axes)[0]}
    dates: dict[str, Any] = {"CreationDate": None} if kind == ".pdf" else {}
    with _style():
        _figure(axes).savefig(path, dpi=DOTS, metadata=said | dates)


def svg(axes: Axes) -> str:
    """The picture as a whole SVG file: text as text, with a title and a description."""
    written = io.StringIO()
    with _style():
        _figure(axes).savefig(written, format="svg", metadata={"Date": None})
    heading, sentence = map(escape, _words(axes))
    told = f' role="img">\n <title>{heading}</title>\n <desc>{sentence}</desc>'
    head, start, rest = written.getvalue().partition("<svg")
    attributes, _, inside = rest.partition(">")
    return f"{head}{start}{attributes}{told}{inside}".replace(f"'{FAMILY}'", FAMILIES)


def inline_svg(axes: Axes, name: str) -> str:
    """The `<svg>` element alone, for a page: `name` stands before all that it names inside, so that
    several fit into one page. Its paper is white on a dark page too.
    """
    whole = svg(axes)
    element = whole[whole.index("<svg") :]
    element = re.sub(r"\s*<metadata>.*?</metadata>", "", element, flags=re.DOTALL)
    element = NAMED.sub(rf'id="{name}-\1"', element)
    return REFERRED.sub(rf"\g<1>{name}-", element).strip()


def _words(axes: Axes) -> tuple[str, str]:
    """Title and description."""
    heading = axes.get_title().replace("\n", " ").replace(r"\$", "$")
    return heading, described(axes)


def _figure(axes: Axes) -> Any:
    """The whole picture that axes are part of."""
    return axes.figure


def _style() -> Any:
    import matplotlib as mpl

    return mpl.rc_context(STYLE)
