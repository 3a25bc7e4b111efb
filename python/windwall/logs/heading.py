"""Where the table begins: the line that names the columns, the line of units, the first numbers."""

from __future__ import annotations

from collections import Counter
from typing import NamedTuple

from windwall.logs.dialect import REMARK, Line, Row, is_remark, is_value, part
from windwall.logs.units import NO_UNIT, known, named
from windwall.logs.wrong import at, refuse
from windwall.results.log import Mended

__all__ = ["LOOKED_AHEAD", "MOSTLY", "MOST_COLUMNS", "Heading", "find", "remarks_of"]

LOOKED_AHEAD = 5
MOSTLY = 0.6
MOST_COLUMNS = 500


class Heading(NamedTuple):
    """Names and units of the columns, as written, and the number of the first line of numbers."""

    names: list[str]
    units: list[str]
    first: int
    text: list[str]  # the cells of the line that names them, to know it again
    mended: list[Mended]


def find(rows: list[Row], remarks: list[Line], delimiter: str) -> Heading:
    """The heading of a table; columns of one that has none are called by their number."""
    begin = _first_numbers(rows)
    width = _width(rows[begin:])
    names_row, units_row, mended = _above(rows[:begin], width)
    if names_row is None:
        names_row = _remarked(remarks, rows[begin].number, width, delimiter)
        if names_row is None:
            number = rows[begin].number
            _refuse_doubled(rows[:begin], width, number)
            said = "no line above the numbers names the columns; they are called by their number"
            mended = [Mended((number,), "", said)]
    cells = names_row.cells if names_row else []
    names, units = _split(cells, units_row.cells if units_row else [], max(width, len(cells)))
    if len(names) > MOST_COLUMNS:
        refuse(at(rows[begin].number, "", f"{len(names)} columns are more than {MOST_COLUMNS}"))
    return Heading(_told_apart(names, mended, names_row), units, rows[begin].number, cells, mended)


def _first_numbers(rows: list[Row]) -> int:
    """The first of the numbers: of full width, or above such a row and nothing but numbers."""
    width = _width(rows)
    for here, row in enumerate(rows):
        ahead = rows[here : here + LOOKED_AHEAD]
        alike = [one for one in ahead if _is_numbers(one, width)]
        full = len(row.cells) == width and _is_numbers(row, width)
        if full and len(alike) >= MOSTLY * len(ahead):
            while here and all(map(is_value, rows[here - 1].cells)):
                here -= 1
            return here
    number = rows[0].number if rows else 1
    refuse(at(number, "", "no line of numbers follows; a log has a row for each moment"))
    return 0


def _width(rows: list[Row]) -> int:
    widths = Counter(len(row.cells) for row in rows if any(map(is_value, row.cells)))
    return widths.most_common(1)[0][0] if widths else 0


def _is_numbers(row: Row, width: int) -> bool:
    filled = [cell for cell in row.cells if cell]
    values = sum(map(is_value, filled))
    return len(row.cells) >= MOSTLY * width and values > 0 and values >= 0.5 * len(filled)


def _refuse_doubled(above: list[Row], width: int, first: int) -> None:
    """A heading of half as many cells: the numbers have a comma inside, and another between."""
    count = len(above[-1].cells) if above and _is_words(above[-1]) else 0
    if count > 1 and width in (2 * count - 1, 2 * count):
        message = f"{width} cells stand below {count} headings; decimal commas between commas"
        refuse(at(first, count + 1, message + " cannot be told apart"))


def _above(above: list[Row], width: int) -> tuple[Row | None, Row | None, list[Mended]]:
    """The line that names the columns, and the one of units where there is one below it."""
    fitting = [row for row in above if len(row.cells) >= MOSTLY * width and _is_words(row)]
    if not fitting:
        return None, None, []
    if _is_units(fitting[-1]) and len(fitting) > 1:
        return fitting[-2], fitting[-1], []
    return fitting[-1], None, []


def _is_words(row: Row) -> bool:
    """Words rather than a ruled line."""
    return any(one.isalpha() or one in "%°" for cell in row.cells for one in cell)


def _is_units(row: Row) -> bool:
    filled = [cell for cell in row.cells if cell]
    units = [cell for cell in filled if _bare(cell) in NO_UNIT or known(_bare(cell))]
    return len(units) >= MOSTLY * len(filled)


def _bare(cell: str) -> str:
    return cell.strip("[](){}<> ").lower() if cell.strip("[](){}<> ") != "C" else "C"


def _remarked(remarks: list[Line], before: int, width: int, delimiter: str) -> Row | None:
    """A heading behind the mark of a remark, the last one above the numbers."""
    for line in reversed([one for one in remarks if one.number < before]):
        (row,) = part([Line(line.number, REMARK.sub("", line.text))], delimiter)
        if len(row.cells) == width:
            return row
    return None


def _split(cells: list[str], below: list[str], width: int) -> tuple[list[str], list[str]]:
    names, units = [], []
    for column in range(width):
        name, unit = named(cells[column]) if column < len(cells) else ("", "")
        under = below[column] if column < len(below) else ""
        names.append(name or f"column {column + 1}")
        units.append(under.strip("[](){}<> ") if under and not unit else unit)
    return names, units


def _told_apart(names: list[str], mended: list[Mended], row: Row | None) -> list[str]:
    """The same names, each once."""
    seen: Counter[str] = Counter()
    made = []
    for name in names:
        seen[name] += 1
        again = f"{name} ({seen[name]})" if seen[name] > 1 else name
        if again != name:
            said = f'another column is called "{name}" already; called "{again}" here'
            mended.append(Mended((row.number if row else 0,), name, said))
        made.append(again)
    return made


def remarks_of(lines: list[Line]) -> list[Line]:
    return [line for line in lines if is_remark(line)]
