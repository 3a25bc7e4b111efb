"""Addresses as words, for whoever reads a page and has never seen the file behind it."""

from __future__ import annotations

import re
from dataclasses import replace

from windwall.report.text_layout import Block, Blocks, Bullet, Paragraph, Section, Table, Title

__all__ = ["ADDRESS", "PLACES", "ROOTS", "SEEN", "called", "in_words", "spoken"]

ROOTS = (
    "body", "charge_path", "day", "driveline", "engine", "fuel", "goal", "injector", "knock",
    "limits", "manifold", "observed", "road", "tyres", "under_hood", "upgrades", "variator",
)  # fmt: skip
PLACES = ("charge_path", "driveline")  # of parts, which have names of their own
SEEN = "observation {number}"
# An address, and what it is in words where that stands behind it already.
ADDRESS = re.compile(rf"\b(?P<at>(?:{'|'.join(ROOTS)})(?:/\w+)+)(?: \((?P<what>[a-z][^()]*)\))?")


def spoken(blocks: Blocks) -> Blocks:
    """The same blocks without an address in them."""
    return [_block(one) for one in blocks]


def in_words(text: str) -> str:
    """`rotor speed (blower)` for `charge_path/blower/rotor_speed`."""
    return ADDRESS.sub(lambda found: called(found["at"], found["what"] or ""), text)


def called(address: str, what: str = "") -> str:
    """What it is and where."""
    root, *keys = address.split("/")
    if root == "observed":
        root, keys = SEEN.format(number=keys[0]), keys[1:]
    places, last = ([] if root in PLACES and keys else [root]), keys[-1:]
    where = " ".join([*places, *keys[:-1]])
    if not where or not last:
        return what or _plain("".join(last) or where)
    return f"{what or _plain(last[0])} ({_plain(where)})"


def _plain(key: str) -> str:
    return key.replace("_", " ")


def _block(one: Block) -> Block:
    if isinstance(one, str):
        return in_words(one)
    if isinstance(one, Section):
        return Section(in_words(one.heading), spoken(one.blocks))
    if isinstance(one, Table):
        return replace(one, rows=tuple(tuple(map(in_words, row)) for row in one.rows))
    if isinstance(one, Title | Paragraph | Bullet):
        return replace(one, text=in_words(one.text))
    return one
