"""One operating point, or a part of it: numbers with their units and meanings."""

from __future__ import annotations

from functools import cache
from typing import Any

from windwall import _core
from windwall.quantities.measures import Measure
from windwall.results.scenario_info import ScenarioInfo
from windwall.results.values import Values
from windwall.results.views import Readable

__all__ = ["Record", "result_row"]


@cache
def result_row(address: str) -> dict[str, Any]:
    """What a result's row says; nothing where an address leads to no number."""
    return _core.result_row(address) or {}


class Record(Readable, Values):
    """Numbers of one part of an operating point, in SI.

    What is not there is None. `units()` names the unit of each number and `sentence()` says what
    it means; printing shows them in the units of the scenario.
    """

    __slots__ = ("_address",)

    def __init__(self, numbers: dict[str, Any], info: ScenarioInfo, address: str = "") -> None:
        super().__init__(numbers, info)
        object.__setattr__(self, "_address", address)

    def __reduce__(self) -> tuple[Any, ...]:
        return Record, (self._numbers, self._info, self._address)

    def _below(self, key: str, value: Any) -> Any:
        inside = isinstance(value, dict)
        return Record(value, self._info, f"{self._address}{key}/") if inside else value

    @property
    def system(self) -> str:
        """The units it is printed in."""
        return self._info.system

    def _row(self, key: str) -> dict[str, Any]:
        return result_row(self._address + key)

    def sentence(self, key: str) -> str:
        """What a number means."""
        return self._row(key).get("sentence", "")

    def units(self) -> dict[str, str]:
        """The SI unit of each number, by its address from here."""
        found: dict[str, str] = {}
        for key, value in self.items():
            if isinstance(value, Record):
                found |= {f"{key}/{below}": unit for below, unit in value.units().items()}
            elif "si" in self._row(key):
                found[key] = self._row(key)["si"]
        return found

    def measure(self, key: str) -> Measure | None:
        """What a number measures."""
        row = self._row(key)
        return Measure.of_row(row) if "unit" in row else None
