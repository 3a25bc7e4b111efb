"""Top speed over a grid of inputs, as an xarray Dataset."""

from __future__ import annotations

import os
from collections.abc import Iterable, Iterator, Mapping, Sequence
from functools import partial
from math import prod
from typing import TYPE_CHECKING, Any, NamedTuple

from windwall import _core
from windwall.errors import ScenarioError
from windwall.quantities.si import accepted
from windwall.scenario.arguments import listed
from windwall.scenario.bare_speeds import far_speeds
from windwall.scenario.data import ScenarioData, a_scenario
from windwall.study.carry_out import Means, carried_out, means_of
from windwall.study.chunks import size_by_cost
from windwall.study.executors import Executor, lanes_of
from windwall.study.grid import Grid, runs_of
from windwall.study.journal import JournalLike, study_key
from windwall.study.larger_than_memory import Blocks, Store, fill
from windwall.study.progress import Progress, listener
from windwall.study.sweep_layout import Layout
from windwall.study.tasks import Task, swept, tasks_of, unpacked

if TYPE_CHECKING:
    import xarray

__all__ = ["BLOCK", "MOST_VARIANTS", "Asked", "Target", "sweep"]

Target = str | os.PathLike[str]
MOST_VARIANTS = 2_000_000  # in memory

BLOCK = 1 << 16  # variants that are written at once where memory is not to hold them all


def sweep(
    scenario: ScenarioData,
    inputs: Mapping[str, Iterable[Any]],
    outputs: Sequence[str] = (),
    progress: bool | Progress | None = None,
    threads: int = 0,
    executor: Executor = None,
    journal: JournalLike = None,
    to: Target | None = None,
) -> xarray.Dataset:
    """Top speed for every combination of the values of some inputs.

    `inputs` maps addresses to values, texts with units or floats in SI; `outputs` are result
    addresses, read at the balance speed. A dimension is called by the last key of its address and
    its attribute `address` holds all of it. A missing number is NaN and `status` says why.

    `executor` is a number of processes, a pool of `concurrent.futures` or a Dask client; `journal`
    names a file that keeps what is solved, so that the same call goes on after whatever ended it;
    `to` names a Zarr store that is written as answers come, for more variants than memory holds,
    and what returns reads from it. None of them changes a bit of any answer.

    >>> grid = ww.sweep(car, {"body/mass": ["300 kg", "350 kg", "400 kg"]}, ["manifold/boost"])
    >>> grid["speed"].shape, grid["speed"].attrs["units"]
    ((3,), 'm/s')
    """
    scenario = a_scenario(scenario, "sweep")
    axes = {address: _axis(scenario, address, values) for address, values in inputs.items()}
    _check_size(axes, MOST_VARIANTS if to is None else None)
    asked = Asked(scenario, Grid(axes), listed("outputs", outputs, '["manifold/boost"]'))
    with (
        listener(progress, "sweep", "variant") as heard,
        means_of(scenario, executor, journal, threads) as means,
    ):
        if to is not None:
            return asked.written(means or Means(lanes_of(None, threads)), heard, to)
        return asked.in_pieces(means, heard) if means else asked.at_once(threads, heard)


def _axis(scenario: ScenarioData, address: str, values: Iterable[Any]) -> list[float]:
    si = scenario.measure(address).si
    given = listed(address, values, _example(scenario, address))
    if far := far_speeds(scenario, address, given):
        raise ScenarioError(far)
    return _core.axis(scenario.core, address, [accepted(value, si) for value in given])


def _example(scenario: ScenarioData, address: str) -> str:
    return f'["{scenario.readable(address)}"]'


def _check_size(axes: dict[str, list[float]], most: int | None) -> None:
    size = prod(map(len, axes.values()))
    if not axes or size == 0:
        raise ValueError("a sweep needs at least one address with at least one value")
    if most is not None and size > most:
        raise ValueError(
            f"{size} variants are more than the {most} of one sweep in memory: to='NEW.zarr' "
            "writes them as they are solved"
        )


class Asked(NamedTuple):
    """One sweep."""

    scenario: ScenarioData
    grid: Grid
    outputs: list[str]

    @property
    def layout(self) -> Layout:
        return Layout(self.scenario, self.grid, self.outputs)

    @property
    def key(self) -> str:
        axes = {address: values.tolist() for address, values in self.grid.axes.items()}
        return study_key("sweep", self.scenario.digest, axes, self.outputs)

    def at_once(self, threads: int, heard: Progress | None) -> xarray.Dataset:
        answers = self._solved(range(self.grid.size), threads, heard)
        return self.layout.dataset(answers)

    def _solved(self, variants: Any, threads: int, heard: Progress | None = None) -> dict[str, Any]:
        columns = self.grid.columns(variants)
        core = self.scenario.core
        return swept(core, list(self.grid.axes), columns, self.outputs, threads, heard)

    def in_pieces(self, means: Means, heard: Progress | None) -> xarray.Dataset:
        layout = self.layout
        answers = layout.blank([self.grid.size])
        runs = list(runs_of(self.grid, BLOCK, self._piece(means)))
        for place, answer in carried_out(self._tasks(runs), self.grid.size, means, heard):
            fill(answers, runs[place], unpacked(answer))
        return layout.dataset(answers)

    def written(self, means: Means, heard: Progress | None, to: Target) -> xarray.Dataset:
        layout = self.layout
        blocks = Blocks(self.grid, layout, self._piece(means), BLOCK)
        store = Store(to, layout, self.key, self.grid.box_shape(BLOCK))
        tasks = self._tasks(blocks.runs())
        for place, answer in carried_out(tasks, self.grid.size, means, heard):
            if (whole := blocks.add(place, unpacked(answer))) is not None:
                store.write(whole)
        left = list(blocks.waiting.values())
        for one in left:
            store.write(one)
        return store.opened(complete=not left)

    def _piece(self, means: Means) -> int:
        """Variants of a piece."""
        measured = partial(size_by_cost, self.grid.size, lambda at: self._solved(at, 1))
        journal = means.journal
        return measured() if journal is None else journal.settled(f"piece {self.key}", measured)

    def _tasks(self, runs: Iterable[range]) -> Iterator[Task]:
        make = tasks_of(
            self.scenario, "sweep", {"addresses": list(self.grid.axes), "outputs": self.outputs}
        )
        return (make(self.grid.columns(variants), len(variants)) for variants in runs)
