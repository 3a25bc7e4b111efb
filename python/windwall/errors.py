"""What goes wrong, in words: an input that is wrong, and a question without an answer."""

from __future__ import annotations

from collections.abc import Iterable
from typing import NamedTuple

__all__ = ["NoAnswer", "Problem", "ScenarioError", "whole_letters"]


class Problem(NamedTuple):
    """One thing that is wrong with a scenario, and where; line and column count from 1."""

    address: str
    line: int
    column: int
    message: str

    def where(self, source: str = "") -> str:
        """`file:line:column address`, as much of it as is known."""
        place = f"{source}:{self.line}:{self.column}" if self.line else source
        return " ".join(word for word in (place, self.address) if word)


class ScenarioError(ValueError):
    """The input is wrong. `problems` lists everything that is, not only the first thing."""

    def __init__(self, problems: Iterable[Problem], source: str = "") -> None:
        self.problems = [Problem(*problem) for problem in problems]
        self.source = source
        super().__init__(self.problems, source)

    def __str__(self) -> str:
        lines = [_line(problem, self.source) for problem in self.problems]
        if len(lines) == 1:
            return lines[0]
        return "\n".join([f"{len(lines)} problems", *(f"  {line}" for line in lines)])


def whole_letters(text: str) -> str:
    """The same text, or a ScenarioError where half a letter of it cannot be written to any file."""
    try:
        text.encode("utf-8")
    except UnicodeEncodeError:
        raise ScenarioError([Problem(ascii(text), 0, 0, "this holds half a letter")]) from None
    return text


def _line(problem: Problem, source: str) -> str:
    where = problem.where(source)
    return f"{where}: {problem.message}" if where else problem.message


class NoAnswer(RuntimeError):  # noqa: N818  # it is no error of the program
    """A number was asked of a question that has no answer; the sentence says why it has none."""

    def __init__(self, sentence: str, status: str = "") -> None:
        super().__init__(sentence, status)
        self.sentence = sentence
        self.status = status

    def __str__(self) -> str:
        return self.sentence
