"""Which upgrade, or which set of them, buys the most speed."""

from __future__ import annotations

from collections.abc import Iterable
from typing import TYPE_CHECKING, Any, NamedTuple

from windwall.errors import NoAnswer
from windwall.quantities.finite import finite
from windwall.results.diagnosis import Diagnosis
from windwall.results.entry import Entry
from windwall.results.scenario_info import ScenarioInfo
from windwall.results.views import Readable, document, frame, sentence, sentences, summary

if TYPE_CHECKING:
    import pandas

ANCHORS = ("lower", "middle", "upper")
MIDDLE = 1


class Upgrade(NamedTuple):
    """One entry of the menu."""

    id: str
    title: str
    cost: float | None
    hours: float | None
    requires: list[str]
    excludes: list[str]


class UpgradeSet(Entry):
    """One allowed set of upgrades, solved at three knock anchors."""

    __slots__ = ()

    @property
    def name(self) -> str:
        return " + ".join(self.upgrades) or "as it is"

    @property
    def reason(self) -> str:
        """Why it has no answer, or which limit it passes."""
        return sentence(self)

    def to_dict(self) -> dict[str, Any]:
        return super().to_dict() | {"reason": self.reason}


class UpgradeGain(Entry):
    """What one upgrade adds at the lower, middle and upper knock anchor; NaN for none."""

    __slots__ = ()


class Ranking(Readable):
    """Every upgrade alone, last and by its fair share, and the best set for every budget."""

    def __init__(
        self,
        numbers: dict[str, Any],
        info: ScenarioInfo,
        menu: dict[str, Upgrade],
        terms: dict[str, Any],
    ) -> None:
        self._numbers = numbers
        self._info = info
        self._menu = menu
        self._terms = terms

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
        """`solved`, or `cancelled` with what was done until then."""
        return self._numbers["status"]

    @property
    def complete(self) -> bool:
        """Whether every allowed set was solved."""
        return self.status == "solved"

    @property
    def answered(self) -> bool:
        """Whether there is a base speed to rank against."""
        sets = self._numbers["sets"]
        return bool(sets) and not sets[0]["upgrades"] and sets[0]["answered"]

    @property
    def sentence(self) -> str:
        """How many of the allowed sets were solved."""
        return sentence(self)

    @property
    def sentences(self) -> list[str]:
        """About first place, the knock anchors, the limits and the goal."""
        return sentences(self)

    @property
    def currency(self) -> str:
        return self._terms["currency"]

    @property
    def budget(self) -> float | None:
        return self._terms["budget"]

    @property
    def menu(self) -> dict[str, Upgrade]:
        return dict(self._menu)

    @property
    def sets(self) -> list[UpgradeSet]:
        """Every allowed set, the empty one first."""
        return [UpgradeSet(one, self._info) for one in self._numbers["sets"]]

    @property
    def base(self) -> UpgradeSet:
        """The vehicle as it is."""
        self._need()
        return self.sets[0]

    @property
    def octane(self) -> tuple[float, ...]:
        """The octane numbers of the three knock anchors."""
        return tuple(self._numbers["octane"])

    @property
    def target(self) -> UpgradeSet | None:
        """The fastest set within the budget that passes no limit; the fair shares are of it."""
        return self._one("target")

    @property
    def upgrades(self) -> dict[str, UpgradeGain]:
        """Every upgrade in the order of the menu."""
        return {one["id"]: UpgradeGain(one, self._info) for one in self._numbers["upgrades"]}

    @property
    def best_by_cost(self) -> list[UpgradeSet]:
        """Each faster than everything that costs no more."""
        return self._at(self._numbers["best_by_cost"])

    @property
    def best_by_hours(self) -> list[UpgradeSet]:
        """Each faster than everything that takes no longer."""
        return self._at(self._numbers["best_by_hours"])

    @property
    def cheapest_to_goal(self) -> UpgradeSet | None:
        """The cheapest set that reaches the goal's speed."""
        return self._one("cheapest_to_goal")

    @property
    def missing(self) -> dict[str, float | None] | None:
        """What the fastest set lacks to the goal where none reaches it: `power`, W at the flywheel,
        or `drag_area`, m2 to take off instead; None where no reasonable amount would do."""
        return self._numbers["missing"]

    @property
    def table(self) -> pandas.DataFrame:
        """Gains in m/s, one row for each upgrade; units in `attrs`."""
        return frame(self)

    def _one(self, key: str) -> UpgradeSet | None:
        index = self._numbers[key]
        return None if index is None else self.sets[index]

    def _at(self, indices: Iterable[int]) -> list[UpgradeSet]:
        sets = self.sets
        return [sets[index] for index in indices]

    def _need(self) -> None:
        if not self.answered:
            reasons = [one.reason for one in self.sets[:1]]
            raise NoAnswer(*reasons or [self.sentence], self.status)

    def __eq__(self, other: object) -> bool:
        return isinstance(other, Ranking) and finite(vars(self)) == finite(vars(other))

    __hash__ = None  # type: ignore[assignment]

    def to_dict(self, diagnosis: Diagnosis | None = None) -> dict[str, Any]:
        """Everything as plain numbers in SI, ready for JSON; with `car.diagnose()`, that too."""
        return document(self, diagnosis=diagnosis)

    def summary(self, diagnosis: Diagnosis | None = None) -> str:
        """As text. Nothing is solved for it; `car.diagnose()` puts what was observed beside it."""
        return summary(self, diagnosis=diagnosis)
