"""What every answer shares: how the question ended, and numbers only where there are any."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any, NamedTuple

from windwall.documents import finite
from windwall.errors import NoAnswer
from windwall.layout import Readable
from windwall.measures import LENGTH
from windwall.records import Record

if TYPE_CHECKING:
    from windwall.scenario import Scenario


class Asked(NamedTuple):
    """What was asked, and what else a reader of the answer needs to know about the scenario."""

    title: str
    system: str
    conditions: str
    knock_sigma: float
    scenario: Scenario
    goal_speed: float | None = None
    run_up: float | None = None
    mass: float | None = None
    observed: list[dict[str, Any]] = []  # noqa: RUF012  # never changed
    gears: int = 1

    @property
    def run_up_text(self) -> str:
        """The length of the goal's road."""
        return "" if self.run_up is None else LENGTH.text(self.run_up, self.system)

    def in_gear(self, gear: int) -> str:
        """The gear with a space before it; nothing where the vehicle has only one."""
        return f" in gear {gear}" if self.gears > 1 else ""

    @property
    def observed_speed(self) -> float | None:
        """The fastest that the vehicle was seen to go, m/s."""
        return max((seen["speed"][0] for seen in self.observed if seen["speed"]), default=None)


class Caution(NamedTuple):
    """Something to know about an answer: one of a closed list of words, and where."""

    about: str
    address: str
    sentence: str


class Outcome(Readable):
    """An answer, or why there is none. Pickles as its numbers."""

    def __init__(self, numbers: dict[str, Any], asked: Asked) -> None:
        self._numbers = numbers
        self._asked = asked

    @property
    def status(self) -> str:
        """One of a closed list of words; `solved` and `knock_limited` are answers."""
        return self._numbers["status"]

    @property
    def answered(self) -> bool:
        return self._numbers["answered"]

    @property
    def sentence(self) -> str:
        """How it ended, with numbers."""
        return self._numbers["sentence"]

    @property
    def cautions(self) -> list[Caution]:
        return [Caution(*caution) for caution in self._numbers["cautions"]]

    @property
    def worst_residual(self) -> tuple[str, float]:
        """The part whose balance is furthest off, and by what share of its flow."""
        return self._numbers["worst"], self._numbers["residual"]

    @property
    def evaluations(self) -> int:
        """How often the balance was evaluated."""
        return self._numbers["evaluations"]

    def _number(self, key: str) -> Any:
        if not self.answered:
            raise NoAnswer(self.sentence, self.status)
        return self._numbers[key]

    @property
    def point(self) -> Record:
        """Everything that one operating point answers."""
        return Record(self._number("point"), (), self._asked.system)

    @property
    def stations(self) -> Any:
        """The gas from station to station, a pandas DataFrame in SI; units in `attrs`."""
        from windwall.frames import stations

        return stations(self.point)

    def __eq__(self, other: object) -> bool:
        # Numbers that are none are equal here, as they are not among floats.
        return type(self) is type(other) and finite(vars(self)) == finite(vars(other))

    __hash__ = None  # type: ignore[assignment]
