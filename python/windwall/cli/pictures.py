"""What is drawn: `windwall plot`."""

from __future__ import annotations

import argparse
from collections.abc import Callable
from pathlib import Path
from typing import Any, NamedTuple

from windwall.cli.answers import add_outing
from windwall.cli.counts import count, draws
from windwall.errors import Problem, ScenarioError
from windwall.scenario import files
from windwall.scenario.data import ScenarioData
from windwall.study.drive import drive
from windwall.study.rank import rank
from windwall.study.solve import top_speed

__all__ = [
    "BESIDE", "NO_OUTING", "NO_RUN", "PICTURES", "PRESSURES", "TEMPERATURES", "Asked", "Drawn",
    "Picture", "add_picture",
]  # fmt: skip

BESIDE = 4  # runs that are drawn unless others are named
Asked = Callable[[ScenarioData, argparse.Namespace], tuple[Any, ...]]


def _scenario(scenario: ScenarioData, _arguments: argparse.Namespace) -> tuple[Any, ...]:
    return (scenario,)


def _speed(scenario: ScenarioData, _arguments: argparse.Namespace) -> tuple[Any, ...]:
    return (top_speed(scenario),)


def _money(scenario: ScenarioData, _arguments: argparse.Namespace) -> tuple[Any, ...]:
    return (rank(scenario),)


def _ranking(scenario: ScenarioData, arguments: argparse.Namespace) -> tuple[Any, ...]:
    """With how sure it is, where worlds are asked for."""
    ranking = rank(scenario)
    if not arguments.draws or not (ranking.answered and ranking.upgrades):
        return (ranking,)
    from windwall.study.rank_draws import draw_ranking  # only where it is asked

    return ranking, draw_ranking(scenario, ranking, arguments.draws)


def _drive(scenario: ScenarioData, arguments: argparse.Namespace) -> tuple[Any, ...]:
    return (drive(scenario, arguments.outing),)


def _distance(scenario: ScenarioData, arguments: argparse.Namespace) -> tuple[Any, ...]:
    """The runs that are asked for, else the first few, laid over each other."""
    driven = drive(scenario, arguments.outing)
    there = driven.moved
    wrong = [Problem("--run", 0, 0, NO_RUN.format(run=run, runs=len(there), id=driven.outing.id))
             for run in arguments.runs if run not in there]  # fmt: skip
    if wrong:
        raise ScenarioError(wrong, "plot")
    return ({f"run {run}": (driven, run) for run in arguments.runs or there[:BESIDE]},)


def _leans(scenario: ScenarioData, _arguments: argparse.Namespace) -> tuple[Any, ...]:
    from windwall.study.leans_on import leans_on

    return (leans_on(scenario),)


def _forecast(scenario: ScenarioData, arguments: argparse.Namespace) -> tuple[Any, ...]:
    """Over the weather that is named, or over what a year brings about the day of the file."""
    from windwall.study.day import forecast, weather

    pressure = weather(scenario).pressure
    around = [pressure + step for step in PRESSURES]
    days = (arguments.temperature or TEMPERATURES, arguments.pressure or around)
    return (forecast(scenario, *days),)


def _swept(scenario: ScenarioData, arguments: argparse.Namespace) -> tuple[Any, ...]:
    """With the limits that each variant passes."""
    if not arguments.vary:
        said = 'name what is varied: --vary body/mass "330 kg" "350 kg"'
        raise ScenarioError([Problem("--vary", 0, 0, said)], "plot")
    from windwall.study.sweep import sweep
    from windwall.study.sweep_limits import with_limits

    grid = {address: values for address, *values in arguments.vary}
    return (with_limits(scenario, sweep(scenario, grid)),)


TEMPERATURES = ("-10 degC", "0 degC", "10 degC", "20 degC", "30 degC", "40 degC")
NO_RUN = "there is no run {run} in {id!r}; it has {runs}, counted from 1"
NO_OUTING = "only drive and distance draw an outing, {what} does not"
PRESSURES = (-3000.0, 0.0, 3000.0)  # Pa


class Picture(NamedTuple):
    """The function of `report.plots`, and what it draws of a scenario."""

    plot: str
    of: Asked


PICTURES = {
    "force": Picture("force_against_speed", _scenario),
    "accounts": Picture("accounts", _speed),
    "stations": Picture("stations", _speed),
    "knock": Picture("knock_over_engine_speed", _scenario),
    "ranking": Picture("gains", _ranking),
    "money": Picture("best_by_cost", _money),
    "sweep": Picture("sweep_curve", _swept),
    "map": Picture("sweep_map", _swept),
    "drive": Picture("over_time", _drive),
    "distance": Picture("runs_overlaid", _distance),
    "leans": Picture("leans_on", _leans),
    "forecast": Picture("forecast", _forecast),
}


class Drawn:
    """A picture in a file."""

    answered = True

    def __init__(self, scenario: ScenarioData, arguments: argparse.Namespace) -> None:
        self.what, self.output = arguments.what, arguments.output
        import matplotlib as mpl

        mpl.use("Agg")
        from windwall.report import plot_files, plots  # only where it is asked

        if Path(self.output).suffix.lower() not in plot_files.FORMATS:
            found = files.shown(self.output)
            kinds = ", ".join(plot_files.FORMATS)
            said = f"a picture is written as {kinds}, by the end of its name"
            raise ScenarioError([Problem(found, 0, 0, said)], "plot")
        picture = PICTURES[self.what]
        if arguments.outing is not None and picture.of not in (_drive, _distance):
            said = NO_OUTING.format(what=self.what)
            raise ScenarioError([Problem(files.shown(arguments.outing), 0, 0, said)], "plot")
        of = picture.of(scenario, arguments)
        self.interrupted = any(map(_cancelled, of))
        plot_files.save(getattr(plots, picture.plot)(*of), self.output)

    def to_dict(self) -> dict[str, Any]:
        return {"plot": self.what, "written": self.output}

    def summary(self) -> str:
        early = ", as far as it was driven" if self.interrupted else ""
        return f"written to {files.shown(self.output)}{early}"


def _cancelled(drawn: Any) -> bool:
    """Whether a drive, or one of several, was stopped by somebody."""
    if isinstance(drawn, dict):
        return any(_cancelled(one) for one, _ in drawn.values())
    return bool(getattr(drawn, "cancelled", False))


def add_picture(made: argparse.ArgumentParser) -> None:
    """What is drawn, of what, and where it is written."""
    made.add_argument("what", choices=tuple(PICTURES), metavar="WHAT", help=", ".join(PICTURES))
    add_outing(made, "of drive and distance: ")
    made.add_argument(
        "-o", "--output", required=True, metavar="NEW", help="its name ends in svg, png or pdf"
    )
    made.add_argument(
        "--vary",
        nargs="+",
        action="append",
        default=[],
        metavar=("ADDRESS", "VALUE"),
        help="of sweep and map: an input and its values, as for windwall sweep",
    )
    made.add_argument(
        "--draws",
        type=draws,
        default=0,
        metavar="N",
        help="of ranking: its ± in so many worlds, a power of two such as 256",
    )
    made.add_argument(
        "--temperature", nargs="+", metavar="T", help="of forecast: temperatures of the air"
    )
    made.add_argument(
        "--run",
        dest="runs",
        type=count,
        action="append",
        default=[],
        metavar="N",
        help=f"of distance: any number of times; else the first {BESIDE}",
    )
    made.add_argument("--pressure", nargs="+", metavar="P", help="of forecast: barometers")
