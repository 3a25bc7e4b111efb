"""What an answer to `windwall new` was probably meant to be that is not taken as it was typed: with
a decimal comma, without its unit, with its unit twice.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from windwall.cli.new_asked import US, example_in
from windwall.cli.new_question import Question
from windwall.cli.new_readings import (
    AT_A_SPEED,
    COMMA,
    THOUSANDS,
    figure_at_a_speed,
    gears,
    heading,
)
from windwall.cli.new_upgrades import MENU

__all__ = [
    "BARE", "DEGREES", "ORDINAL", "ROUGHLY", "SPELT", "TWICE", "UNIT", "VALUE", "mendings",
    "unit_of",
]  # fmt: skip

VALUE = r"[+-]?\d+(?:\.\d+)?"
SPELT = re.compile(r"\s*\+\s*/?\s*-\s*")  # +-, + / -
ROUGHLY = r"\s*(?:±|\+/-)\s*"
TWICE = re.compile(rf"({VALUE})\s*([^\d\s±+%][^±+]*?){ROUGHLY}(\d+(?:\.\d+)?)\s*([^\d\s%].*)?")
BARE = re.compile(rf"{VALUE}(?:{ROUGHLY}\d+(?:\.\d+)?)?")
UNIT = re.compile(rf"{BARE.pattern}\s*([a-zA-Z%].*)")
DEGREES = re.compile(rf"({BARE.pattern})\s*°?\s*([CF])", re.IGNORECASE)
ORDINAL = re.compile(r"(\d+)(?:st|nd|rd|th)", re.IGNORECASE)


def mendings(question: Question, text: str, system: str) -> Iterator[str]:
    """What may have been meant, in the order of what is likelier; the loader judges each. A comma
    of a list stays as it is.
    """
    if question.read in (gears, heading) or question.address == MENU:
        return
    every = (
        made for said in _with_points(text) for made in _with_units(question, _spread(said), system)
    )
    yield from (made for made in dict.fromkeys(every) if made != text)


def _with_points(text: str) -> Iterator[str]:
    """Decimals behind a point; what may be thousands as these too."""
    yield COMMA.sub(r"\1.\2", text)
    if (comma := COMMA.search(text)) and len(comma[2]) == THOUSANDS:
        yield COMMA.sub(r"\1\2", text)


def _spread(text: str) -> str:
    """How well it is known, spelt as it is read and in front of the one unit."""
    spelt = SPELT.sub(" +/- ", text)
    twice = TWICE.fullmatch(spelt)
    if twice and twice[4] in (None, twice[2]):
        return f"{twice[1]} +/- {twice[3]} {twice[2]}"
    return spelt


def _with_units(question: Question, text: str, system: str) -> Iterator[str]:
    """A bare number with the unit of the example in each system, that of the talk first."""
    if ordinal := ORDINAL.fullmatch(text):
        yield ordinal[1]
    examples = dict.fromkeys(example_in(question, one) for one in (system, *_others(system)))
    if question.read is figure_at_a_speed:
        yield from (_figure(text, one) for one in examples)
        return
    degrees = DEGREES.fullmatch(text)
    if degrees and unit_of(question.example).startswith("deg"):
        yield f"{degrees[1]} deg{degrees[2].upper()}"
    for unit in map(unit_of, examples):
        yield f"{text} {unit}" if BARE.fullmatch(text) and unit else text


def _others(system: str) -> tuple[str, ...]:
    return ("metric",) if system == US else (US,)


def _figure(text: str, example: str) -> str:
    """A torque or power and its engine speed, each with a unit."""
    said, told = AT_A_SPEED.split(text), AT_A_SPEED.split(example)
    if len(said) != len(told):
        return text
    both = zip(said, map(unit_of, told), strict=True)
    return " at ".join(f"{one} {unit}" if BARE.fullmatch(one) else one for one, unit in both)


def unit_of(example: str) -> str:
    """The unit that an example ends in; empty of a plain number or a word."""
    found = UNIT.fullmatch(example)
    return found[1] if found else ""
