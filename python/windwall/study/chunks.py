"""How a study is cut into pieces: by what they cost, and so that whoever goes on cuts it likewise.

An answer does not depend on the cuts; what a journal holds is found again by them.
"""

from __future__ import annotations

import time
from collections.abc import Callable, Iterator

__all__ = ["MOST", "PROBED", "QUICKEST", "WORK", "pieces", "power_of_two", "probed", "size_by_cost"]

WORK = 1.0  # s of one core that a piece is to take
MOST = 1 << 14  # items of a piece
PROBED = 8  # items that are tried
QUICKEST = 1e-6  # s


def pieces(start: int, stop: int, size: int) -> Iterator[range]:
    """From start to stop, each of so many but the last."""
    return (range(at, min(at + size, stop)) for at in range(start, stop, size))


def probed(items: int) -> list[int]:
    """Places spread over all items."""
    count = min(PROBED, items)
    return [(2 * one + 1) * items // (2 * count) for one in range(count)]


def size_by_cost(items: int, solve: Callable[[list[int]], object]) -> int:
    """How many items make a piece, a power of two, by the time that a few of them take."""
    places = probed(items)
    solve(places[:1])  # what is made once is no cost of an item
    began = time.process_time()
    solve(places)
    each = max((time.process_time() - began) / len(places), QUICKEST)
    return min(power_of_two(WORK / each), MOST)


def power_of_two(most: float) -> int:
    """The largest that is not more; at least 1."""
    return 1 << max(0, int(most).bit_length() - 1)
