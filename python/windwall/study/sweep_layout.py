"""What a sweep's results are called, and how they lie in a Dataset or in a file of one."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Mapping, Sequence
from typing import TYPE_CHECKING, Any, NamedTuple

import numpy as np

from windwall.results.answer import answer_rows
from windwall.results.record import result_row
from windwall.scenario.data import ScenarioData
from windwall.study.grid import Grid

if TYPE_CHECKING:
    import xarray

__all__ = ["NOT_REACHED", "STATUS", "WORD", "Layout", "Variable", "unlike_names"]

STATUS = "status"
WORD = np.dtype("<U20")  # that every status fits in
NOT_REACHED = "cancelled"  # as the core calls it


class Variable(NamedTuple):
    """One result of all variants."""

    name: str
    dtype: np.dtype
    attrs: dict[str, str]

    @property
    def missing(self) -> Any:
        """What stands where nothing was solved."""
        return NOT_REACHED if self.dtype == WORD else np.nan


class Layout:
    """Of one grid of one scenario. `variables` go by what the answers call them."""

    def __init__(self, scenario: ScenarioData, grid: Grid, outputs: Sequence[str]) -> None:
        # Inputs and results share the names of one Dataset; what is always there comes first.
        rows = answer_rows("sweep")
        names = unlike_names([*rows, STATUS, *grid.axes, *outputs])
        self.shape = grid.shape
        self.dims = [names[address] for address in grid.axes]
        self.coords = {
            names[address]: (names[address], values, self._input(scenario, address))
            for address, values in grid.axes.items()
        }
        self.variables = {key: _number(key, row) for key, row in rows.items()}
        self.variables[STATUS] = Variable(STATUS, WORD, {"long_name": "How the variant ended"})
        for at, address in enumerate(outputs):
            read = _number(names[address], result_row(address), address=address)
            self.variables[str(at)] = read
        self.attrs = {"title": scenario.title, "digest": scenario.digest, "system": scenario.system}

    @staticmethod
    def _input(scenario: ScenarioData, address: str) -> dict[str, str]:
        """What a plot needs to show an input in the units of its scenario."""
        measure = scenario.measure(address)
        shown = {"dimension": measure.dimension, "shown_as": measure.unit}
        return {"units": measure.si, "address": address} | shown

    def blank(self, shape: Sequence[int]) -> dict[str, np.ndarray]:
        """Results of variants that nobody solved yet."""
        return {
            key: np.full(shape, variable.missing, variable.dtype)
            for key, variable in self.variables.items()
        }

    def dataset(self, answers: Mapping[str, Any]) -> xarray.Dataset:
        """Answers of all variants, in their order."""
        import xarray as xr

        made = {
            variable.name: (self.dims, self._column(answers[key], variable), variable.attrs)
            for key, variable in self.variables.items()
        }
        return xr.Dataset(made, self.coords, self.attrs)

    def _column(self, answer: Any, variable: Variable) -> np.ndarray:
        return np.asarray(answer, variable.dtype).reshape(self.shape)


def _number(name: str, row: Mapping[str, Any], **further: str) -> Variable:
    attrs = {"units": row["si"], "long_name": row["sentence"], **further}
    return Variable(name, np.dtype(float), attrs)


def unlike_names(addresses: Iterable[str]) -> dict[str, str]:
    """The last key, with what stands before it where that alone is not clear."""
    addresses = list(addresses)
    last = Counter(address.rsplit("/", 1)[-1] for address in addresses)

    def name(address: str) -> str:
        keys = address.split("/")
        return keys[-1] if last[keys[-1]] == 1 else "_".join(keys[-2:])

    names = {address: name(address) for address in addresses}
    clear = len(set(names.values())) == len(names)
    return names if clear else {address: address.replace("/", "_") for address in addresses}
