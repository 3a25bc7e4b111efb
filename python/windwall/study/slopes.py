"""Straight lines through the model, over numbers as standard normal deviations."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING, NamedTuple

if TYPE_CHECKING:
    from numpy import ndarray

__all__ = ["Model", "Slopes", "slopes", "worlds_about"]


# From standard normal deviations (worlds, numbers) to answers (worlds, answers).
Model = Callable[["ndarray"], "ndarray"]


class Slopes(NamedTuple):
    """Answers in the middle (answers), and their slopes (answers, numbers) per deviation."""

    middle: ndarray
    gradient: ndarray


def worlds_about(middle: ndarray, step: float = 1.0) -> ndarray:
    """The middle, then each number one step up and one down: (1 + 2 numbers, numbers)."""
    import numpy as np

    each = step * np.eye(len(middle))
    return np.concatenate([middle[None, :], middle + each, middle - each])


def slopes(at: ndarray, model: Model, step: float = 1.0) -> Slopes:
    """Differences over two steps about a place (numbers); over one where the other side has no
    answer, none where neither has. All of them are one batch of worlds.
    """
    import numpy as np

    found, count = model(worlds_about(at, step)), len(at)
    middle, up, down = found[0], found[1 : 1 + count], found[1 + count :]
    both = (up - down) / 2
    above = np.where(np.isfinite(both), both, up - middle)
    slope = np.where(np.isfinite(above), above, middle - down)
    return Slopes(middle, np.where(np.isfinite(slope), slope, 0.0).T / step)
