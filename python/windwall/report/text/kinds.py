"""Kinds of parts and their keys."""

from __future__ import annotations

from collections.abc import Iterable

from windwall.report.text_layout import Blocks, as_text, bullet, paragraph
from windwall.scenario.kinds import Key, Kind

__all__ = ["kinds_text"]


def kinds_text(found: Iterable[Kind]) -> str:
    """One block for each kind."""
    return "\n\n".join(as_text(_block(one)) for one in found)


def _block(kind: Kind) -> Blocks:
    where = "" if kind.place == kind.name else f", of {kind.place}"
    lines = [f"{kind.name}{where}", *paragraph(kind.meaning)]
    return lines + [line for one in kind.keys for line in bullet(_key(one))]


def _key(one: Key) -> str:
    needed = " (needed)" if one.needed else ""
    example = f' Such as "{one.example}".' if one.example else ""
    return f"{one.name}{needed}: {one.meaning}{example}"
