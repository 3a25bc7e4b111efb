"""A scenario as data: one vehicle, one day, one goal and the menu of upgrades. It never changes."""

from __future__ import annotations

import hashlib
import json
import os
from collections.abc import Mapping
from pathlib import Path
from typing import Any, Self

import rfc8785

from windwall import _core
from windwall.errors import Problem, ScenarioError, whole_letters
from windwall.quantities.measures import Measure
from windwall.quantities.si import accepted, is_foreign
from windwall.results.ranking import Upgrade
from windwall.scenario import files
from windwall.scenario.bare_speeds import far_speeds
from windwall.scenario.embedded import taken_out
from windwall.scenario.installing import Fitted, for_core, with_meant

__all__ = [
    "KNOCK_ANCHOR", "LISTENED_FOR", "MENU", "ScenarioData", "a_scenario", "as_bytes", "of_the_menu",
]  # fmt: skip

MENU = "upgrades/"
KNOCK_ANCHOR = "engine/knock_anchor/octane_number"
LISTENED_FOR = 5.0  # octane numbers, one standard deviation; see docs/physics/knock.md


class ScenarioData:
    """One scenario file, understood. `set` and `install` make another one and leave this alone.

    Pickles as its text, so that it can be sent to other processes and machines.
    """

    __slots__ = ("_heading", "core", "source")

    def __init__(self, core: _core.Scenario, source: str = "") -> None:
        self.core = core
        self._heading = _core.heading(core)
        self.source = source

    @classmethod
    def read(cls, text: str | bytes, source: str = "scenario") -> Self:
        """A scenario from the text of its file, or of a page that holds one; `source` only names it
        in messages.
        """
        name = files.shown(source)
        return cls(_core.loads(taken_out(as_bytes(text), name), name), name)

    def __reduce__(self) -> tuple[Any, ...]:
        return type(self).read, (self.text(), self.source)

    def __eq__(self, other: object) -> bool:
        return isinstance(other, ScenarioData) and self.text() == other.text()

    def __hash__(self) -> int:
        return hash(self.digest)

    @property
    def title(self) -> str:
        return self._heading["title"]

    @property
    def name(self) -> str:
        """What answers call it: its title, or the words of its file's name, never a path."""
        return self.title or Path(self.source).stem.replace("_", " ").strip().capitalize()

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
        return hashlib.sha256(rfc8785.dumps(json.loads(self.core.physics()))).hexdigest()

    @property
    def upgrades(self) -> dict[str, Upgrade]:
        """The menu, by id, in the order of the file."""
        return {entry["id"]: Upgrade(entry) for entry in _core.menu(self.core)}

    @property
    def outings(self) -> dict[str, dict[str, Any]]:
        """What may be driven, by id, each as the file states it."""
        return {entry["id"]: entry for entry in self.document().get("outings", [])}

    @property
    def limits(self) -> list[dict[str, Any]]:
        """Bounds on results, stated and built in, SI."""
        return _core.limits(self.core)

    @property
    def unrated(self) -> list[str]:
        """Results that nobody has rated, so that nothing is said about them."""
        return _core.unrated(self.core)

    @property
    def observed(self) -> list[dict[str, Any]]:
        """What the vehicle was seen to do; numbers as (value, sigma), SI."""
        return _core.observed(self.core)

    @property
    def class_values(self) -> list[dict[str, Any]]:
        """What the design of the engine says of its values, SI; none where it is not described."""
        return _core.class_values(self.core)

    @property
    def rated_fit(self) -> dict[str, Any] | None:
        """How the stock engine meets its rated figures, SI; None where none are stated."""
        return _core.rated_fit(self.core)

    def get(self, address: str) -> Any:
        """What stands at an input address: an SI float, a word, a list; None where it is empty."""
        return self.core.get(whole_letters(address))

    def sigma(self, address: str) -> float:
        """One standard deviation of an input, SI: as the file says, or that of the default."""
        return _core.sigma(self.core, whole_letters(address))

    def known_to(self, address: str) -> float:
        """The same, but that nobody knows exactly where an engine knocks."""
        return self.knock_sigma if address == KNOCK_ANCHOR else self.sigma(address)

    @property
    def has_knock_anchor(self) -> bool:
        """Whether the engine knows anything of knock; a torque curve does not."""
        try:
            self.sigma(KNOCK_ANCHOR)
        except (ScenarioError, ValueError, KeyError):
            return False
        return True

    @property
    def spark_is_chosen(self) -> bool:
        """Whether the model chooses the spark, where no table of the builder's states it."""
        return not self.has_knock_anchor or self.get("engine/spark/policy") == "hold_margin"

    @property
    def knock_sigma(self) -> float:
        """How well the knock margin is known, octane numbers. Nobody knows where an engine knocks
        exactly, so an anchor that is stated without its ± is taken as any other listened for.
        """
        return (self.sigma(KNOCK_ANCHOR) if self.has_knock_anchor else 0) or LISTENED_FOR

    def at_knock_anchor(self, octane_number: float) -> Self:
        """The scenario with its knock anchor moved and known as well as before: the margin that is
        kept follows from that.
        """
        return self.set({KNOCK_ANCHOR: f"{octane_number!r} ± {self.knock_sigma!r}"})

    def given(self, address: str) -> bool:
        """Whether the file states this value rather than leaving it at its default."""
        return _core.given(self.core, whole_letters(address))

    def measure(self, address: str) -> Measure:
        """What an input measures."""
        return Measure(*_core.measure(self.core, whole_letters(address)))

    def readable(self, address: str, digits: int = 4) -> str:
        """An input as people of this scenario's units read it."""
        value = self.get(address)
        if not isinstance(value, float):
            return "none" if value is None else str(value)
        return self.measure(address).short(value, self.system, digits)

    def set(self, changes: Mapping[str, Any]) -> Self:
        """Another scenario with these values: texts with units, or floats in SI; a bare number
        that would be a speed far beyond the one that stands there, or beyond what the vehicle
        reaches, has to say its unit.
        """
        stated = [(whole_letters(key), self._stated(key, value)) for key, value in changes.items()]
        made = type(self)(self.core.set(stated), self.source)
        if far := [one for key, value in changes.items() for one in far_speeds(self, key, [value])]:
            raise ScenarioError(far, "set")
        return made

    def _stated(self, address: str, value: Any) -> Any:
        if value is None or isinstance(value, bool):
            return value
        if is_foreign(value):
            return accepted(value, self.measure(address).si)
        if isinstance(value, (list, tuple)):
            return _numbers(address, value)
        return accepted(value, "")

    def install(self, *what: Fitted) -> Self:
        """Another scenario with these upgrades fitted; the menu keeps the others.

        What is fitted is named by its id, or by a set of a ranking. Where an upgrade leaves a
        choice it takes the value that is stated, `{"gearing": 27}` (of several choices
        `{"gearing": {address: value}}`), and else the fastest, found by solving; `chosen` says
        which.
        """
        ids, values = for_core(what)
        try:
            return type(self)(self.core.fit(ids, values), self.source)
        except ScenarioError as wrong:
            raise with_meant(wrong, self.upgrades) from None

    def shown_in(self, system: str | None) -> Self:
        """The same with everything printed in metric or us units; None leaves it as the file
        says.
        """
        if system is None or system == self.system:
            return self
        return self.restated(self.document() | {"units": system})

    def restated(self, document: Mapping[str, Any]) -> Self:
        """The scenario of another document, under the same name."""
        return type(self).read(json.dumps(document), self.source)

    def without_menu(self) -> dict[str, Any]:
        """Its document without upgrades, and without what is said of their numbers."""
        document = self.document() | {"upgrades": []}
        pairs = document.pop("correlations", [])
        kept = [one for one in pairs if not any(map(of_the_menu, one["between"]))]
        return document | ({"correlations": kept} if kept else {})

    def text(self) -> str:
        """The text of its file, with units as typed."""
        return self.core.text()

    def document(self) -> dict[str, Any]:
        """The same as the dicts and lists of its JSON."""
        return json.loads(self.text())

    def save(self, path: str | os.PathLike[str]) -> None:
        """Writes its file; one that is there is replaced once the new one is whole."""
        files.write(path, self.text())


def of_the_menu(address: str) -> bool:
    """Whether an address is that of something that an upgrade brings."""
    return address.startswith(MENU)


def a_scenario(given: Any, call: str) -> Any:
    """What a question is asked of; a name of a file is not yet one."""
    if isinstance(given, ScenarioData):
        return given
    what = f"a {type(given).__name__}"
    if isinstance(given, (str, os.PathLike)):
        what = f'a text; write {call}(load("{files.shown(given)}"))'
    raise TypeError(f"{call} wants a scenario, and this is {what}")


def _numbers(address: str, values: Any) -> list[float]:
    try:
        return [float(one) for one in values]
    except (TypeError, ValueError):
        said = "a list holds plain numbers; one value is a text by itself, with its unit"
        raise ScenarioError([Problem(address, 0, 0, said)], "set") from None


def as_bytes(text: str | bytes) -> bytes:
    """What the core reads; half a letter in it is refused there, with its place."""
    return text if isinstance(text, bytes) else text.encode("utf-8", "surrogatepass")
