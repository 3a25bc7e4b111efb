"""What an answer is laid out as, titles, paragraphs, lists and tables, and these as plain text:
aligned, wrapped, without any colour. `report/html` makes pages of the same blocks.
"""

from __future__ import annotations

import textwrap
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, field

__all__ = [
    "INDENT", "WIDTH", "Bars", "Block", "Blocks", "Bullet", "Paragraph", "Section", "Table",
    "Title", "as_text", "bullet", "headline", "paragraph", "section", "table",
]  # fmt: skip

WIDTH = 88
INDENT = "  "


@dataclass(frozen=True)
class Title:
    """What an answer is about; the first line of it."""

    text: str

    def lines(self) -> list[str]:
        return [self.text]


@dataclass(frozen=True)
class Paragraph:
    """A sentence or a few. The one that an answer comes to leads."""

    text: str
    indent: str = INDENT
    leads: bool = False

    def lines(self) -> list[str]:
        return _wrapped(self.text, self.indent)


@dataclass(frozen=True)
class Bullet:
    """A sentence of a list."""

    text: str

    def lines(self) -> list[str]:
        lines = _wrapped(self.text, INDENT + "  ")
        return [INDENT + "- " + lines[0].lstrip(), *lines[1:]]


@dataclass(frozen=True)
class Bars:
    """What a picture draws beside the rows of a table: of each row (low, middle, high) or nothing.
    Their numbers stand in the cells, and a plain text leaves them out. They start at 0, or are
    intervals that start nowhere.
    """

    heading: str
    values: tuple[tuple[float, float, float] | None, ...]
    start: float | None = 0.0


@dataclass(frozen=True)
class Table:
    """Aligned columns below a head, where there is one; a cell with line breaks goes on below."""

    rows: tuple[tuple[str, ...], ...]
    head: tuple[str, ...] = ()
    left: frozenset[int] = frozenset({0})
    widest: int | None = None  # characters, beyond which the last column goes on below
    bars: Bars | None = None

    def lines(self) -> list[str]:
        every = [self.head, *self.rows] if self.head else list(self.rows)
        columns = max(map(len, every))
        cells = [[one.split("\n") for one in (*row, *[""] * (columns - len(row)))] for row in every]
        widths = [max(len(part) for row in cells for part in row[at]) for at in range(columns)]
        if self.widest is not None:
            room = self.widest - sum(widths[:-1]) - len(INDENT) * columns
            for row in cells:
                row[-1] = textwrap.wrap(row[-1][0], max(room, 1)) or [""]
            widths[-1] = 0
        return [line for row in cells for line in self._lines(row, widths)]

    def _lines(self, row: list[list[str]], widths: list[int]) -> Iterator[str]:
        for line in range(max(map(len, row))):
            parts = (cell[line] if line < len(cell) else "" for cell in row)
            shown = (self._aligned(at, text, widths[at]) for at, text in enumerate(parts))
            yield (INDENT + INDENT.join(shown)).rstrip()

    def _aligned(self, at: int, text: str, width: int) -> str:
        return text.ljust(width) if at in self.left else text.rjust(width)


@dataclass(frozen=True)
class Section:
    """A heading with what stands below it."""

    heading: str
    blocks: Blocks = field(default_factory=list)

    def lines(self) -> list[str]:
        return ["", self.heading, *_lines(self.blocks)]


Block = Title | Paragraph | Bullet | Table | Section | str  # a text is a line as it stands
Blocks = list[Block]


def _wrapped(text: str, indent: str) -> list[str]:
    return textwrap.wrap(
        text,
        WIDTH,
        initial_indent=indent,
        subsequent_indent=indent,
        break_long_words=False,
        break_on_hyphens=False,
    )


def _lines(blocks: Iterable[Block]) -> Iterator[str]:
    for one in blocks:
        yield from [one] if isinstance(one, str) else one.lines()


def as_text(blocks: Iterable[Block]) -> str:
    """The same as people read it in a terminal."""
    return "\n".join(_lines(blocks))


def table(
    rows: Iterable[Sequence[str]],
    left: Iterable[int] = (0,),
    head: Sequence[str] = (),
    widest: int | None = None,
    bars: Bars | None = None,
) -> Blocks:
    """A table, the columns named by `left` to the left and numbers to the right; nothing where
    there is no row.
    """
    made = tuple(tuple(row) for row in rows)
    return [Table(made, tuple(head), frozenset(left), widest, bars)] if made else []


def paragraph(text: str, indent: str = INDENT) -> Blocks:
    """A sentence wrapped to the width; further lines stand below its first."""
    return [Paragraph(text, indent)] if text.strip() else []


def headline(text: str) -> Blocks:
    """The sentence that an answer comes to."""
    return [Paragraph(text, leads=True)] if text.strip() else []


def bullet(text: str) -> Blocks:
    """A sentence of a list."""
    return [Bullet(text)] if text.strip() else []


def section(heading: str, blocks: Iterable[Block]) -> Blocks:
    """A heading with what stands below it, or nothing where nothing does."""
    blocks = list(blocks)
    return [Section(heading, blocks)] if blocks else []
