"""A sweep that memory does not hold, written into a Zarr store as its answers come.

The journal is what is true; the store is made of it, block by block, and begun anew each time the
sweep is asked again. So nothing half written in it can matter. A block that nobody came to has no
status at all.
"""

from __future__ import annotations

import errno
import os
import shutil
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import TYPE_CHECKING, Any

import numpy as np

from windwall.errors import Problem, ScenarioError
from windwall.scenario import files
from windwall.study.chunks import pieces
from windwall.study.grid import Block, Grid
from windwall.study.sweep_layout import Layout

if TYPE_CHECKING:
    import xarray

__all__ = ["COMPLETE", "DIMENSIONS", "STUDY", "Answers", "Blocks", "Store", "Waiting", "fill"]

STUDY, COMPLETE = "windwall_study", "complete"
DIMENSIONS = "_ARRAY_DIMENSIONS"  # how xarray finds them in a store of format 2
Answers = dict[str, np.ndarray]


class Waiting:
    """A block and those of its answers that came."""

    def __init__(self, block: Block, answers: Answers) -> None:
        self.block, self.answers = block, answers
        self.left = len(block.variants)

    def add(self, variants: range, answer: Answers) -> None:
        first = variants.start - self.block.variants.start
        fill(self.answers, range(first, first + len(variants)), answer)
        self.left -= len(variants)


class Blocks:
    """Puts together what is solved in pieces and in any order; few blocks wait at a time."""

    def __init__(self, grid: Grid, layout: Layout, piece: int, most: int) -> None:
        self.grid, self.layout, self.piece, self.most = grid, layout, piece, most
        self.waiting: dict[range, Waiting] = {}
        self._asked: dict[int, tuple[Waiting, range]] = {}

    def runs(self) -> Iterator[range]:
        """The variants of each piece, none of which belongs to two blocks."""
        place = 0
        for block in self.grid.blocks(self.most):
            size = len(block.variants)
            one = Waiting(block, self.layout.blank([size]))
            self.waiting[block.variants] = one
            for variants in pieces(block.variants.start, block.variants.stop, self.piece):
                self._asked[place] = one, variants
                place += 1
                yield variants

    def add(self, place: int, answer: Answers) -> Waiting | None:
        """The block that this answer was the last of."""
        one, variants = self._asked.pop(place)
        one.add(variants, answer)
        return self.waiting.pop(one.block.variants) if one.left == 0 else None


def fill(into: Answers, variants: range, answer: Answers) -> None:
    """Puts the answer of a run of variants in its place."""
    for key, column in answer.items():
        into[key][variants.start : variants.stop] = column


class Store:
    """One sweep as a Zarr store; see `sweep_layout` for what lies in it."""

    def __init__(
        self, path: str | os.PathLike[str], layout: Layout, study: str, box: tuple[int, ...]
    ) -> None:
        self.path, self.layout = Path(path), layout
        self.zarr = _zarr()
        self._make_room(study)
        with self._told():
            self.group = self.zarr.open_group(self.path, mode="w", zarr_format=2)
            self.group.attrs.update(layout.attrs | {STUDY: study, COMPLETE: False})
            for name, (dim, values, attrs) in layout.coords.items():
                self._array(name, [dim], values.shape, values.shape, values.dtype, attrs, np.nan)
                self.group[name][:] = values
            for variable in layout.variables.values():
                self._array(
                    variable.name, layout.dims, layout.shape, box, variable.dtype, variable.attrs,
                    np.nan if variable.dtype == float else None,  # else its words would be masked
                )  # fmt: skip

    def _array(
        self, name: str, dims: list[str], shape: Any, box: Any, dtype: Any, attrs: Any, fill: Any
    ) -> None:
        self.group.create_array(
            name, shape=shape, chunks=box, dtype=dtype, fill_value=fill,
            attributes=attrs | {DIMENSIONS: dims},
        )  # fmt: skip

    def _make_room(self, study: str) -> None:
        """What is there is written anew, if it is of the same study; nothing else is touched."""
        if not self.path.exists():
            return
        if not self._is_ours(study):
            said = "this is there already, and it is not what this sweep wrote: name another place"
            raise ScenarioError([Problem("to", 0, 0, said)], files.shown(os.fspath(self.path)))
        for one in self.path.iterdir():  # what says whose it is goes last, whatever ends this
            if one.is_dir():
                shutil.rmtree(one)

    def _is_ours(self, study: str) -> bool:
        """Whether the same study wrote it, or one that did not come as far as to say who it is."""
        try:
            attrs = dict(self.zarr.open_group(self.path, mode="r").attrs)
        except (OSError, ValueError, KeyError):
            attrs = {}
        return attrs.get(STUDY) == study or (not attrs and self._is_bare())

    def _is_bare(self) -> bool:
        """Whether nothing but the head of a store lies there, if that."""
        return self.path.is_dir() and all(one.name[:2] == ".z" for one in self.path.iterdir())

    def write(self, one: Waiting) -> None:
        """A block, whole or as far as it came."""
        with self._told():
            for key, variable in self.layout.variables.items():
                self.group[variable.name][one.block.box] = one.answers[key].reshape(one.block.shape)

    def opened(self, complete: bool) -> xarray.Dataset:
        """What was written, read when it is looked at."""
        import xarray as xr

        with self._told():
            self.group.attrs[COMPLETE] = complete
            self.zarr.consolidate_metadata(self.path, zarr_format=2)
        found = xr.open_zarr(self.path, chunks=None, zarr_format=2)
        return found[[variable.name for variable in self.layout.variables.values()]]

    @contextmanager
    def _told(self) -> Iterator[None]:
        try:
            yield
        except OSError as failed:
            if failed.errno != errno.ENOSPC:
                raise
            said = "no room is left on the disk of the results: make room and ask again"
            raise OSError(errno.ENOSPC, said, os.fspath(self.path)) from failed


def _zarr() -> Any:
    try:
        import zarr
    except ModuleNotFoundError as missing:
        raise ModuleNotFoundError(
            "results larger than memory need zarr: pip install 'windwall[studies]'", name="zarr"
        ) from missing
    return zarr
