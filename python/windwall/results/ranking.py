"""Which upgrade, or which set of them, buys the most speed."""

from __future__ import annotations

from collections.abc import Iterable
from typing import TYPE_CHECKING, Any

from windwall.errors import NoAnswer
from windwall.results.answer import Answer, answer_rows
from windwall.results.entry import Told
from windwall.results.scenario_info import ScenarioInfo
from windwall.results.values import Values
from windwall.results.views import frame, sentence

if TYPE_CHECKING:
    import pandas

__all__ = [
    "ANCHORS", "CHOSEN", "JUDGED", "MIDDLE", "Chosen", "Ranking", "Upgrade", "UpgradeGain",
    "UpgradeSet", "label", "set_name",
]  # fmt: skip

ANCHORS = ("lower", "middle", "upper")
MIDDLE = 1
CHOSEN = ("chosen_lower", "chosen", "chosen_upper")  # what open choices take at each of them
JUDGED = ("cheapest_to_goal", "target")  # the sets that a reader may go by


class Upgrade(Values):
    """One entry of the menu: `id`, `title`, `cost`, `hours` and whom it requires and excludes."""

    __slots__ = ()


class Chosen(Told):
    """The value that a choice of an upgrade takes; its sentence is `27 teeth`."""

    __slots__ = ()


class UpgradeSet(Values):
    """One allowed set of upgrades, solved at three knock anchors. `car.install` takes it."""

    __slots__ = ()
    kinds = dict.fromkeys(CHOSEN, Chosen)

    @property
    def name(self) -> str:
        """Its upgrades, with the values that their choices take."""
        return set_name(map(self.label, self.upgrades))

    def label(self, upgrade: str) -> str:
        """One of its upgrades with what it chose: `gearing: 27 teeth`."""
        return label(upgrade, self.chosen)

    @property
    def choices(self) -> dict[str, dict[str, Any]]:
        """The values that its choices take, SI or as a file has them, by upgrade and address."""
        return self.choices_at(MIDDLE)

    def choices_at(self, anchor: int) -> dict[str, dict[str, Any]]:
        """The same at one of the knock anchors."""
        made: dict[str, dict[str, Any]] = {}
        for one in self[CHOSEN[anchor]]:
            value = one.text if one.number is None else one.number
            made.setdefault(one.upgrade, {})[one.address] = value
        return made

    @property
    def reason(self) -> str:
        """Why it has no answer, or which limit it passes."""
        return sentence(self)

    def ends_early(self, anchor: int = MIDDLE) -> bool:
        """Whether the model has no answer at its end, where there is thrust to spare."""
        return anchor in self.cut_short

    def to_dict(self) -> dict[str, Any]:
        return super().to_dict() | {"choices": self.choices, "reason": self.reason}


def label(upgrade: str, chosen: tuple[Chosen, ...]) -> str:
    """An upgrade with the values that its choices took."""
    values = ", ".join(one.sentence for one in chosen if one.upgrade == upgrade)
    return f"{upgrade}: {values}" if values else upgrade


def set_name(upgrades: Iterable[str]) -> str:
    """A set of upgrades in words."""
    return " + ".join(upgrades) or "as it is"


class UpgradeGain(Values):
    """What one upgrade adds at the lower, middle and upper knock anchor; NaN for none."""

    __slots__ = ()
    kinds = {"chosen": Chosen}  # noqa: RUF012  # never changed

    @property
    def label(self) -> str:
        """Its id, with the values that its choices take where it is fitted first."""
        return label(self.id, self.chosen)


class Ranking(Answer):
    """Every upgrade alone, last and by its fair share, and the best set for every budget. What its
    rows hold as places in the list of sets are attributes as those sets.
    """

    __slots__ = ("_menu", "_terms")
    question = "ranking"
    pictures = ("gains",)
    kinds = {"sets": UpgradeSet, "upgrades": UpgradeGain}  # noqa: RUF012  # never changed

    def __init__(
        self,
        numbers: dict[str, Any],
        info: ScenarioInfo,
        menu: dict[str, Upgrade],
        terms: dict[str, Any],
    ) -> None:
        super().__init__(numbers, info)
        object.__setattr__(self, "_menu", menu)
        object.__setattr__(self, "_terms", terms)

    def __reduce__(self) -> tuple[Any, ...]:
        return Ranking, (self._numbers, self._info, self._menu, self._terms)

    def _below(self, key: str, value: Any) -> Any:
        named = answer_rows(self.question)[key].get("into")
        if isinstance(value, int) and named:
            return super()._below(named, self._numbers[named][value])
        return super()._below(key, value)

    def set_at(self, place: int) -> UpgradeSet:
        """One of the sets, by its place."""
        return super()._below("sets", self._numbers["sets"][place])

    def alone_with(self, upgrade: str) -> UpgradeSet | None:
        """An upgrade with what it requires and nothing else; None where that was not solved."""
        place = self.upgrades[upgrade].fitted_first
        return None if place is None else self.set_at(place)

    def required_by(self, upgrade: str) -> UpgradeSet | None:
        """What an upgrade requires, fitted alone."""
        wanted = self.with_required(upgrade) - {upgrade}
        numbers = self._numbers["sets"]
        found = (at for at, one in enumerate(numbers) if wanted == set(one["upgrades"]))
        return next(map(self.set_at, found), None)

    def cut_short_alone(self, upgrade: str) -> tuple[bool, ...]:
        """At which anchors its gain alone is one to where answers end, or from there."""
        steps = (self.alone_with(upgrade), self.required_by(upgrade))
        return tuple(
            any(one is not None and one.ends_early(at) for one in steps)
            for at in range(len(ANCHORS))
        )

    @property
    def judged(self) -> dict[str, UpgradeSet]:
        """The sets that a reader may go by; where they are one it is the recommended one."""
        found = {name: self[name] for name in JUDGED if self[name] is not None}
        return {
            name: one
            for name, one in found.items()
            if name == JUDGED[-1] or one != found.get(JUDGED[-1])
        }

    def opinion(self, one: UpgradeSet) -> Values | None:
        """What the second model of knock makes of a set, where it was asked."""
        return next(
            (said for said in self.second_opinions if self.set_at(said["set"]) == one), None
        )

    def end_of(self, one: UpgradeSet) -> Values | None:
        """What a set that is named has where its pull ends."""
        sets, wanted = self._numbers["sets"], list(one.upgrades)
        named = (end for end in self.ends_of_pulls if sets[end["set"]]["upgrades"] == wanted)
        return next(named, None)

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
    def currency(self) -> str:
        return self._terms["currency"]

    @property
    def budget(self) -> float | None:
        return self._terms["budget"]

    @property
    def budget_of_file(self) -> bool:
        """Whether that is the file's own, rather than one that was asked with."""
        return bool(self._terms.get("budget_of_file"))

    @property
    def menu(self) -> dict[str, Upgrade]:
        return dict(self._menu)

    @property
    def base(self) -> UpgradeSet:
        """The vehicle as it is."""
        if not self.answered:
            reasons = [one.reason for one in self.sets[:1]]
            raise NoAnswer([*reasons, self.sentence][0], self.status)
        return self.set_at(0)

    @property
    def upgrades(self) -> dict[str, UpgradeGain]:
        """Every upgrade in the order of the menu."""
        return {one.id: one for one in self["upgrades"]}

    @property
    def within_budget(self) -> dict[str, UpgradeGain]:
        """The upgrades that can be paid for together with what they require."""
        return {
            key: one
            for key, one in self.upgrades.items()
            if self.affords(self._cost(self.with_required(key)))
        }

    def affords(self, cost: float) -> bool:
        """Whether a sum is within the budget, if there is one."""
        return self.budget is None or cost <= self.budget

    def may_be_named(self, one: UpgradeSet) -> bool:
        """Whether a set has an answer to the end, passes no limit and can be paid for."""
        return one.recommended and self.affords(one.cost)

    @property
    def by_members(self) -> dict[frozenset[str], UpgradeSet]:
        """Every set, by the ids of its upgrades."""
        return {frozenset(one.upgrades): one for one in self.sets}

    def with_required(self, upgrade: str) -> frozenset[str]:
        """An upgrade and everything it requires, by their ids."""
        required = (self.with_required(one) for one in self._menu[upgrade].requires)
        return frozenset({upgrade}).union(*required)

    def _cost(self, upgrades: frozenset[str]) -> float:
        return sum(self._menu[one].cost or 0.0 for one in upgrades)

    @property
    def table(self) -> pandas.DataFrame:
        """Gains in m/s, one row for each upgrade; units in `attrs`."""
        return frame(self)
