"""Where the watts go."""

from __future__ import annotations

from typing import Any, NamedTuple


class Account(NamedTuple):
    """The total first, which is the sum of the others: what for, in which part, how many watts."""

    name: str
    entries: list[dict[str, Any]]
