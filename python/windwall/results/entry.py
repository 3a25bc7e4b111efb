"""Entries of lists that an answer holds, where they are more than their numbers."""

from __future__ import annotations

from typing import Any

from windwall.results.values import Values
from windwall.results.views import sentence

__all__ = ["Caution", "Gain", "NamedNumber", "Told", "Use"]


class Told(Values):
    """Something that is told in a sentence beside its numbers."""

    __slots__ = ()

    @property
    def sentence(self) -> str:
        """What there is to know, in the units of the scenario."""
        return sentence(self)

    def to_dict(self) -> dict[str, Any]:
        return super().to_dict() | {"sentence": self.sentence}


class Caution(Told):
    """Something to know about an answer: one of a closed list of words, and where."""

    __slots__ = ()


class NamedNumber(Values):
    """A word of a closed list and the one number that belongs to it."""

    __slots__ = ()

    @property
    def number(self) -> float | None:
        return next(value for value in self.values() if not isinstance(value, str))


class Use(NamedNumber):
    """One line of an account of power: what for, in which part, how many watts."""

    __slots__ = ()


class Gain(NamedNumber):
    """What a small change would add to the speed; None where the changed vehicle has none."""

    __slots__ = ()
