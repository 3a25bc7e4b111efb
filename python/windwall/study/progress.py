"""A bar while long work runs: only in front of a person, or where one is asked for."""

from __future__ import annotations

import sys
from collections.abc import Callable, Iterator
from contextlib import contextmanager

__all__ = ["Progress", "listener", "wanted"]

Progress = Callable[[int, int], bool | None]


def wanted(progress: bool | Progress | None) -> bool:
    """Whether to draw a bar: as asked, or else where standard error is a terminal."""
    if progress is None:
        return bool(getattr(sys.stderr, "isatty", lambda: False)())
    return progress is True


@contextmanager
def listener(progress: bool | Progress | None, work: str, unit: str) -> Iterator[Progress | None]:
    """What the core is to call about ten times a second, if anything.

    A callable of one's own is passed `(done, total)`; it stops the work by returning False.
    """
    if callable(progress):
        yield progress
        return
    if not wanted(progress):
        yield None
        return
    from tqdm.auto import tqdm

    with tqdm(desc=work, unit=unit, leave=False) as bar:

        def show(done: int, total: int) -> bool:
            bar.total = total
            bar.update(done - bar.n)
            return True

        yield show
