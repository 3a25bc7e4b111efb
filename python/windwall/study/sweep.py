"""Top speed over a grid of inputs, as an xarray Dataset."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Mapping, Sequence
from math import prod
from typing import TYPE_CHECKING, Any

from windwall import _core
from windwall.quantities.si import accepted
from windwall.results.answer import answer_rows
from windwall.results.record import result_row
from windwall.scenario.data import ScenarioData
from windwall.study.progress import Progress, listener

if TYPE_CHECKING:
    import xarray

MOST_VARIANTS = 2_000_000


def sweep(
    scenario: ScenarioData,
    inputs: Mapping[str, Iterable[Any]],
    outputs: Sequence[str] = (),
    progress: bool | Progress | None = None,
    threads: int = 0,
) -> xarray.Dataset:
    """Top speed for every combination of the values of some inputs.

    `inputs` maps addresses to values, texts with units or floats in SI; `outputs` are result
    addresses, read at the balance speed. A dimension is called by the last key of its address and
    its attribute `address` holds all of it. A missing number is NaN and `status` says why.
    """
    axes = {address: _axis(scenario, address, values) for address, values in inputs.items()}
    _check_size(axes)
    columns = _product(list(axes.values()))
    with listener(progress, "sweep", "variant") as callback:
        answers = _core.sweep(scenario.core, list(axes), columns, list(outputs), threads, callback)
    return _dataset(scenario, axes, list(outputs), answers)


def _axis(scenario: ScenarioData, address: str, values: Iterable[Any]) -> list[float]:
    si = scenario.measure(address).si
    return _core.axis(scenario.core, address, [accepted(value, si) for value in values])


def _check_size(axes: dict[str, list[float]]) -> None:
    size = prod(map(len, axes.values()))
    if not axes or size == 0:
        raise ValueError("a sweep needs at least one address with at least one value")
    if size > MOST_VARIANTS:
        raise ValueError(f"{size} variants are more than the {MOST_VARIANTS} of one sweep")


def _product(axes: list[list[float]]) -> list[Any]:
    import numpy as np

    return [grid.ravel() for grid in np.meshgrid(*axes, indexing="ij")]


def _names(addresses: Iterable[str]) -> dict[str, str]:
    """The last key, with what stands before it where that alone is not clear."""
    addresses = list(addresses)
    last = Counter(address.rsplit("/", 1)[-1] for address in addresses)

    def name(address: str) -> str:
        keys = address.split("/")
        return keys[-1] if last[keys[-1]] == 1 else "_".join(keys[-2:])

    names = {address: name(address) for address in addresses}
    clear = len(set(names.values())) == len(names)
    return names if clear else {address: address.replace("/", "_") for address in addresses}


def _dataset(
    scenario: ScenarioData,
    axes: dict[str, list[float]],
    outputs: list[str],
    answers: dict[str, Any],
) -> xarray.Dataset:
    import numpy as np
    import xarray as xr

    # Inputs and results share the names of one Dataset; what is always there comes first.
    rows = answer_rows("sweep")
    names = _names([*rows, "status", *axes, *outputs])
    dims = [names[address] for address in axes]
    shape = [len(values) for values in axes.values()]

    def grid(values: Any, **attrs: str) -> tuple:
        return dims, np.reshape(values, shape), attrs

    variables = {
        key: grid(answers[key], units=row["si"], long_name=row["sentence"])
        for key, row in rows.items()
    }
    variables["status"] = grid(np.array(answers["status"]), long_name="How the variant ended")
    for address, values in zip(outputs, answers["outputs"], strict=True):
        row = result_row(address)
        variables[names[address]] = grid(
            values, units=row["si"], long_name=row["sentence"], address=address
        )
    coords = {
        names[address]: (names[address], values, _attributes(scenario, address))
        for address, values in axes.items()
    }
    attrs = {"title": scenario.title, "digest": scenario.digest, "system": scenario.system}
    return xr.Dataset(variables, coords, attrs)


def _attributes(scenario: ScenarioData, address: str) -> dict[str, str]:
    """What a plot needs to show an input in the units of its scenario."""
    measure = scenario.measure(address)
    shown = {"dimension": measure.dimension, "shown_as": measure.unit}
    return {"units": measure.si, "address": address} | shown
