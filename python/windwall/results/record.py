"""Results as plain objects: one attribute for each row that the core answers."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from functools import cache
from typing import Any

from windwall import _core
from windwall.quantities.measures import Measure
from windwall.results.views import Readable


@cache
def _tree() -> dict[str, Any]:
    return _core.result_rows()


@cache
def answer_units(answer: str) -> dict[str, str]:
    """The SI unit of every number of an answer, by the keys that lead to it."""
    return dict(_units(_core.answer_rows()[answer], ""))


def _units(place: dict[str, Any], above: str) -> Iterator[tuple[str, str]]:
    for key, row in place.get("rows", {}).items():
        if "si" in row:
            yield above + key, row["si"]
        yield from _units(row, f"{above}{key}/")


@cache
def rows_at(path: tuple[str, ...]) -> dict[str, Any]:
    """What the rows of one struct of the results say, by the keys and kinds that lead to it."""
    here = _tree()
    for step in path:
        inside = here.get("rows") or here["kinds"]
        here = inside[step]
    return here


@cache
def result_row(address: str) -> dict[str, Any]:
    """What a result's row says, from its address alone."""
    places = [_tree()]
    for key in address.split("/"):
        # The id of a part does not say its kind; all kinds that have a key agree on it.
        places = [row for place in places for row in _below(place, key)]
    return places[0]


def _below(place: dict[str, Any], key: str) -> list[dict[str, Any]]:
    if "kinds" in place:
        return list(place["kinds"].values())
    return [place["rows"][key]] if key in place.get("rows", {}) else []


class Record(Readable, Mapping):
    """Numbers of one part of an answer, in SI, as attributes and as items.

    What is not there is None. `units()` names the unit of each number and `sentence()` says what
    it means; printing shows them in the units of the scenario.
    """

    __slots__ = ("_path", "_system", "_values")

    def __init__(self, values: dict[str, Any], path: tuple[str, ...], system: str) -> None:
        for name, value in (("_values", values), ("_path", path), ("_system", system)):
            object.__setattr__(self, name, value)

    def __reduce__(self) -> tuple:
        return Record, (self._values, self._path, self._system)

    def __getattr__(self, key: str) -> Any:
        try:
            return self[key]
        except KeyError:
            known = ", ".join(self._values)
            raise AttributeError(f"no {key!r} here; there are {known}") from None

    def __setattr__(self, key: str, value: Any) -> None:
        raise AttributeError("results do not change")

    def __dir__(self) -> list[str]:
        return [*super().__dir__(), *self._values]

    def __getitem__(self, key: str) -> Any:
        """By key, or by an address such as `charge_path/blower/outlet/temperature`."""
        first, _, rest = key.partition("/")
        value = self._values[first]
        if isinstance(value, dict):
            value = Record(value, (*self._path, *self._step(first, value)), self._system)
        return value[rest] if rest else value

    @property
    def system(self) -> str:
        """The units it is printed in."""
        return self._system

    def __iter__(self) -> Iterator[str]:
        return iter(self._values)

    def __len__(self) -> int:
        return len(self._values)

    def __eq__(self, other: object) -> bool:
        return isinstance(other, Record) and self.__reduce__() == other.__reduce__()

    __hash__ = None  # type: ignore[assignment]

    def _step(self, key: str, value: dict[str, Any]) -> tuple[str, ...]:
        # An entry of a list of parts is described by its kind, not by the id the file gives it.
        return (value["kind"],) if "kinds" in rows_at(self._path) else (key,)

    def _row(self, key: str) -> dict[str, Any]:
        return rows_at(self._path).get("rows", {}).get(key, {})

    def sentence(self, key: str) -> str:
        """What a number means."""
        return self._row(key).get("sentence", "")

    def units(self) -> dict[str, str]:
        """The SI unit of each number, by its address from here."""
        found = {}
        for key in self:
            value = self[key]
            if isinstance(value, Record):
                found |= {f"{key}/{below}": unit for below, unit in value.units().items()}
            elif "si" in self._row(key):
                found[key] = self._row(key)["si"]
        return found

    def measure(self, key: str) -> Measure | None:
        """What a number measures."""
        row = self._row(key)
        return Measure(row["dimension"], row["unit"]) if "unit" in row else None

    def to_dict(self) -> dict[str, Any]:
        """The same as nested dicts of plain numbers."""
        return {
            key: value.to_dict() if isinstance(value, Record) else value
            for key, value in self.items()
        }
