"""The file that says what the columns of a log are, read once and written once."""

from __future__ import annotations

import json
from collections.abc import Mapping as Keyed
from difflib import get_close_matches
from typing import Any, NamedTuple

from windwall import _core
from windwall.errors import Problem, ScenarioError
from windwall.logs.addresses import OF_THE_DAY, known_addresses, measure_of, wrong_address
from windwall.logs.places import Places
from windwall.logs.units import line
from windwall.quantities.measures import TIME, Measure
from windwall.scenario.data import ScenarioData

__all__ = [
    "FORMAT", "KEYS", "MARKS", "OF_A_COLUMN", "Mapped", "Mapping", "Problems", "quantity",
    "read_mapping",
]  # fmt: skip

FORMAT = "windwall-log/1"
KEYS = {
    (): ("format", "notes", "reading", "clock", "day", "columns"),
    ("reading",): ("delimiter", "decimal"),
    ("clock",): ("column", "unit"),
    ("day",): tuple(one.removeprefix("day/") for one in OF_THE_DAY),
}
OF_A_COLUMN = ("address", "unit", "lag", "sigma", "why")
MARKS = {"delimiter": (",", ";", "\t", "|", " "), "decimal": (".", ",")}


class Mapped(NamedTuple):
    """What one column is: texts as they stand in the file."""

    column: str
    address: str
    unit: str
    lag: str = "0 s"
    sigma: str = ""
    why: str = ""


class Mapping(NamedTuple):
    """What a log is, in the words of its file."""

    columns: tuple[Mapped, ...]
    clock: Keyed[str, str] = {}
    reading: Keyed[str, str] = {}
    day: Keyed[str, str] = {}
    notes: str = ""

    @property
    def stated(self) -> dict[str, Any]:
        """What the reader of the log has to know."""
        return {"reading": dict(self.reading), "clock": dict(self.clock)}

    def text(self) -> str:
        """The file."""
        made: dict[str, Any] = {"format": FORMAT}
        if self.notes:
            made["notes"] = self.notes
        for key in ("reading", "clock", "day"):
            if getattr(self, key):
                made[key] = dict(getattr(self, key))
        made["columns"] = {
            one.column: {key: value for key in OF_A_COLUMN if (value := getattr(one, key))}
            for one in self.columns
        }
        return json.dumps(made, ensure_ascii=False, indent=2) + "\n"


def read_mapping(text: str | bytes, scenario: ScenarioData, source: str = "mapping") -> Mapping:
    """The mapping of a file. Raises `ScenarioError` with everything that is wrong with it."""
    try:
        text = text.decode("utf-8-sig") if isinstance(text, bytes) else text
        document = json.loads(text)
    except UnicodeDecodeError:
        raise ScenarioError([Problem("", 1, 1, "this is no UTF-8 text")], source) from None
    except RecursionError:
        raise ScenarioError([Problem("", 1, 1, "this is nested too deep")], source) from None
    except json.JSONDecodeError as broken:
        said = f"this is not JSON: {broken.msg}"
        raise ScenarioError([Problem("", broken.lineno, broken.colno, said)], source) from None
    places = Places(text)
    problems = Problems(places)
    made = _mapping(document, scenario, problems)
    if problems.found:
        raise ScenarioError(sorted(problems.found, key=lambda one: one[1:3]), source)
    return made


class Problems:
    """What is wrong with a mapping, each with its place."""

    def __init__(self, places: Places) -> None:
        self.places = places
        self.found: list[Problem] = []
        for path in places.twice:
            self.say(path, "stands twice in one object")

    def say(self, path: tuple[str, ...], message: str) -> None:
        self.found.append(Problem("/".join(path), *self.places.of(*path), message))

    def keys(self, path: tuple[str, ...], there: Any, allowed: tuple[str, ...]) -> dict[str, Any]:
        """An object without the keys that are none."""
        if not isinstance(there, dict):
            self.say(path, f"an object is expected here, not {json.dumps(there)[:40]}")
            return {}
        for key in there:
            if key not in allowed:
                close = get_close_matches(key, allowed, 1)
                meant = (
                    f'did you mean "{close[0]}"?' if close else f"there are {', '.join(allowed)}"
                )
                self.say((*path, key), f'there is no "{key}" here; {meant}')
        return {key: value for key, value in there.items() if key in allowed}

    def texts(self, path: tuple[str, ...], there: dict[str, Any]) -> dict[str, str]:
        """The entries that are texts; all others are said."""
        for key, value in there.items():
            if not isinstance(value, str):
                self.say((*path, key), f"a text is expected here, not {json.dumps(value)[:40]}")
        return {key: value for key, value in there.items() if isinstance(value, str)}


def _mapping(document: Any, scenario: ScenarioData, problems: Problems) -> Mapping:
    root = problems.keys((), document, KEYS[()])
    if root.get("format") != FORMAT:
        problems.say(("format",), f'this is no format known here; write "{FORMAT}"')
    groups = {
        key: problems.texts((key,), problems.keys((key,), root.get(key, {}), KEYS[(key,)]))
        for key in ("reading", "clock", "day")
    }
    for key, marks in MARKS.items():
        found = groups["reading"].get(key)
        if found is not None and found not in marks:
            allowed = " ".join(json.dumps(one) for one in marks)
            problems.say(("reading", key), f"{json.dumps(found)} is none of {allowed}")
    _check_unit(("clock", "unit"), groups["clock"].get("unit"), TIME, problems)
    for key, value in groups["day"].items():
        _check_number(("day", key), value, scenario.measure(f"day/{key}"), problems)
    columns = root.get("columns", {})
    if not columns:
        problems.say(("columns",), "no column is mapped; one at least has to be")
    columns = columns if isinstance(columns, dict) else problems.keys(("columns",), columns, ())
    known = known_addresses(scenario)
    mapped = [_mapped(name, one, scenario, known, problems) for name, one in columns.items()]
    _refuse_twins([one for one in mapped if one], problems)
    return Mapping(tuple(one for one in mapped if one), notes=str(root.get("notes", "")), **groups)


def _mapped(
    name: str, there: Any, scenario: ScenarioData, known: tuple[str, ...], problems: Problems
) -> Mapped | None:
    path = ("columns", name)
    stated = problems.texts(path, problems.keys(path, there, OF_A_COLUMN))
    if "address" not in stated:
        problems.say(path, '"address" is missing; write for example "engine/speed"')
        return None
    wrong = wrong_address(scenario, stated["address"], known)
    if wrong:
        problems.say((*path, "address"), wrong)
        return None
    measure = measure_of(scenario, stated["address"])
    if "unit" not in stated and measure.si != "1":
        problems.say(path, f'"unit" is missing: in what? Write for example "{measure.unit}"')
    _check_unit((*path, "unit"), stated.get("unit"), measure, problems)
    _check_number((*path, "lag"), stated.get("lag"), TIME, problems)
    _check_number((*path, "sigma"), stated.get("sigma"), measure.spread, problems)
    return Mapped(name, **({"unit": "", **stated}))


def _check_unit(
    path: tuple[str, ...], unit: str | None, measure: Measure, problems: Problems
) -> None:
    if unit is None:
        return
    try:
        line(unit, measure)
    except ValueError as refused:
        problems.say(path, str(refused))


def _check_number(
    path: tuple[str, ...], text: str | None, measure: Measure, problems: Problems
) -> None:
    if not text:
        return
    try:
        value = quantity(text, measure)
    except ValueError as refused:
        problems.say(path, str(refused))
        return
    if path[-1] == "sigma" and value <= 0:
        problems.say(path, f"{text!r} is no spread; it is above zero")


def quantity(text: str, measure: Measure) -> float:
    """A text with its unit in SI. Raises ValueError."""
    return _core.read_quantity(text, measure.dimension, measure.unit, f"1 {measure.unit}")[0]


def _refuse_twins(mapped: list[Mapped], problems: Problems) -> None:
    first: dict[str, str] = {}
    for one in mapped:
        if one.address in first:
            message = f'"{first[one.address]}" is mapped onto {one.address} already'
            problems.say(("columns", one.column, "address"), message)
        first.setdefault(one.address, one.column)
