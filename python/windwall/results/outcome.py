"""An answer about one vehicle, or why there is none."""

from __future__ import annotations

from abc import ABC, abstractmethod
from typing import Any

from windwall.errors import NoAnswer
from windwall.results.answer import Answer
from windwall.results.entry import Caution, Told
from windwall.results.knock import KnockBand
from windwall.results.record import Record
from windwall.results.views import frame

__all__ = ["Cautioned", "Outcome"]


class Cautioned(ABC):
    """An answer that there is something to know about."""

    @property
    def cautions(self) -> tuple[Told, ...]:
        """What to know about it, each with its `address`, a word `about` it and a `sentence`."""
        return self._told()

    @abstractmethod
    def _told(self) -> tuple[Told, ...]: ...


class Outcome(Answer):
    """How a question ended, and numbers only where there are any: one read off an outcome without
    an answer raises `NoAnswer` with its sentence.
    """

    __slots__ = ()
    kinds = {"cautions": Caution, "point": Record}  # noqa: RUF012  # never changed

    def __getattr__(self, key: str) -> Any:
        value = super().__getattr__(key)
        if value in (None, ()) and not self.answered:
            raise self.no_answer()
        return value

    def no_answer(self) -> NoAnswer:
        """What is raised where a number is asked for and none is there."""
        return NoAnswer(self.sentence, self.status)

    @property
    def status(self) -> str:
        """One of a closed list of words; `solved` and `knock_limited` are answers."""
        return self.ending.status

    @property
    def answered(self) -> bool:
        return self.ending.answered

    @property
    def evaluations(self) -> int:
        """How often the balance was evaluated."""
        return self.ending.evaluations

    @property
    def worst_residual(self) -> tuple[str, float]:
        """The part whose balance is furthest off, and by what share of its flow."""
        return self.ending.part, self.ending.residual

    @property
    def cautions(self) -> tuple[Caution, ...]:
        """What to know about it, with an answer or without."""
        return self["cautions"]

    @property
    def knock_band(self) -> KnockBand | None:
        """The margin with its band; `word` is likely, marginal or unlikely."""
        return KnockBand.of(self.point.knock, self.scenario_info.knock_sigma)

    @property
    def stations(self) -> Any:
        """The gas from station to station, a pandas DataFrame in SI; units in `attrs`."""
        return frame(self)
