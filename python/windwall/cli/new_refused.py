"""What the loader says of an answer to `windwall new`, in the words of its question."""

from __future__ import annotations

import re

from windwall.cli.new_asked import example_in
from windwall.cli.new_question import Question
from windwall.errors import Problem

__all__ = ["EXAMPLE", "refused"]

EXAMPLE = re.compile(r'(write for example )"([^"]*)"')


def refused(
    question: Question, text: str, wrong: list[list[Problem]], system: str
) -> list[Problem]:
    """The problems of the closest reading: the example is that of the question unless the loader
    made one of what was typed.
    """
    return [
        one._replace(line=0, column=0, message=_said(question, text, one.message, system))
        for one in _of_the_closest(wrong)
    ]


def _of_the_closest(wrong: list[list[Problem]]) -> list[Problem]:
    """Of several readings the first that is not about the wrong kind of quantity altogether."""
    return next((one for one in wrong if "is the unit of" not in one[0].message), wrong[0])


def _said(question: Question, text: str, message: str, system: str) -> str:
    own = example_in(question, system)
    return EXAMPLE.sub(lambda found: f'{found[1]}"{_example(found[2], text, own)}"', message)


def _example(loaders: str, text: str, own: str) -> str:
    """The loader's example where it has a number that was typed."""
    typed = set(re.findall(r"\d+(?:\.\d+)?", text))
    return loaders if typed & set(re.findall(r"\d+(?:\.\d+)?", loaders)) else own
