"""Tables, and the bars that are drawn beside their rows."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from windwall.report.html.words import words
from windwall.report.text_layout import Bars, Table

__all__ = ["HEIGHT", "MARGIN", "WIDTH", "Range", "table_html"]

WIDTH, HEIGHT = 100, 12  # of the picture beside a row, in its own units
MARGIN = 2  # left and right, so that a mark at an end is whole

Range = tuple[float, float, float]


def table_html(table: Table) -> str:
    """A table with its head, and with bars in a last column where it has any."""
    columns = max(map(len, [table.head, *table.rows]))
    head = _head(table, columns) if table.head else ""
    pictures = _pictures(table.bars) if table.bars else [""] * len(table.rows)
    rows = (_row(row, table, columns) for row in table.rows)
    lines = "".join(f"<tr>{a}{b}</tr>" for a, b in zip(rows, pictures, strict=True))
    facts = "" if table.head or not _is_of_pairs(table) else ' class="facts"'
    return f'<div class="wide"><table{facts}>{head}<tbody>{lines}</tbody></table></div>'


def _is_of_pairs(table: Table) -> bool:
    return table.left >= {0, 1} and all(len(row) == 2 for row in table.rows)


def _head(table: Table, columns: int) -> str:
    cells = "".join(
        f'<th scope="col"{_side(at, table)}>{words(text)}</th>' if text else "<td></td>"
        for at, text in enumerate(_filled(table.head, columns))
    )
    picture = _heading(table.bars) if table.bars else ""
    return f"<thead><tr>{cells}{picture}</tr></thead>"


def _heading(bars: Bars) -> str:
    """What the pictures show; where the cells say it there is nothing to add."""
    if not bars.heading:
        return "<td></td>"
    return f'<th scope="col" class="left">{words(bars.heading)}</th>'


def _row(row: Sequence[str], table: Table, columns: int) -> str:
    names_itself = 0 in table.left
    cells = []
    for at, text in enumerate(_filled(row, columns)):
        shown = _cell(text)
        tag = 'th scope="row"' if at == 0 and names_itself and shown else "td"
        cells.append(f"<{tag}{_side(at, table)}>{shown}</{tag.split()[0]}>")
    return "".join(cells)


def _cell(text: str) -> str:
    """What stands on a further line of a cell is what paper can do without."""
    first, _, more = text.partition("\n")
    if not more:
        return words(first)
    apart = "" if more.startswith(":") else " "
    return f'{words(first)}<span class="more">{words(apart + more)}</span>'


def _filled(row: Sequence[str], columns: int) -> list[str]:
    return [*row, *[""] * (columns - len(row))]


def _side(at: int, table: Table) -> str:
    return ' class="left"' if at in table.left else ""


def _pictures(bars: Bars) -> list[str]:
    """A cell for each row, all to one scale."""
    known = [one for one in bars.values if one is not None]
    numbers = [x for one in known for x in one] + ([] if bars.start is None else [bars.start])
    low, high = min(numbers, default=0.0), max(numbers, default=0.0)
    span = high - low or 1.0

    def place(x: float) -> float:
        return MARGIN + (WIDTH - 2 * MARGIN) * (x - low) / span

    return [f'<td class="bar">{_picture(one, bars.start, place)}</td>' for one in bars.values]


def _picture(one: Range | None, start: float | None, place: Callable[[float], float]) -> str:
    """The bar from its start to the middle, and a line over the range where there is one."""
    if one is None:
        return ""
    low, middle, high = map(place, one)
    drawn = "" if start is None else _bar(place(start), middle)
    if high > low:
        drawn += _line(low, high)
    if start is None:
        drawn += f'<circle class="middle" cx="{middle:.1f}" cy="6" r="2.4"/>'
    return (
        f'<svg viewBox="0 0 {WIDTH} {HEIGHT}" width="{2 * WIDTH}" height="{2 * HEIGHT}" '
        f'aria-hidden="true">{drawn}</svg>'
    )


def _bar(start: float, end: float) -> str:
    """Losses are hollow, so that they are told from gains without colour."""
    kind = "gain" if end >= start else "loss"
    left, wide = min(start, end), abs(end - start)
    bar = f'<rect class="{kind}" x="{left:.1f}" y="3" width="{wide:.1f}" height="6"/>'
    return f'{bar}<path class="axis" d="M{start:.1f} 0V12"/>'


def _line(low: float, high: float) -> str:
    return f'<path class="range" d="M{low:.1f} 6H{high:.1f}M{low:.1f} 4V8M{high:.1f} 4V8"/>'
