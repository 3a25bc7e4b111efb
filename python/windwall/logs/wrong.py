"""Problems of a log, each with its line and column."""

from __future__ import annotations

from windwall.errors import Problem, ScenarioError

__all__ = ["at", "refuse"]


def at(line: int, column: str | int, message: str) -> Problem:
    """What is wrong in one line; the column by its name, or by its number where it has none."""
    name = f"line {line}" if line else ""
    named = f"column {column}" if column != "" else ""
    return Problem(", ".join(word for word in (name, named) if word), 0, 0, message)


def refuse(*problems: Problem) -> None:
    """Raises what is wrong, if anything is."""
    if problems:
        raise ScenarioError(problems, "log")
