"""Where the watts go."""

from __future__ import annotations

from typing import NamedTuple


class Account(NamedTuple):
    """The total first, which is the sum of the others, W."""

    name: str
    entries: list[tuple[str, float]]
