"""The sets of a ranking, solved in pieces: wherever, whenever, and kept."""

from __future__ import annotations

import hashlib
from collections.abc import Iterator

import numpy as np

from windwall import _core
from windwall.scenario.data import ScenarioData
from windwall.study.carry_out import Means, carried_out
from windwall.study.progress import Progress
from windwall.study.tasks import Task, tasks_of, unpacked

__all__ = ["PIECE", "solved_sets", "whole_groups"]

PIECE = 256  # sets: half a second or so


def solved_sets(
    scenario: ScenarioData, upgrades: list[str] | None, means: Means, heard: Progress | None
) -> list[bytes]:
    """All allowed sets of the menu as the core packs them; fewer where the listener says so."""
    sizes = _core.rank_groups(scenario.core, upgrades)
    found = carried_out(_tasks(scenario, upgrades, sizes), sum(sizes), means, heard)
    return [unpacked(answer)["packed"].tobytes() for _, answer in found]


def _tasks(scenario: ScenarioData, upgrades: list[str] | None, sizes: list[int]) -> Iterator[Task]:
    """Whole groups, since the sets of one share what is solved of their engine."""
    # Costs and reasons are told with the sets, and are no physics.
    text = hashlib.sha256(scenario.text().encode()).hexdigest()
    for first, last in whole_groups(sizes):
        terms = {"text": text, "upgrades": upgrades, "groups": [first, last]}
        make = tasks_of(scenario, "menu", terms)
        yield make(np.empty((0, 0)), sum(sizes[first:last]))


def whole_groups(sizes: list[int]) -> Iterator[tuple[int, int]]:
    """From the first to the one before the last, as many as make a piece."""
    first = held = 0
    for at, size in enumerate(sizes):
        if held and held + size > PIECE:
            yield first, at
            first, held = at, 0
        held += size
    if held:
        yield first, len(sizes)
