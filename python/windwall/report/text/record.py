"""Numbers of one part of an answer, one a line."""

from __future__ import annotations

from windwall.report.text_layout import Blocks, table
from windwall.results.record import Record
from windwall.results.views import content

__all__ = ["record_text"]


@content.register(Record)
def record_text(record: Record) -> Blocks:
    """Address, number and meaning."""
    return table(_lines(record, ""), left=(0, 2))


def _lines(record: Record, above: str) -> list[tuple[str, str, str]]:
    lines = []
    for key, value in record.items():
        measure = record.measure(key)
        if isinstance(value, Record):
            lines += _lines(value, f"{above}{key}/")
        elif measure and value is not None:
            lines.append((above + key, measure.text(value, record.system, 4), record.sentence(key)))
    return lines
