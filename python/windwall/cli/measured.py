"""The questions about gauges: what to read next, and which fault fits what was read."""

from __future__ import annotations

import argparse
from typing import TYPE_CHECKING

from windwall.cli.output import complain
from windwall.scenario import files
from windwall.scenario.data import ScenarioData
from windwall.study.draws import FEWEST, is_even_count

if TYPE_CHECKING:
    from windwall.results.faults import FaultsThatFit
    from windwall.results.measure import ToMeasure

__all__ = ["add_before", "add_draws", "draws", "to_measure", "which_fault"]


def to_measure(scenario: ScenarioData, arguments: argparse.Namespace) -> ToMeasure:
    """Says what it will cost, and what to measure next."""
    from windwall.study.measure import measure  # only where it is asked

    return measure(
        scenario,
        arguments.budget,
        draws=arguments.draws,
        planned=lambda plan: complain(plan.sentence),
        threads=arguments.threads,
    )


def which_fault(scenario: ScenarioData, arguments: argparse.Namespace) -> FaultsThatFit:
    """Which single fault fits what the file says was observed."""
    from windwall.study.fault_facts import observed  # only where it is asked
    from windwall.study.faults import faults

    if arguments.before is None:
        return faults(scenario)
    sound = ScenarioData.read(files.read(arguments.before), arguments.before)
    return faults(scenario, before=observed(sound))


def add_draws(question: argparse.ArgumentParser) -> None:
    """How many vehicles that the file allows are drawn."""
    question.add_argument(
        "--draws",
        type=draws,
        default=FEWEST,
        metavar="N",
        help=f"vehicles drawn for the best three; a power of two, {FEWEST} by default",
    )


def add_before(question: argparse.ArgumentParser) -> None:
    """What the same gauges read when nothing was wrong."""
    question.add_argument(
        "--before",
        metavar="FILE",
        help="the same vehicle's file with what was observed when it was sound",
    )


def draws(text: str) -> int:
    """A number of draws that curves can be laid through, and that the sequence is even over."""
    number = int(text)
    if not is_even_count(number, least=32):
        raise ValueError(text)
    return number
