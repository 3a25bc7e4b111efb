"""Plain text for people: aligned tables and wrapped paragraphs, without any colour."""

from __future__ import annotations

import textwrap
from collections.abc import Iterable, Sequence

WIDTH = 88
INDENT = "  "


def table(rows: Iterable[Sequence[str]], left: Iterable[int] = (0,)) -> list[str]:
    """Lines with aligned columns; the columns named by `left` to the left, numbers to the right."""
    rows = [list(row) for row in rows]
    if not rows:
        return []
    columns = max(map(len, rows))
    rows = [row + [""] * (columns - len(row)) for row in rows]
    widths = [max(len(row[at]) for row in rows) for at in range(columns)]
    kept = set(left)

    def cell(at: int, text: str) -> str:
        return text.ljust(widths[at]) if at in kept else text.rjust(widths[at])

    lines = (INDENT.join(cell(at, text) for at, text in enumerate(row)) for row in rows)
    return [(INDENT + line).rstrip() for line in lines]


def paragraph(text: str, indent: str = INDENT) -> list[str]:
    """A sentence wrapped to the width; further lines stand below its first."""
    return textwrap.wrap(
        text,
        WIDTH,
        initial_indent=indent,
        subsequent_indent=indent,
        break_long_words=False,
        break_on_hyphens=False,
    )


def bullet(text: str) -> list[str]:
    """A sentence of a list."""
    lines = paragraph(text, INDENT + "  ")
    return [INDENT + "- " + lines[0].lstrip(), *lines[1:]] if lines else []


def section(heading: str, lines: Iterable[str]) -> list[str]:
    """A heading with what stands below it, or nothing where nothing does."""
    lines = list(lines)
    return ["", heading, *lines] if lines else []
