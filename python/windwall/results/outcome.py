"""What every answer shares: how the question ended, and numbers only where there are any."""

from __future__ import annotations

from typing import Any

from windwall.errors import NoAnswer
from windwall.quantities.finite import finite
from windwall.results.entry import Caution
from windwall.results.record import Record
from windwall.results.scenario_info import ScenarioInfo
from windwall.results.views import Readable, document, frame, sentence


class Outcome(Readable):
    """An answer, or why there is none. Pickles as its numbers."""

    def __init__(self, numbers: dict[str, Any], info: ScenarioInfo) -> None:
        self._numbers = numbers
        self._info = info

    @property
    def scenario_info(self) -> ScenarioInfo:
        """What a reader needs to know about the scenario."""
        return self._info

    @property
    def numbers(self) -> dict[str, Any]:
        """Everything as the core answered it."""
        return self._numbers

    @property
    def status(self) -> str:
        """One of a closed list of words; `solved` and `knock_limited` are answers."""
        return self._numbers["ending"]["status"]

    @property
    def answered(self) -> bool:
        return self._numbers["ending"]["answered"]

    @property
    def sentence(self) -> str:
        """How it ended, with numbers in the units of the scenario."""
        return sentence(self)

    @property
    def cautions(self) -> list[Caution]:
        return [Caution(one, self._info) for one in self._numbers["cautions"]]

    @property
    def worst_residual(self) -> tuple[str, float]:
        """The part whose balance is furthest off, and by what share of its flow."""
        ending = self._numbers["ending"]
        return ending["part"], ending["residual"]

    @property
    def evaluations(self) -> int:
        """How often the balance was evaluated."""
        return self._numbers["ending"]["evaluations"]

    def _number(self, key: str) -> Any:
        if not self.answered:
            raise NoAnswer(self.sentence, self.status)
        return self._numbers[key]

    @property
    def point(self) -> Record:
        """Everything that one operating point answers."""
        return Record(self._number("point"), (), self._info.system)

    @property
    def stations(self) -> Any:
        """The gas from station to station, a pandas DataFrame in SI; units in `attrs`."""
        return frame(self)

    def to_dict(self) -> dict[str, Any]:
        """Everything as plain numbers in SI, ready for JSON."""
        return document(self)

    def __eq__(self, other: object) -> bool:
        # Numbers that are none are equal here, as they are not among floats.
        return type(self) is type(other) and finite(vars(self)) == finite(vars(other))

    __hash__ = None  # type: ignore[assignment]
