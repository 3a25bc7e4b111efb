"""A scenario: one vehicle, one day, one goal and the menu of upgrades. It never changes."""

from __future__ import annotations

import json
import os
from collections.abc import Mapping
from pathlib import Path
from typing import TYPE_CHECKING, Any, NamedTuple

from windwall import _core, questions
from windwall.errors import Problem, ScenarioError
from windwall.held_point import HeldPoint
from windwall.layout import Readable
from windwall.measures import Measure
from windwall.observed import Compared, compare
from windwall.quantities import accepted, is_foreign
from windwall.top_speed import TopSpeed

if TYPE_CHECKING:
    import pandas

LARGEST_FILE = 4 << 20  # bytes; the core refuses more as well


class Upgrade(NamedTuple):
    """One entry of the menu."""

    id: str
    title: str
    cost: float | None
    hours: float | None
    requires: list[str]
    excludes: list[str]


class Scenario(Readable):
    """One scenario file, understood. `set` and `install` make another one and leave this alone.

    Pickles as its text, so that it can be sent to other processes and machines.
    """

    __slots__ = ("_core", "_heading", "source")

    def __init__(self, core: _core.Scenario, source: str = "") -> None:
        self._core = core
        self._heading = _core.heading(core)
        self.source = source

    def __reduce__(self) -> tuple:
        return loads, (self.text(), self.source)

    def __eq__(self, other: object) -> bool:
        return isinstance(other, Scenario) and self.text() == other.text()

    def __hash__(self) -> int:
        return hash(self.digest)

    @property
    def title(self) -> str:
        return self._heading["title"]

    @property
    def system(self) -> str:
        """The units of everything printed and plotted: metric or us."""
        return self._heading["units"]

    @property
    def currency(self) -> str:
        """The currency of every cost; empty where none is stated."""
        return self._heading["currency"]

    @property
    def digest(self) -> str:
        """SHA-256 of the physics: equal for files that mean the same, however they are typed."""
        return self._core.digest()

    @property
    def upgrades(self) -> dict[str, Upgrade]:
        """The menu, by id, in the order of the file."""
        return {entry["id"]: Upgrade(**entry) for entry in _core.menu(self._core)}

    @property
    def limits(self) -> list[dict[str, Any]]:
        """Bounds on results, stated and built in, SI."""
        return _core.limits(self._core)

    @property
    def unrated(self) -> list[str]:
        """Results that nobody has rated, so that nothing is said about them."""
        return _core.unrated(self._core)

    @property
    def observed(self) -> list[dict[str, Any]]:
        """What the vehicle was seen to do; numbers as (value, sigma), SI."""
        return _core.observed(self._core)

    def get(self, address: str) -> Any:
        """What stands at an input address: an SI float, a word, a list; None where it is empty."""
        return self._core.get(address)

    def sigma(self, address: str) -> float:
        """One standard deviation of an input, SI: as the file says, or that of the default."""
        return _core.sigma(self._core, address)

    def known_to(self, address: str) -> float:
        """The same, but that nobody knows exactly where an engine knocks."""
        return self.knock_sigma if address == questions.KNOCK_ANCHOR else self.sigma(address)

    @property
    def knock_sigma(self) -> float:
        """How well the knock margin is known, octane numbers."""
        return questions.knock_sigma(self)

    def at_knock_anchors(self) -> list[Scenario]:
        """Itself between the two that knock one standard deviation earlier and later."""
        anchor, spread = self.get(questions.KNOCK_ANCHOR), self.knock_sigma
        low, high = (self.set({questions.KNOCK_ANCHOR: anchor + way * spread}) for way in (-1, 1))
        return [low, self, high]

    def against_observed(self) -> list[Compared]:
        """The model beside every fact that was observed and that it has a number for."""
        return list(compare(self))

    def given(self, address: str) -> bool:
        """Whether the file states this value rather than leaving it at its default."""
        return _core.given(self._core, address)

    def measure(self, address: str) -> Measure:
        """What an input measures."""
        return Measure(*_core.measure(self._core, address))

    def readable(self, address: str, digits: int = 4) -> str:
        """An input as people of this scenario's units read it."""
        value = self.get(address)
        if not isinstance(value, float):
            return "none" if value is None else str(value)
        return self.measure(address).short(value, self.system, digits)

    def set(self, changes: Mapping[str, Any]) -> Scenario:
        """Another scenario with these values: texts with units, or floats in SI."""
        stated = [(address, self._stated(address, value)) for address, value in changes.items()]
        return Scenario(self._core.set(stated), self.source)

    def _stated(self, address: str, value: Any) -> Any:
        if value is None or isinstance(value, (str, bool)):
            return value
        if is_foreign(value):
            return accepted(value, self.measure(address).si)
        if isinstance(value, (list, tuple)):
            return [float(entry) for entry in value]
        return accepted(value, "")

    def install(self, *ids: str) -> Scenario:
        """Another scenario with these upgrades fitted; the menu keeps the others."""
        return Scenario(self._core.fit(list(ids)), self.source)

    def text(self) -> str:
        """The text of its file, with units as typed."""
        return self._core.text()

    def document(self) -> dict[str, Any]:
        """The same as the dicts and lists of its JSON."""
        return json.loads(self.text())

    def save(self, path: str | os.PathLike[str]) -> None:
        """Writes its file."""
        Path(path).write_text(self.text(), encoding="utf-8")

    def top_speed(self) -> TopSpeed:
        """How fast it gets, why no faster, and where the watts go."""
        return TopSpeed(_core.top_speed(self._core), questions.asked(self))

    def brief_top_speed(self) -> TopSpeed:
        """The speed and the point there alone, for asking again and again: no accounts, no limits,
        nothing of what small changes are worth.
        """
        return TopSpeed(_core.top_speed(self._core, brief=True), questions.asked(self))

    def operating_point(
        self, engine_speed: Any, opening: Any = 1.0, road_speed: Any = None
    ) -> HeldPoint:
        """The engine held at a speed: texts with units (`"4200 rpm"`) or `si(x)`."""
        stated = questions.stated(engine_speed=engine_speed, opening=opening, road_speed=road_speed)
        return HeldPoint(_core.operating_point(self._core, stated), questions.asked(self))

    def full_throttle_curve(self, gear: int | None = None, points: int = 40) -> pandas.DataFrame:
        """Full throttle over engine speed, one column for each result, SI; units in `attrs`."""
        from windwall.frames import curve

        return curve(_core.full_throttle_curve(self._core, gear, points))

    def summary(self) -> str:
        from windwall.texts.scenario import scenario_text

        return scenario_text(self)


def loads(text: str | bytes, source: str = "scenario") -> Scenario:
    """A scenario from the text of its file; `source` only names it in messages."""
    return Scenario(_core.loads(text, str(source)), str(source))


def load(path: str | os.PathLike[str]) -> Scenario:
    """A scenario from its file. Raises `ScenarioError` with everything that is wrong with it."""
    with open(path, "rb") as file:
        text = file.read(LARGEST_FILE + 1)
    return loads(text, os.fspath(path))


__all__ = ["Problem", "Scenario", "ScenarioError", "Upgrade", "load", "loads"]
