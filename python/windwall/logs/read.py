"""Reads a log of any shape: bytes, lines, dialect, heading, cells, clock, order."""

from __future__ import annotations

import os
from collections.abc import Mapping
from itertools import pairwise
from typing import Any

import numpy as np

from windwall.logs import clock, decoding, dialect, heading, order
from windwall.logs.cells import Marks, is_nothing, number, split_unit
from windwall.logs.dialect import NAMES, Row
from windwall.logs.stamps import stamp
from windwall.logs.units import known, spelt
from windwall.logs.wrong import at, refuse
from windwall.results.log import Log, LogColumn, Mended
from windwall.scenario.files import shown

__all__ = ["MOST_NAMED", "TOO_MANY", "parse", "read_log"]

TOO_MANY = 0.1  # share of the rows that may be of another length
MOST_NAMED = 8  # columns named in a complaint


def read_log(path: str | os.PathLike[str], stated: Mapping[str, Any] | None = None) -> Log:
    """A log from its file; `stated` is what its mapping says of how it is written: `delimiter`,
    `decimal`, and the `clock` with its `column` and `unit`. Raises `ScenarioError` with line and
    column of what cannot be understood or may mean two things.
    """
    return parse(decoding.read_bytes(path), shown(path), stated)


def parse(content: bytes, source: str = "log", stated: Mapping[str, Any] | None = None) -> Log:
    """The same from the bytes of a file."""
    stated = stated or {}
    text, encoding, mended = decoding.decode(content)
    lines = list(dialect.lines_of(text))
    remarks = heading.remarks_of(lines)
    told = [line for line in lines if not dialect.is_remark(line)]
    written = dialect.find(told, dict(stated.get("reading", {})))
    rows = [row for row in dialect.part(told, written.delimiter) if row.cells]
    head = heading.find(rows, remarks, written.delimiter)
    mended += head.mended
    table = [row for row in rows if row.number >= head.first]
    table, begins = _without_headings(table, head.text, mended)
    table = _of_one_width(table, head, text, written.marks, mended)
    return _columns(table, begins, head, written, source, encoding, stated, mended)


def _without_headings(
    table: list[Row], text: list[str], mended: list[Mended]
) -> tuple[list[Row], list[int]]:
    """Without headings that stand again, and the lines from which the log was begun anew."""
    again = [row.number for row in table if row.cells == text]
    if again:
        mended.append(Mended(tuple(again), "", "the heading stands here again; a new part begins"))
    return [row for row in table if row.cells != text], again


def _of_one_width(
    table: list[Row], head: heading.Heading, text: str, marks: Marks, mended: list[Mended]
) -> list[Row]:
    """Rows whose cells belong to a column each; cells that are missing at the end may be empty."""
    width = len(head.names)
    longer = [row for row in table if len(row.cells) > width]
    if len(longer) > TOO_MANY * len(table):
        row = longer[0]
        more = (
            "; decimal commas between commas cannot be told apart" if marks.decimal == "." else ""
        )
        message = f"{len(row.cells)} cells stand below {width} headings{more}"
        refuse(at(row.number, width + 1, message))
    words = [row for row in table if not any(map(dialect.is_value, row.cells))]
    lost = {row.number for row in (*longer, *words)}
    last = table[-1]
    if last.number not in lost and _cut_short(table, text, width):
        mended.append(Mended((last.number,), "", "the last line is cut short; left out"))
        lost.add(last.number)
    _say(mended, longer, "more cells than columns; the row is left out")
    _say(mended, words, "no number stands here; the row is left out")
    return [row for row in table if row.number not in lost]


def _say(mended: list[Mended], rows: list[Row], message: str) -> None:
    if rows:
        mended.append(Mended(tuple(row.number for row in rows), "", message))


def _cut_short(table: list[Row], text: str, width: int) -> bool:
    """Whether the file ends within its last line: fewer cells than all others, or digits."""
    if text.endswith("\n") or len(table) < 2:
        return False
    last, before = table[-1].cells, table[-2].cells
    if len(last) < len(before):
        return True
    return len(last[-1]) < len(before[-1]) and _digits(last[-1]) < _digits(before[-1])


def _digits(cell: str) -> int:
    """Digits behind the mark."""
    mark = max(cell.rfind("."), cell.rfind(","))
    return len(cell) - mark - 1 if mark >= 0 else 0


def _columns(
    table: list[Row],
    begins: list[int],
    head: heading.Heading,
    written: dialect.Dialect,
    source: str,
    encoding: str,
    stated: Mapping[str, Any],
    mended: list[Mended],
) -> Log:
    width = len(head.names)
    if not table:
        refuse(at(head.first, "", "no row of numbers is left"))
    cells = [[row.cells[i] if i < len(row.cells) else "" for row in table] for i in range(width)]
    lines = [row.number for row in table]
    its = _clock_column(head.names, cells, lines, stated.get("clock", {}))
    ticks = _clock(head, cells, lines, its, written.marks, stated.get("clock", {}))
    mended += ticks.mended
    begun = [next((i for i, n in enumerate(lines) if n > one), len(lines)) for one in begins]
    same = [False] + [now.cells == was.cells for was, now in pairwise(table)]
    ordered = order.order(ticks.seconds, np.array(lines), begun, head.names[its], same)
    mended += ordered.mended
    columns = tuple(
        _column(head.names[i], head.units[i], cells[i], lines, ordered.rows, written.marks, mended)
        for i in range(width)
        if i != its and any(cells[i])
    )
    began = _began(head.names, cells, ticks.began)
    how = f"{encoding}, parted by {NAMES.get(written.delimiter, ascii(written.delimiter))}"
    how += f', decimal mark "{written.marks.decimal}"'
    time = ordered.seconds - ordered.seconds[0]
    in_file = np.array(lines)[ordered.rows]
    return Log(
        source, columns, time, ordered.part, in_file, head.names[its], began, tuple(mended), how
    )


def _clock_column(
    names: list[str], cells: list[list[str]], lines: list[int], stated: Mapping[str, Any]
) -> int:
    if "column" in stated:
        if stated["column"] in names:
            return names.index(stated["column"])
        refuse(at(0, stated["column"], f"is missing; there are {_list(names)}"))
    found = clock.found_in(names)
    if found is None:
        found = next((i for i, one in enumerate(cells) if _tells_time(one)), None)
    if found is None and all(name.startswith("column ") for name in names[:1]):
        found = 0
    if found is None:
        message = (
            f'no column is called like a clock; say which in "clock": there are {_list(names)}'
        )
        refuse(at(max(lines[0] - 1, 1), "", message))
    return found


def _list(names: list[str]) -> str:
    more = len(names) - MOST_NAMED
    return ", ".join(names[:MOST_NAMED]) + (f" and {more} more" if more > 0 else "")


def _tells_time(cells: list[str]) -> bool:
    filled = [cell for cell in cells[:50] if cell]
    return bool(filled) and all(":" in cell and stamp(cell) is not None for cell in filled)


def _clock(
    head: heading.Heading,
    cells: list[list[str]],
    lines: list[int],
    its: int,
    marks: Marks,
    stated: Mapping[str, Any],
) -> clock.Clock:
    unit = stated.get("unit") or _unit_in(head.units[its], head.names[its])
    unit = unit or _unit_behind(cells[its])
    return clock.read(cells[its], lines, head.names[its], unit, marks)


def _unit_in(unit: str, name: str) -> str:
    """The unit of a clock; a format such as `hh:mm:ss` is none."""
    return "" if ":" in unit or spelt(unit) == spelt(name) else unit


def _began(names: list[str], cells: list[list[str]], began: str) -> str:
    date = clock.date_in(names)
    day = next((cell for cell in cells[date] if cell), "") if date is not None else ""
    return " ".join(word for word in (day, began) if word)


def _column(
    name: str,
    unit: str,
    cells: list[str],
    lines: list[int],
    kept: np.ndarray,
    marks: Marks,
    mended: list[Mended],
) -> LogColumn:
    """One column; a cell that is no number becomes none, and is said where most are numbers."""
    values = [number(cell, marks) for cell in cells]
    bad = [i for i, value in enumerate(values) if value is None]
    filled = sum(1 for cell in cells if not is_nothing(cell))
    unread = (lines[bad[0]], cells[bad[0]]) if bad else None
    if bad and len(bad) * 2 < filled:
        said = f'"{cells[bad[0]][:40]}" is no number; taken for none'
        mended.append(Mended(tuple(lines[i] for i in bad), name, said))
        unread = None
    numbers = np.array([np.nan if value is None else value for value in values])
    return LogColumn(name, unit or _unit_behind(cells), numbers[kept], unread)


def _unit_behind(cells: list[str]) -> str:
    """The unit that stands behind the number in every cell."""
    units = [parts[1] for cell in cells if cell and (parts := split_unit(cell)) and parts[1]]
    return units[0] if units and len(units) * 2 > sum(map(bool, cells)) and known(units[0]) else ""
