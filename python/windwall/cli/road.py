"""What is typed about a road: `windwall coast` and `windwall gearing`."""

from __future__ import annotations

import argparse
import os
from collections.abc import Callable
from typing import Any

from windwall import _core
from windwall.errors import Problem, ScenarioError
from windwall.quantities.si import si
from windwall.results.coast_down import CoastDownFit, Rolling
from windwall.results.gearing import BestGearing
from windwall.scenario.data import ScenarioData
from windwall.study.coast_down import coast_down
from windwall.study.coast_down_fit import coast_down_fit
from windwall.study.gearing import REACH, best_gearing
from windwall.study.solve import top_speed

__all__ = [
    "ROWS", "UNITS", "Answered", "add_by", "add_coast", "add_gearing", "add_questions", "coast",
    "gearing",
]  # fmt: skip

ROWS = 11
UNITS = {"metric": ("s", "km/h"), "us": ("s", "mph")}


class Answered:
    """An answer of a question that either has one or raises."""

    answered = True

    def __init__(self, found: BestGearing | CoastDownFit | Rolling) -> None:
        self.to_dict, self.summary = found.to_dict, found.summary
        self.interrupted = getattr(found, "interrupted", False)


def gearing(scenario: ScenarioData, arguments: argparse.Namespace) -> Answered:
    return Answered(best_gearing(scenario, arguments.of, arguments.mark, arguments.reach))


def coast(scenario: ScenarioData, arguments: argparse.Namespace) -> Answered:
    """The model's own coast-down, or what one that was measured tells of this vehicle."""
    if arguments.table is not None:
        return Answered(_fit(scenario, arguments))
    start = arguments.start
    if start is None:
        start = si(_fastest(scenario))
    run = coast_down(
        scenario, start, arguments.end, arguments.headwind, arguments.grade, arguments.rows
    )
    return Answered(Rolling(scenario.name, scenario.system, run))


def _fastest(scenario: ScenarioData) -> float:
    quick = top_speed(scenario, brief=True)
    if not quick.answered:
        raise quick.no_answer()
    return quick.speed


def _fit(scenario: ScenarioData, arguments: argparse.Namespace) -> CoastDownFit:
    """With the mass, the air and what turns of the file."""
    if not os.path.isfile(arguments.table):
        raise ScenarioError([Problem("--table", 0, 0, "there is no such file")], arguments.table)
    held = _core.rolling_free(scenario.core)
    mass = scenario.get("body/mass")
    time, speed = UNITS[scenario.system]
    return coast_down_fit(
        arguments.table,
        mass=si(mass),
        air_density=si(held["air_density"]),
        rotating_share=si(held["accelerated_mass"] / mass - 1),
        headwind=arguments.headwind,
        grade=arguments.grade,
        rolling_rise=si(scenario.get("body/rolling_rise")),
        units={"time": arguments.time_unit or time, "speed": arguments.speed_unit or speed},
        system=scenario.system,
    )


def add_gearing(question: argparse.ArgumentParser) -> None:
    question.add_argument(
        "mark",
        nargs="?",
        metavar="MARK",
        help='"1600 m" or "100 km/h": the least time to it; else the highest speed',
    )
    question.add_argument(
        "--of", metavar="ADDRESS", help="what is tried; else the last sprocket, ratio or pulley"
    )
    question.add_argument(
        "--reach", type=float, default=REACH, metavar="TIMES", help=f"either way; else {REACH:g}"
    )


def add_coast(question: argparse.ArgumentParser) -> None:
    question.add_argument(
        "start", nargs="?", metavar="FROM", help='such as "100 km/h"; else the top speed'
    )
    question.add_argument("end", nargs="?", default="10 km/h", metavar="TO", help="else 10 km/h")
    question.add_argument("--headwind", metavar="SPEED", help="else that of the file")
    question.add_argument("--grade", metavar="SHARE", help='such as "1 %%"; else that of the file')
    question.add_argument("--rows", type=int, default=ROWS, metavar="N", help=f"else {ROWS}")
    question.add_argument(
        "--table",
        metavar="CSV",
        help="time and speed as they were measured: says drag area and rolling resistance",
    )
    question.add_argument("--time-unit", metavar="UNIT", help="of that table; else s")
    question.add_argument("--speed-unit", metavar="UNIT", help="likewise; else km/h, or mph")


def add_by(ranking: argparse.ArgumentParser) -> None:
    ranking.add_argument(
        "--by",
        metavar="WHAT",
        help='a driven run: "driven_speed", "time over 1600 m", "time to 100 km/h" or "goal"',
    )


def add_questions(commands: Any, add: Callable[..., Any], install: Callable[..., None]) -> None:
    """What a road tells, and what is geared for one."""
    rolling = add(commands, "coast", coast, "how it rolls to a stop without drive")
    add_coast(rolling)
    install(rolling)
    geared = add(commands, "gearing", gearing, "which gearing is best for a goal")
    add_gearing(geared)
    install(geared)
