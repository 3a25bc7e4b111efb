"""An answer in a browser. The fragment holds its own style and asks for nothing from elsewhere;
whatever a file says is escaped.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from html import escape
from itertools import groupby
from typing import Any

from windwall.report.html.style import STYLE
from windwall.report.html.tables import table_html
from windwall.report.html.words import words
from windwall.report.text_layout import Block, Bullet, Paragraph, Section, Table, Title
from windwall.results.views import content, html

__all__ = ["body", "fragment", "framed"]


@html.register(object)
def fragment(result: Any, **further: Any) -> str:
    """A result with its style, as a notebook shows it and a page may hold it; the escaped text of
    what is not laid out in blocks.
    """
    if content.dispatch(type(result)) is content.dispatch(object):
        return framed(f"<pre>{escape(repr(result))}</pre>")
    return framed(body(content(result, **further)))


def framed(inside: str) -> str:
    """A piece of a page in the frame that the style belongs to."""
    return f'<div class="windwall"><style>{STYLE}</style>{inside}</div>'


def body(blocks: Iterable[Block]) -> str:
    """Blocks alone, without style and frame. Tables that stand side by side share a row."""
    return "".join(_grouped(blocks))


def _grouped(blocks: Iterable[Block]) -> Iterator[str]:
    for kind, group in groupby(blocks, _kind):
        inside = "".join(_block(one) for one in group)
        if kind is Bullet:
            yield f"<ul>{inside}</ul>"
        else:
            yield f'<div class="sections">{inside}</div>' if kind is Section else inside


def _kind(block: Block) -> type:
    return type(block)


def _block(block: Block) -> str:
    if isinstance(block, str):
        return f"<p>{words(block.strip())}</p>" if block.strip() else ""
    if isinstance(block, Title):
        return f"<h3>{words(block.text)}</h3>"
    if isinstance(block, Paragraph):
        return f"<p{_class(block)}>{words(block.text)}</p>"
    if isinstance(block, Bullet):
        return f"<li>{words(block.text)}</li>"
    if isinstance(block, Table):
        return table_html(block)
    return f"<section{_width(block)}><h4>{words(block.heading)}</h4>{body(block.blocks)}</section>"


def _class(block: Paragraph) -> str:
    if block.leads:
        return ' class="lead"'
    return "" if block.indent else ' class="asked"'


def _width(block: Section) -> str:
    """A section of one table alone may stand beside another."""
    alone = all(isinstance(one, Table) for one in block.blocks)
    return ' class="narrow"' if alone and len(block.blocks) == 1 else ""
