"""Who solves a long question, and what keeps it: the same words for every command that has one."""

from __future__ import annotations

import argparse
from collections.abc import Iterator
from contextlib import AbstractContextManager, contextmanager, nullcontext
from typing import Any

from windwall.cli.counts import workers
from windwall.errors import Problem, ScenarioError

__all__ = ["add_solvers", "solvers"]


def add_solvers(question: argparse.ArgumentParser) -> None:
    """Where its pieces are solved, and the file that they are kept in."""
    question.add_argument(
        "--journal", metavar="FILE", help="keep what is solved there; the same again goes on"
    )
    who = question.add_mutually_exclusive_group()
    who.add_argument(
        "--workers", type=workers, default=0, metavar="N", help="so many processes; else this one"
    )
    who.add_argument("--scheduler", metavar="ADDRESS", help="of a Dask cluster that is to solve")


@contextmanager
def solvers(arguments: argparse.Namespace) -> Iterator[dict[str, Any]]:
    """What is named, as `executor` and `journal`; where nobody is left to solve it says so."""
    from windwall.study.executors import Gone
    from windwall.study.tasks import OtherSolver

    named = "--scheduler" if arguments.scheduler else "--workers"
    with _executor(arguments) as executor:
        try:
            yield {"executor": executor, "journal": arguments.journal}
        except (Gone, OtherSolver) as failed:
            raise _wrong(named, str(failed), arguments) from failed


def _executor(arguments: argparse.Namespace) -> AbstractContextManager[Any]:
    """A Dask cluster, so many processes, or this one."""
    if arguments.scheduler is None:
        return nullcontext(arguments.workers or None)
    try:
        from distributed import Client
    except ModuleNotFoundError:
        said = "a Dask cluster needs Dask: pip install 'windwall[studies]'"
        raise _wrong("--scheduler", said, arguments) from None
    try:
        return Client(arguments.scheduler)  # type: ignore[no-untyped-call]
    except (OSError, ValueError) as failed:
        said = f"no Dask scheduler answers at {arguments.scheduler!r} ({failed})"
        raise _wrong("--scheduler", said, arguments) from failed


def _wrong(option: str, said: str, arguments: argparse.Namespace) -> ScenarioError:
    return ScenarioError([Problem(option, 0, 0, said)], arguments.command)
