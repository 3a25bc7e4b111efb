"""A piece of a study as plain data, and its answer: the same wherever and whenever it is solved."""

from __future__ import annotations

import hashlib
import io
import json
from collections.abc import Callable, Sequence
from functools import cache, lru_cache
from typing import Any, NamedTuple

import numpy as np

from windwall import _core
from windwall.scenario.data import ScenarioData

__all__ = [
    "QUESTIONS", "Answer", "Listener", "OtherSolver", "Task", "packed", "solved", "solver", "swept",
    "tasks_of", "unpacked",
]  # fmt: skip

Answer = dict[str, np.ndarray]
Listener = Callable[[int, int], bool | None]


class Task(NamedTuple):
    """What a worker needs and nothing else. `items` are counted by progress and by nobody else."""

    question: str  # one of `QUESTIONS`
    text: str  # of the scenario's file
    digest: str
    solver: str  # that has to solve it; see `solver`
    terms: dict[str, Any]  # words and lists of them
    columns: np.ndarray  # float64, (rows, items)
    items: int

    @property
    def key(self) -> str:
        """The same for the same question to the same physics, whoever asks and for whatever."""
        asked = [self.question, self.digest, self.solver, self.terms, list(self.columns.shape)]
        told = json.dumps(asked, sort_keys=True).encode()
        return hashlib.sha256(told + np.ascontiguousarray(self.columns).tobytes()).hexdigest()


class OtherSolver(RuntimeError):  # noqa: N818
    """A worker has another build of windwall than whoever asks it."""

    def __init__(self, here: str, asked: str) -> None:
        super().__init__(here, asked)
        self.here, self.asked = here, asked

    def __str__(self) -> str:
        return (
            f"a worker has {self.here} and was asked by {self.asked}: answers of two builds are "
            "not mixed, so install the same on every machine"
        )


@cache
def solver() -> str:
    """What solves here: the version, and the core as it was compiled, to the bit."""
    with open(_core.__file__, "rb") as file:
        core = hashlib.file_digest(file, "sha256").hexdigest()[:12]
    return f"windwall {_core.build_info()['windwall']} (core {core})"


def tasks_of(
    scenario: ScenarioData, question: str, terms: dict[str, Any]
) -> Callable[[np.ndarray, int], Task]:
    """Makes the pieces of a study of this scenario, each of its columns and so many items."""
    study = question, scenario.text(), scenario.digest, solver(), terms

    def make(columns: np.ndarray, items: int) -> Task:
        return Task(*study, columns, items)

    return make


def solved(task: Task, threads: int = 1, heard: Listener | None = None) -> bytes:
    """The answer, packed. Needs nothing that is not in the task, and leaves nothing behind."""
    if task.solver != solver():
        raise OtherSolver(solver(), task.solver)
    scenario = _understood(task.text)
    return packed(QUESTIONS[task.question](scenario, task.terms, task.columns, threads, heard))


@lru_cache(maxsize=4)
def _understood(text: str) -> Any:
    """One scenario serves all pieces of its study."""
    return ScenarioData.read(text).core


def packed(answer: Answer) -> bytes:
    """An answer as bytes that say when they are damaged."""
    into = io.BytesIO()
    np.savez_compressed(into, allow_pickle=False, **answer)
    return into.getvalue()


def unpacked(answer: bytes) -> Answer:
    with np.load(io.BytesIO(answer), allow_pickle=False) as found:
        return {name: found[name] for name in found.files}


def _sweep(
    scenario: Any, terms: dict[str, Any], columns: np.ndarray, threads: int, heard: Listener | None
) -> Answer:
    addresses, outputs = terms["addresses"], terms["outputs"]
    return swept(scenario, addresses, columns, outputs, threads, heard)


def swept(
    scenario: Any,
    addresses: Sequence[str],
    columns: Any,
    outputs: Sequence[str],
    threads: int,
    heard: Listener | None,
) -> Answer:
    """Top speeds of variants: results always told by their names, outputs by their places."""
    found = _core.sweep(scenario, list(addresses), list(columns), list(outputs), threads, heard)
    others = {str(at): column for at, column in enumerate(found.pop("outputs"))}
    return {key: np.asarray(column) for key, column in found.items()} | others


def _worlds(
    scenario: Any, terms: dict[str, Any], columns: np.ndarray, threads: int, heard: Listener | None
) -> Answer:
    found = _core.world_speeds(scenario, columns, terms["asked"], threads, heard)
    return {"speed": found["speed"], "end": np.array(found["end"]).reshape(found["speed"].shape)}


def _menu(
    scenario: Any, terms: dict[str, Any], columns: np.ndarray, threads: int, heard: Listener | None
) -> Answer:
    first, last = terms["groups"]
    found = _core.solve_groups(scenario, terms["upgrades"], first, last, threads, heard)
    return {"packed": np.frombuffer(found, np.uint8)}


QUESTIONS: dict[str, Callable[..., Answer]] = {"sweep": _sweep, "worlds": _worlds, "menu": _menu}
