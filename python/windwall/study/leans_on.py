"""What a speed leans on, and what the choice between two sets of upgrades leans on.

First every number is moved alone, one standard deviation either way. Those that move an answer are
then drawn together with all others, and the variance of the answer is shared out among them.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from functools import partial
from time import perf_counter
from typing import NamedTuple

import numpy as np

from windwall.results.leans_on import ROWS, Lean, Leaning, LeansOn, LeansPlan
from windwall.results.ranking import MIDDLE, Ranking, UpgradeSet
from windwall.scenario.data import ScenarioData
from windwall.scenario.titles import titles
from windwall.study.carry_out import means_of
from windwall.study.draws import SEED, normal_draws
from windwall.study.executors import Executor
from windwall.study.journal import JournalLike
from windwall.study.prior import Prior
from windwall.study.progress import Progress, listener
from windwall.study.slopes import worlds_about
from windwall.study.sobol_indices import sobol_indices
from windwall.study.worlds import Array, WorldSpeeds, world_speeds

__all__ = [
    "BLOCK", "MOST", "NOTICED", "UNCORRELATED", "Between", "Ids", "Screened", "leans_on", "screen",
    "two_best",
]  # fmt: skip

MOST = 16  # groups of numbers that get indices of their own
NOTICED = 0.003  # share of what all steps make, below which a number goes to the rest
UNCORRELATED = 1e-9
BLOCK = 16  # rows between two looks at who waits

Ids = Sequence[str]
Between = tuple[Ids, Ids] | Ranking | None


class Screened(NamedTuple):
    """Every number moved alone."""

    groups: list[list[int]]  # of numbers that move together, what matters most first; rest last
    steps: Array  # (groups, answers), m/s for one standard deviation
    seconds: float  # that one speed took


def leans_on(
    scenario: ScenarioData,
    between: Between = None,
    rows: int = ROWS,
    most: int = MOST,
    seed: int = SEED,
    planned: Callable[[LeansPlan], None] | None = None,
    progress: bool | Progress | None = None,
    threads: int = 0,
    executor: Executor = None,
    journal: JournalLike = None,
) -> LeansOn:
    """Sobol indices of the speed, and of the difference of two sets of upgrades: two lists of ids,
    or the two best of a ranking. `rows` is a power of two; numbers that are correlated count as
    one. `planned` is told what it will cost once that is known. Ctrl-C keeps what is done.
    `executor` and `journal` are those of a sweep.
    """
    prior = Prior(scenario)
    asked = _asked(between)
    screened = screen(scenario, prior, asked, most, threads)
    plan = LeansPlan(rows, len(screened.groups) + 2, len(asked), screened.seconds)
    if planned is not None:
        planned(plan)
    with means_of(scenario, executor, journal, threads) as means:
        solve = partial(world_speeds, scenario, progress=False, threads=threads, means=means)
        block = BLOCK * (means.lanes.ahead if means else 1)
        answers = _answers(solve, prior, asked, screened.groups, rows, seed, progress, block)
    named = _titled(prior, screened.groups)
    leanings = [
        _leaning(of, answers[..., at], named, screened.steps[:, at])
        for at, of in enumerate(("speed", "difference")[: 2 if len(asked) > 1 else 1])
    ]
    done = int(np.isfinite(answers[..., 0]).any(axis=1).sum())
    return LeansOn(scenario.name, scenario.system, plan, done, asked[1:], tuple(leanings))


def two_best(ranking: Ranking) -> tuple[UpgradeSet, ...]:
    """The one to go by, and the fastest for some budget that is another; none where all are one."""
    first, steps = ranking.target, ranking.best_by_cost
    if first is None:
        return ()
    others = [one for one in (*steps, ranking.fastest) if one not in (None, first)]
    second = max(others, key=lambda one: one.speed[MIDDLE], default=None)
    return () if second is None else (first, second)


def _asked(between: Between) -> tuple[tuple[str, ...], ...]:
    """The vehicle as it is, and the two that are compared."""
    if isinstance(between, Ranking):
        between = tuple(one.upgrades for one in two_best(between))
    pair = tuple(tuple(one) for one in between or ())
    return ((), *pair) if len(pair) == 2 else ((),)


def screen(
    scenario: ScenarioData, prior: Prior, asked: Sequence[Ids], most: int, threads: int = 0
) -> Screened:
    """Moves every number alone, and sorts those that are correlated together by what they do."""
    numbers = len(prior)
    z = worlds_about(np.zeros(numbers))
    began = perf_counter()
    found = _read(world_speeds(scenario, prior.to_values(z), asked, False, threads).speed)
    seconds = (perf_counter() - began) / (len(z) * len(asked))
    moves = np.nan_to_num(found[1:] - found[0]).reshape(2, numbers, -1)
    squares = (moves**2).mean(axis=0)  # (numbers, answers)
    return Screened(*_sorted(_together(prior), squares, most), seconds)


def _read(speed: Array) -> Array:
    """The answers that are looked at: the speed as it is, and the difference of two sets."""
    return np.stack([speed[:, 0], *([speed[:, 1] - speed[:, 2]] if speed.shape[1] > 1 else [])], 1)


def _together(prior: Prior) -> list[list[int]]:
    """Numbers that are correlated, directly or through others, move together."""
    from scipy.sparse.csgraph import connected_components

    count, which = connected_components(np.abs(prior.correlation) > UNCORRELATED, directed=False)
    return [np.flatnonzero(which == one).tolist() for one in range(count)]


def _sorted(groups: list[list[int]], squares: Array, most: int) -> tuple[list[list[int]], Array]:
    """Groups by their largest share of any answer; what nobody would notice is one group, last."""
    leading = squares / np.maximum(squares.sum(axis=0), 1e-30)
    groups = [sorted(group, key=lambda one: -leading[one].max()) for group in groups]
    by_group = np.array([squares[group].sum(axis=0) for group in groups])
    share = (by_group / np.maximum(squares.sum(axis=0), 1e-30)).max(axis=1)
    order = np.argsort(-share, kind="stable")
    kept = [at for at in order[:most] if share[at] > NOTICED]
    rest = [at for at in order if at not in set(kept)]
    made = [groups[at] for at in kept] + [[one for at in rest for one in groups[at]]]
    steps = np.vstack([by_group[kept], by_group[rest].sum(axis=0)])
    return made, np.sqrt(steps)


def _answers(
    solve: Callable[..., WorldSpeeds],
    prior: Prior,
    asked: Sequence[Ids],
    groups: list[list[int]],
    rows: int,
    seed: int,
    progress: bool | Progress | None,
    height: int,
) -> Array:
    """(rows, worlds of a row, answers): a row is a world of each sample and the first with each
    group from the second. NaN where there is none or where nobody waited for it.
    """
    design = _design(normal_draws(2 * len(prior), rows, seed), groups)
    count = design.shape[1]
    found = np.full((rows, count, 2 if len(asked) > 1 else 1), np.nan)
    with listener(progress, "leans", "world") as heard:
        for block in _blocks(rows, height):
            values = prior.to_values(design[block].reshape(-1, len(prior)))
            try:
                speed = solve(values, asked).speed
            except KeyboardInterrupt:
                break
            found[block] = _read(speed).reshape(-1, count, found.shape[2])
            if heard is not None and heard(block.stop * count, rows * count) is False:
                break
    return found


def _blocks(rows: int, height: int) -> Iterator[slice]:
    return (slice(first, min(first + height, rows)) for first in range(0, rows, height))


def _design(z: Array, groups: list[list[int]]) -> Array:
    """(rows, 2 + groups, numbers)."""
    first, second = np.hsplit(z, 2)
    mixed = []
    for group in groups:
        swapped = first.copy()
        swapped[:, group] = second[:, group]
        mixed.append(swapped)
    return np.stack([first, second, *mixed], axis=1)


def _titled(prior: Prior, groups: list[list[int]]) -> list[tuple[tuple[str, ...], str]]:
    """The addresses of each group and what people call it; the rest has no name."""
    names = titles(prior.addresses)
    made = []
    for group in groups[:-1]:
        addresses = tuple(prior.addresses[one] for one in group)
        made.append((addresses, _title([names[address] for address in addresses])))
    return [*made, (tuple(prior.addresses[one] for one in groups[-1]), "")]


def _title(names: list[str]) -> str:
    """Of numbers that are correlated the one that matters most stands for all."""
    return (
        names[0] if len(names) == 1 else f"{names[0]}, with {len(names) - 1} more that err with it"
    )


def _leaning(
    of: str, answers: Array, named: list[tuple[tuple[str, ...], str]], steps: Array
) -> Leaning:
    """One answer, with what it leans on most first and the rest last."""
    a, b, mixed = answers[:, 0], answers[:, 1], answers[:, 2:]
    whole = np.isfinite(answers).all(axis=1)
    begun = np.isfinite(answers).any(axis=1)
    indices = sobol_indices(a, b, mixed)
    if indices is None:
        return Leaning(of, int(whole.sum()), int((begun & ~whole).sum()), None, None, ())
    leans = [
        Lean(*name, float(step), *(float(one[at]) for one in indices[:4]))
        for at, (name, step) in enumerate(zip(named, steps, strict=True))
    ]
    leans[:-1] = sorted(leans[:-1], key=lambda one: -one.total)
    both = np.concatenate([a[whole], b[whole]])
    return Leaning(
        of, int(whole.sum()), int((begun & ~whole).sum()), float(both.mean()),
        float(both.std()), tuple(leans),
    )  # fmt: skip
