"""Where the watts go."""

from __future__ import annotations

from typing import NamedTuple

from windwall.results.entry import Use


class Account(NamedTuple):
    """The total first, then what it is made of: what for, in which part, how many watts."""

    name: str
    entries: tuple[Use, ...]
