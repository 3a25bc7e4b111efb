"""One question of `windwall new`."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Any, NamedTuple

from windwall.cli.new_readings import Values

__all__ = ["Question"]


class Question(NamedTuple):
    """One question: the word it is called by, where its answer goes, and how it may be answered."""

    name: str
    address: str
    example: str = ""  # where the row has none
    needed: bool = False
    empty: str = ""  # what an empty answer means, where it is not the row's default
    also: str = ""  # another way to answer
    after: str = ""  # asked only where this other question was answered, or one of these
    read: Callable[[str, str], list[Values]] | None = None
    row: str = ""  # the address whose row tells of it, where its answer is no input itself

    def follows(self, answered: Mapping[str, Any]) -> bool:
        """Whether it is to be asked behind what was answered, by the names of questions."""
        return not self.after or any(map(answered.get, self.after.split()))

    @property
    def has_prior(self) -> bool:
        """Whether the class of the engine stands in for an empty answer."""
        return self.address.startswith(("engine/design/", "engine/rated/"))
