"""Which of many need not be tried: those that a line through what was tried rules out."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from typing import TypeVar

__all__ = ["FEW", "Line", "T", "front", "spread_over"]

T = TypeVar("T")
FEW = 4  # points that no line is trusted with


def front(of: Iterable[T], cost: Callable[[T], float], worth: Callable[[T], float]) -> list[T]:
    """By cost, each better (of less worth) than all that cost no more."""
    found: list[T] = []
    best = float("inf")
    for one in sorted(of, key=lambda one: (cost(one), worth(one))):
        if worth(one) < best:
            best = worth(one)
            found.append(one)
    return found


def spread_over(of: Sequence[T], count: int) -> list[T]:
    """So many of them, evenly, the first and the last among them."""
    if len(of) <= count:
        return list(of)
    return [of[round(at * (len(of) - 1) / (count - 1))] for at in range(count)]


class Line:
    """A straight line y(x) through points as they come, and how far they lie from it."""

    def __init__(self) -> None:
        self._points: list[tuple[float, float]] = []
        self._fitted: tuple[float, float] | None = None

    def note(self, x: float, y: float) -> None:
        self._points.append((x, y))
        self._fitted = None

    def at(self, x: float) -> float:
        offset, slope = self._line()
        return offset + slope * x

    def best_at(self, x: float) -> float:
        """What y may be at the least: the line, less the most that any point lies below it."""
        if len(self._points) < FEW:
            return -float("inf")
        return self.at(x) - max(self.at(one) - y for one, y in self._points)

    @property
    def spread(self) -> float:
        """Standard deviation of the points about it."""
        if len(self._points) < FEW:
            return 0.0
        left = sum((y - self.at(x)) ** 2 for x, y in self._points)
        return (left / (len(self._points) - 2)) ** 0.5

    def _line(self) -> tuple[float, float]:
        if self._fitted is None:
            count = len(self._points)
            middle = [sum(one) / count for one in zip(*self._points, strict=True)]
            across = sum((x - middle[0]) ** 2 for x, _ in self._points)
            along = sum((x - middle[0]) * (y - middle[1]) for x, y in self._points)
            slope = along / across if across > 0 else 0.0
            self._fitted = (middle[1] - slope * middle[0], slope)
        return self._fitted
