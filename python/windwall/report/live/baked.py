"""Answers worked out beforehand, for a page without the compiled core, and how far the page is off
between them.

The speed is that of the file, plus what each slider adds alone, plus what each two add together
beyond that; the page interpolates both along straight lines between a few positions of each slider.
What three and more add together is left out, and counts in the error, which is found by solving at
positions drawn at random.
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import combinations, pairwise
from typing import TYPE_CHECKING, Any

from windwall import _core
from windwall.report.live.slider import Slider
from windwall.scenario.data import ScenarioData
from windwall.study.variants import speeds

if TYPE_CHECKING:
    import numpy as np

__all__ = [
    "NODES", "SEED", "TRIED", "Baked", "Steps", "along", "baked", "differences", "drawn", "errors",
    "estimate", "every_second", "nodes", "plain", "solved", "split",
]  # fmt: skip

NODES = 9  # of a slider
TRIED = 25  # positions, for each number of sliders moved
SEED = 20
Steps = list[int]
Baked = dict[str, Any]


def baked(scenario: ScenarioData, sliders: Sequence[Slider]) -> Baked:
    """Per column in SI: `file`; `alone`, what each slider adds at its positions `alone_at`;
    `together`, what each two add further at `together_at` of both, the first in rows. None where
    there is no answer. `errors`, m/s: the largest for 1, 2, 3... sliders moved; `tried` of each.
    """
    made = differences(scenario, sliders)
    return made | {"tried": TRIED, "errors": errors(scenario, sliders, made)}


def differences(scenario: ScenarioData, sliders: Sequence[Slider]) -> Baked:
    """What sliders add, alone and in pairs."""
    alone_at = [nodes(one) for one in sliders]
    together_at = [every_second(ks) for ks in alone_at]
    pairs = list(combinations(range(len(sliders)), 2))
    asked = [{i: k} for i, ks in enumerate(alone_at) for k in ks]
    asked += [{i: a, j: b} for i, j in pairs for a in together_at[i] for b in together_at[j]]
    found = solved(scenario, sliders, [{}, *asked])
    return {
        "alone_at": alone_at,
        "together_at": together_at,
        "columns": {
            name: split(column, alone_at, together_at, pairs) for name, column in found.items()
        },
    }


def split(
    column: np.ndarray,
    alone_at: list[Steps],
    together_at: list[Steps],
    pairs: list[tuple[int, int]],
) -> dict[str, Any]:
    """One column as differences, in the order in which it was asked for."""
    rest = iter(column.tolist())
    file = next(rest)
    alone = [{k: next(rest) - file for k in ks} for ks in alone_at]
    together = [
        [
            [plain(next(rest) - file - alone[i][a] - alone[j][b]) for b in together_at[j]]
            for a in together_at[i]
        ]
        for i, j in pairs
    ]
    return {
        "file": plain(file),
        "alone": [[plain(one) for one in of.values()] for of in alone],
        "together": together,
    }


def plain(number: float) -> float | None:
    """For JSON, with digits enough."""
    return round(number, 7) if number == number else None


def nodes(one: Slider, count: int = NODES) -> Steps:
    """Positions spread over a slider, with its ends and the file's."""
    left = round((count - 1) * -one.low / (one.high - one.low))
    left = min(max(left, one.low < 0), count - 1 - (one.high > 0))
    right = count - 1 - left
    below = [round(one.low * i / left) for i in range(left, 0, -1)]
    return sorted({*below, 0, *(round(one.high * i / right) for i in range(1, right + 1))})


def every_second(ks: Steps) -> Steps:
    """Every second position either way from the file's, and both ends."""
    middle = ks.index(0)
    return [k for at, k in enumerate(ks) if (at - middle) % 2 == 0 or at in (0, len(ks) - 1)]


def solved(
    scenario: ScenarioData, sliders: Sequence[Slider], asked: Sequence[dict[int, int]]
) -> dict[str, np.ndarray]:
    """The columns with some sliders moved by so many steps."""
    import numpy as np

    steps = np.array([[moved.get(i, 0) for i in range(len(sliders))] for moved in asked])
    inputs = {}
    for one, column in zip(sliders, steps.T, strict=True):
        met, where = np.unique(column, return_inverse=True)
        given = [scenario.get(one.address) if k == 0 else one.given(int(k)) for k in met]
        inputs[one.address] = np.array(_core.axis(scenario.core, one.address, given))[where]
    return speeds(scenario, inputs)


def errors(scenario: ScenarioData, sliders: Sequence[Slider], made: Baked) -> list[float | None]:
    """The largest error found of the speed for each number of sliders moved, m/s."""
    import random

    draw = random.Random(SEED)
    counts = range(1, len(sliders) + 1)
    asked = [drawn(sliders, count, draw) for count in counts for _ in range(TRIED)]
    found = solved(scenario, sliders, asked)["speed"].tolist()
    estimates = [estimate(made, "speed", moved) for moved in asked]
    worst = []
    for count in counts:
        off = [
            abs(true - guess)
            for true, guess, moved in zip(found, estimates, asked, strict=True)
            if len(moved) == count and guess is not None and true == true
        ]
        worst.append(plain(max(off, default=float("nan"))))
    return worst


def drawn(sliders: Sequence[Slider], count: int, draw: Any) -> dict[int, int]:
    """So many sliders moved, each to anywhere."""
    moved = sorted(draw.sample(range(len(sliders)), count))
    return {i: draw.choice([k for k in _all(sliders[i]) if k]) for i in moved}


def _all(one: Slider) -> range:
    return range(one.low, one.high + 1)


def estimate(made: Baked, column: str, moved: dict[int, int]) -> float | None:
    """What the page shows; None beside a position without an answer."""
    of = made["columns"][column]
    terms = [of["file"]]
    for i, k in moved.items():
        terms.append(along(made["alone_at"][i], of["alone"][i], k))
    count = len(made["alone_at"])
    for (i, j), table in zip(combinations(range(count), 2), of["together"], strict=True):
        if i in moved and j in moved:
            rows = [along(made["together_at"][j], row, moved[j]) for row in table]
            terms.append(along(made["together_at"][i], rows, moved[i]))
    return None if None in terms else sum(terms)


def along(at: Steps, values: Sequence[float | None], k: int) -> float | None:
    """On the straight line between two positions."""
    for (x, y), (a, b) in zip(pairwise(at), pairwise(values), strict=True):
        if x <= k <= y:
            return None if a is None or b is None else a + (b - a) * (k - x) / (y - x)
    return None
