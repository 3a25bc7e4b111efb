"""Every combination of the values of some inputs, without a list of them."""

from __future__ import annotations

from collections.abc import Iterator
from math import prod
from typing import NamedTuple

import numpy as np

from windwall.study.chunks import pieces

__all__ = ["Block", "Grid", "runs_of"]


class Block(NamedTuple):
    """A part of a grid that is a box of it and a run of its variants, both at once."""

    box: tuple[slice, ...]
    variants: range

    @property
    def shape(self) -> tuple[int, ...]:
        return tuple(one.stop - one.start for one in self.box)


class Grid:
    """Variants in the order of nested loops, the last input innermost. Values are SI."""

    def __init__(self, axes: dict[str, list[float]]) -> None:
        self.axes = {address: np.asarray(values, float) for address, values in axes.items()}
        self.shape = tuple(map(len, self.axes.values()))
        self.size = prod(self.shape)

    def columns(self, variants: range | list[int]) -> np.ndarray:
        """(inputs, variants): the value of every input in each of them."""
        places = np.unravel_index(np.asarray(variants, np.int64), self.shape)
        pairs = zip(self.axes.values(), places, strict=True)
        return np.stack([values[place] for values, place in pairs])

    def box_shape(self, most: int) -> tuple[int, ...]:
        """That of the blocks: whole from some dimension on, so that each is a run of variants."""
        shape, inner = [1] * len(self.shape), 1
        for at in reversed(range(len(self.shape))):
            shape[at] = max(1, min(self.shape[at], most // inner))
            inner *= shape[at]
            if shape[at] < self.shape[at]:
                break
        return tuple(shape)

    def blocks(self, most: int) -> Iterator[Block]:
        """All of it, in boxes of at most so many variants."""
        step = self.box_shape(most)
        counts = [-(-whole // part) for whole, part in zip(self.shape, step, strict=True)]
        first = 0
        for number in range(prod(counts)):
            corner = np.unravel_index(number, counts)
            box = tuple(
                slice(int(at) * part, min((int(at) + 1) * part, whole))
                for at, part, whole in zip(corner, step, self.shape, strict=True)
            )
            size = prod(one.stop - one.start for one in box)
            yield Block(box, range(first, first + size))
            first += size


def runs_of(grid: Grid, most: int, piece: int) -> Iterator[range]:
    """The variants of each piece: blocks are cut alike, whether they are written or not."""
    for block in grid.blocks(most):
        yield from pieces(block.variants.start, block.variants.stop, piece)
