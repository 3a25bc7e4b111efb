"""Which mark parts the cells of a file, and which is the decimal one."""

from __future__ import annotations

import csv
import re
from collections import Counter
from collections.abc import Callable, Iterable, Iterator
from typing import Any, NamedTuple

from windwall.logs.cells import Marks, evidence, is_nothing, split_unit
from windwall.logs.stamps import stamp
from windwall.logs.units import known
from windwall.logs.wrong import at, refuse

__all__ = [
    "CLEARLY", "LEAST_NUMBERS", "NAMES", "REMARK", "SAMPLED", "Dialect", "Line", "Row", "find",
    "is_number", "is_remark", "is_value", "lines_of", "part", "splitter",
]  # fmt: skip

NAMES = {";": "semicolons", "\t": "tabs", "|": "bars", ",": "commas", " ": "spaces"}
SAMPLED = 400
LEAST_NUMBERS = 0.3  # share of the cells that are numbers, from which a way of parting makes sense
CLEARLY = 0.02  # by how much one way has to be the better
REMARK = re.compile(r"^\s*(?:#|//|%(?=[\s\w]))")


class Line(NamedTuple):
    """One line of the text, by its number from 1; a heading broken inside quotes is one line."""

    number: int
    text: str


class Row(NamedTuple):
    """A line parted into cells, without the empty ones at its end."""

    number: int
    cells: list[str]


class Dialect(NamedTuple):
    delimiter: str
    marks: Marks


def lines_of(text: str) -> Iterator[Line]:
    """Lines with something in them. A quote left open takes the next two along, or none."""
    raw = text.split("\n")
    at_line = 0
    while at_line < len(raw):
        taken, joined = 1, raw[at_line]
        if joined.count('"') % 2:
            for more in (2, 3):
                longer = "\n".join(raw[at_line : at_line + more])
                if longer.count('"') % 2 == 0 and at_line + more <= len(raw):
                    taken, joined = more, longer
                    break
            else:
                joined = joined.replace('"', "")
        if joined.strip(" \r\f\x1a"):
            yield Line(at_line + 1, joined.rstrip("\r\x1a"))
        at_line += taken


def is_remark(line: Line) -> bool:
    return bool(REMARK.match(line.text))


def part(lines: Iterable[Line], delimiter: str) -> list[Row]:
    """Lines as rows of cells."""
    there = list(lines)
    return [
        Row(line.number, _stripped(cells))
        for line, cells in zip(there, splitter(delimiter)(there), strict=True)
    ]


def splitter(delimiter: str) -> Callable[[list[Line]], Iterator[list[str]]]:
    if delimiter == " ":
        return lambda lines: (line.text.split() for line in lines)
    return lambda lines: csv.reader(
        (line.text.replace("\n", " ") for line in lines), delimiter=delimiter, skipinitialspace=True
    )


def _stripped(cells: list[str]) -> list[str]:
    made = [cell.strip().strip('"').strip() for cell in cells]
    while made and not made[-1]:
        made.pop()
    return made


def find(lines: list[Line], stated: dict[str, str]) -> Dialect:
    """How a file is written; `stated` says what its mapping knows. Refuses what could be two."""
    sample = _sample(lines)
    delimiter = stated.get("delimiter") or _delimiter(lines, sample)
    rows = part(sample, delimiter)
    return Dialect(delimiter, _marks(rows, delimiter, stated.get("decimal", "")))


def _sample(lines: list[Line]) -> list[Line]:
    kept = [line for line in lines if not is_remark(line)]
    middle = len(kept) // 2
    return kept if len(kept) <= 2 * SAMPLED else kept[:SAMPLED] + kept[middle : middle + SAMPLED]


def _delimiter(lines: list[Line], sample: list[Line]) -> str:
    first = re.match(r'^"?sep=(.)"?$', lines[0].text.strip(" ")) if lines else None
    if first:
        return first[1]
    worth = {delimiter: _worth(part(sample, delimiter)) for delimiter in NAMES}
    # A space stands inside stamps and between columns alike, so any other mark goes before it.
    best = max(worth, key=lambda one: worth[one] - (2 * CLEARLY if one == " " else 0))
    if worth[best] <= 0:
        refuse(at(lines[0].number if lines else 1, "", _no_table(lines)))
    near = [one for one in NAMES if one not in (best, " ") and worth[one] > worth[best] - CLEARLY]
    here = _numbers(part(sample, best))
    others = [one for one in near if _numbers(part(sample, one)) != here]
    if others:
        names = " or ".join(NAMES[one] for one in (best, *others))
        message = f'cells may be parted by {names}; say which in "reading": {{"delimiter": ...}}'
        refuse(at(sample[-1].number, "", message))
    return best


def _numbers(rows: list[Row]) -> list[Row]:
    return [row for row in rows if all(map(is_value, row.cells))]


def _no_table(lines: list[Line]) -> str:
    found = ascii(lines[0].text[:40]) if lines else "nothing"
    return (
        f"{found} begins no table: two columns of numbers at least, parted by commas, semicolons, "
        "tabs, bars or spaces"
    )


def _worth(rows: list[Row]) -> float:
    """How much of a sample becomes a table of numbers; zero where nothing does."""
    widths = Counter(len(row.cells) for row in rows if len(row.cells) > 1)
    if not widths:
        return 0.0
    (width, count), *_ = widths.most_common(1)
    cells = [cell for row in rows if len(row.cells) == width for cell in row.cells]
    values = sum(map(is_value, cells)) / len(cells)
    return values * count / len(rows) if values >= LEAST_NUMBERS else 0.0


def is_value(cell: str) -> bool:
    """A number with whatever mark, a stamp, or a word for nothing."""
    return is_number(cell) or is_nothing(cell) or stamp(cell) is not None


def is_number(cell: str) -> bool:
    parts = split_unit(cell)
    return parts is not None and (not parts[1] or known(parts[1]))


def _marks(rows: list[Row], delimiter: str, stated: str) -> Marks:
    if delimiter == "," and stated != ",":
        # A comma inside a cell is quoted then, and parts thousands or decimals.
        rows = [row for row in rows if any("," in cell for cell in row.cells)] or rows[:0]
    if stated:
        return Marks(stated, "." if stated == "," else ",")
    sure, open_ = _told(rows)
    if len(sure) > 1:
        (line, column, text), (_, _, other) = sure[","], sure["."]
        message = f'"{text}" has a decimal comma, and "{other}" in line {sure["."][0]} a point'
        refuse(at(line, column, message + '; say which in "reading": {"decimal": ...}'))
    if sure:
        decimal = next(iter(sure))
        return Marks(decimal, "." if decimal == "," else ",")
    if open_:
        line, column, text = open_
        mark = "," if "," in text else "."
        whole, share = text.replace(mark, ""), text.replace(mark, ".")
        message = f'"{text}" may be {share} or {whole}, and no other cell tells'
        refuse(at(line, column, message + '; say which in "reading": {"decimal": ...}'))
    return Marks()


def _told(rows: list[Row]) -> tuple[dict[str, tuple[Any, ...]], tuple[Any, ...] | None]:
    """The first cell that tells for each decimal mark, and the first that leaves it open."""
    sure: dict[str, tuple[Any, ...]] = {}
    open_ = None
    for row in rows:
        for column, cell in enumerate(row.cells, 1):
            told = evidence(cell) if any(one in cell for one in ".,") else None
            if told and told.sure:
                sure.setdefault(told.decimal, (row.number, column, cell))
            elif told:
                open_ = open_ or (row.number, column, cell)
    return sure, open_
