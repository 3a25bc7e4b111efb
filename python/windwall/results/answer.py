"""What every answer shares."""

from __future__ import annotations

from functools import cache
from typing import Any, ClassVar

from windwall import _core
from windwall.errors import NoAnswer
from windwall.results.diagnosis import Diagnosis
from windwall.results.smaller_jet import SmallerJet
from windwall.results.standing_start import Shortfall
from windwall.results.values import Values
from windwall.results.views import Discussed, Readable, document, summary

__all__ = ["Answer", "answer_rows"]


@cache
def answer_rows(question: str) -> dict[str, Any]:
    """What the rows of an answer say, by key."""
    return _core.answer_rows()[question]["rows"]


class Answer(Discussed, Values):
    """The rows of an answer are its attributes. Numbers are SI; printing shows the usual units."""

    __slots__ = ()
    question: ClassVar[str]  # as the core calls it

    def to_dict(
        self, diagnosis: Diagnosis | None = None, drawn: Readable | None = None
    ) -> dict[str, Any]:
        """Everything as plain numbers in SI, ready for JSON; with `car.diagnose()` and what was
        drawn, those too.
        """
        return document(self, **_further(diagnosis, drawn))

    def summary(
        self,
        diagnosis: Diagnosis | None = None,
        drawn: Readable | None = None,
        driven: Shortfall | NoAnswer | None = None,
        sprays: tuple[SmallerJet, ...] | None = None,
    ) -> str:
        """As text. Nothing is solved for it; `car.diagnose()` puts what was observed beside it,
        `car.drawn_speed()` or `car.drawn_ranking(...)` how sure it is, `car.shortfall()` where a
        driven run ends, `car.smaller_jets()` what smaller jets make of a spray that takes much.
        """
        return summary(self, **_further(diagnosis, drawn, driven, sprays))


def _further(
    diagnosis: Diagnosis | None,
    drawn: Readable | None,
    driven: Shortfall | NoAnswer | None = None,
    sprays: tuple[SmallerJet, ...] | None = None,
) -> dict[str, Any]:
    given = {"diagnosis": diagnosis, "drawn": drawn, "driven": driven, "sprays": sprays}
    return {key: one for key, one in given.items() if one is not None}
