"""How sure an answer is: what it leans on, and what the day does to it."""

from __future__ import annotations

import argparse
from typing import TYPE_CHECKING, Any

from windwall.cli.output import complain
from windwall.cli.solvers import solvers
from windwall.results.leans_on import FEWEST_ROWS, ROWS
from windwall.scenario.data import ScenarioData
from windwall.study.draws import is_even_count
from windwall.study.rank import rank

if TYPE_CHECKING:
    from windwall.results.day import Corrected, Forecast
    from windwall.results.leans_on import LeansOn
    from windwall.study.leans_on import Between

__all__ = [
    "AS_IT_IS", "MOST_ROWS", "add_day", "add_leans", "between", "day", "ids", "leans",
    "power_of_two",
]  # fmt: skip

AS_IT_IS = "-"
MOST_ROWS = 16384


def add_leans(question: argparse.ArgumentParser) -> None:
    """What may be said about it."""
    pair = question.add_mutually_exclusive_group()
    pair.add_argument(
        "--between",
        nargs=2,
        metavar=("IDS", "IDS"),
        help=f"two sets of upgrades, such as cooler+fairing; {AS_IT_IS} is the vehicle as it is. "
        "Without it the two best of the menu, which is ranked first",
    )
    pair.add_argument("--alone", action="store_true", help="the speed alone, nothing is ranked")
    question.add_argument(
        "--rows",
        type=power_of_two,
        default=ROWS,
        metavar="N",
        help=f"a power of two, {ROWS} by default",
    )


def leans(scenario: ScenarioData, arguments: argparse.Namespace) -> LeansOn:
    """Says what it will cost, and does it."""
    from windwall.study.leans_on import leans_on  # only where it is asked

    with solvers(arguments) as means:
        return leans_on(
            scenario,
            between(scenario, arguments, means),
            rows=arguments.rows,
            planned=lambda plan: complain(plan.sentence),
            threads=arguments.threads,
            **means,
        )


def between(
    scenario: ScenarioData, arguments: argparse.Namespace, means: dict[str, Any]
) -> Between:
    """The sets that are compared, if any."""
    if arguments.between is not None:
        first, second = map(ids, arguments.between)
        return first, second
    if arguments.alone or not scenario.upgrades:
        return None
    return rank(scenario, threads=arguments.threads, **means)


def power_of_two(typed: str) -> int:
    """A number of rows: an even sample has a power of two."""
    number = int(typed)
    if not is_even_count(number, FEWEST_ROWS, MOST_ROWS):
        raise argparse.ArgumentTypeError(
            f"{number} is no power of two from {FEWEST_ROWS} to {MOST_ROWS}"
        )
    return number


def ids(typed: str) -> list[str]:
    """`cooler+fairing`."""
    return [] if typed == AS_IT_IS else typed.split("+")


def add_day(question: argparse.ArgumentParser) -> None:
    """The day that is asked for, and the one that something was seen on."""
    question.add_argument(
        "--temperature", nargs="+", metavar="T", help='such as "12 degC"; several make a table'
    )
    question.add_argument(
        "--pressure", nargs="+", metavar="P", help='such as "102 kPa"; several make a table'
    )
    question.add_argument("--humidity", metavar="PHI", help='such as "60 %%"')
    question.add_argument("--headwind", metavar="SPEED", help='such as "2 m/s"')
    question.add_argument(
        "--from",
        dest="before",
        metavar="KEY=VALUE",
        action="append",
        default=[],
        help="what the first day differs in from that of the file, such as temperature=25degC",
    )
    question.add_argument("--speed", metavar="SPEED", help="what was seen on the first day")


def day(scenario: ScenarioData, arguments: argparse.Namespace) -> Corrected | Forecast:
    """One other day, or a table of weather where several are named."""
    from windwall.study.day import corrected, forecast, weather  # only where it is asked

    given = {"relative_humidity": arguments.humidity, "headwind": arguments.headwind}
    rest = {key: value for key, value in given.items() if value is not None}
    temperatures, pressures = arguments.temperature or [], arguments.pressure or []
    if max(len(temperatures), len(pressures)) > 1:
        return forecast(
            scenario,
            temperatures or [scenario.get("day/temperature")],
            pressures or [weather(scenario).pressure],
            rest,
        )
    one = dict(zip(("temperature", "pressure"), (temperatures, pressures), strict=True))
    to_day = rest | {key: value[0] for key, value in one.items() if value}
    before = dict(entry.partition("=")[::2] for entry in arguments.before)
    return corrected(scenario, to_day, before, arguments.speed)
