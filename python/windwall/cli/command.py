"""The command `windwall`: the same answers as the package, as text or as one JSON document."""

from __future__ import annotations

import argparse
import sys
from collections.abc import Callable, Sequence
from pathlib import Path
from typing import Any, NoReturn

from windwall._core import build_info
from windwall.cli import files as file_commands
from windwall.cli import held, learn, measured, pictures, report, road, sure, sweeping
from windwall.cli import logs as log_reading
from windwall.cli.answers import Check, Driven, Installed, Speed, add_outing, rank_menu
from windwall.cli.any_order import AnyOrder
from windwall.cli.completion import add_completion, complete_if_asked
from windwall.cli.counts import count, draws
from windwall.cli.exit_codes import (
    ANSWERED,
    CLOSED_PIPE,
    INTERRUPTED,
    NO_ANSWER,
    WRONG_INPUT,
)
from windwall.cli.files import add_units
from windwall.cli.misspelt import meant_file, with_nearest
from windwall.cli.new import DEFAULT_NAME, Unfinished, new
from windwall.cli.output import complain, say, show_every_letter, silence
from windwall.cli.solvers import add_solvers
from windwall.errors import NoAnswer, Problem, ScenarioError
from windwall.report import documents
from windwall.report.text.check import problems_text
from windwall.scenario import files
from windwall.scenario.data import ScenarioData
from windwall.scenario.info import chosen
from windwall.scenario.installing import for_core, typed

__all__ = [
    "EXAMPLE", "Parser", "add_budget", "add_install", "add_measured", "add_new", "add_question",
    "add_threads", "answer", "ask", "cannot", "make_new", "other_file", "parser", "read",
    "refuse", "run", "run_command",
]  # fmt: skip


EXAMPLE = "mine.json"


def read(path: str) -> bytes:
    """The text of a file; `-` is standard input."""
    if path != "-":
        return files.read(path)
    if sys.stdin is None:
        raise ScenarioError([Problem("", 0, 0, "it is closed")], "standard input")
    return sys.stdin.buffer.read(files.LARGEST_FILE + 1)


class Parser(AnyOrder):
    """Repeats what was typed only after escaping it."""

    def error(self, message: str) -> NoReturn:
        super().error(files.shown(with_nearest(message)))

    def _print_message(self, message: str, file: Any = None) -> None:
        # The base class takes it for printed whatever becomes of it.
        show = complain if file is sys.stderr else say
        code = run(argparse.Namespace(run=lambda _: show(message.rstrip("\n"))))
        if code:
            raise SystemExit(code)


def parser() -> Parser:
    """What may be typed."""
    made = Parser(
        prog="windwall",
        description="How fast a small blown vehicle gets, why no faster, and what would help.",
        epilog="Exit codes: 0 answered, 1 no answer, 2 wrong input, 130 interrupted.",
    )
    made.add_argument("--version", action="version", version=f"windwall {build_info()['windwall']}")
    commands = made.add_subparsers(dest="command", required=True, metavar="COMMAND")
    speeds = add_question(
        commands, "speed", Speed, "how fast, why no faster, where every watt goes"
    )
    add_install(speeds)
    ranking = add_question(commands, "rank", rank_menu, "which upgrades buy the most speed")
    add_install(ranking)
    add_budget(ranking)
    add_threads(ranking)
    ranking.add_argument(
        "--draws",
        type=draws,
        default=0,
        metavar="N",
        help="how sure: in so many worlds, a power of two such as 256",
    )
    road.add_by(ranking)
    add_solvers(ranking)
    leaning = add_question(commands, "leans", sure.leans, "what an answer leans on")
    add_install(leaning)
    sure.add_leans(leaning)
    add_threads(leaning)
    add_solvers(leaning)
    other = add_question(commands, "day", sure.day, "what another day does, or which weather")
    add_install(other)
    sure.add_day(other)
    held.add_speeds(
        add_question(commands, "hold", held.hold, "which pedal holds a road speed, and its price")
    )
    held.add_engine_speed(
        add_question(commands, "idle", held.idle, "what the engine draws and burns as it idles")
    )
    driven = add_question(commands, "drive", Driven, "what becomes of an outing, moment by moment")
    add_outing(driven)
    add_install(driven)
    add_measured(commands)
    road.add_questions(commands, add_question, add_install)
    add_question(commands, "check", Check, "what is wrong with a file, and what it leaves open")
    file_commands.add_questions(commands, add_question)
    grid = add_question(commands, "sweep", sweeping.sweep_grid, "top speeds over a grid")
    sweeping.add_grid(grid)
    pictures.add_picture(add_question(commands, "plot", pictures.Drawn, "it all in a picture"))
    sent = add_question(commands, "report", report.Reported, "it all on a page that can be sent")
    add_install(sent)
    report.add_report(sent)
    add_budget(sent)
    add_new(commands)
    file_commands.add_schema(commands)
    add_completion(commands)
    return made


def add_measured(commands: Any) -> None:
    """What gauges tell."""
    learn.add_learning(commands, add_question)
    log_reading.add_log(
        add_question(commands, "logs", log_reading.logs, "what a log of the vehicle tells")
    )
    next_one = add_question(commands, "measure", measured.to_measure, "what to measure next")
    add_install(next_one)
    add_budget(next_one)
    add_threads(next_one)
    measured.add_draws(next_one)
    measured.add_before(
        add_question(commands, "faults", measured.which_fault, "which fault fits what was read")
    )


def add_new(commands: Any) -> None:
    """The one command that makes a file."""
    says = "writes a scenario file from a few questions"
    made = commands.add_parser("new", help=says, description=f"{says.capitalize()}.")
    made.add_argument("file", nargs="?", default=DEFAULT_NAME, metavar="FILE")
    made.add_argument("--force", action="store_true", help="write over a file that is there")
    made.add_argument(
        "--answers", metavar="FILE", help="a JSON object of answers; nothing is asked"
    )
    made.add_argument(
        "--set",
        metavar="NAME=ANSWER",
        action="append",
        default=[],
        help="one answer, any number of times; nothing is asked",
    )
    add_units(made, "of questions and of everything printed; else it is asked, and metric so far")
    made.set_defaults(run=make_new)


def make_new(arguments: argparse.Namespace) -> int:
    """Every way in which the questions may end."""
    try:
        return new(arguments)
    except ScenarioError as wrong:
        return refuse(wrong, "", False)
    except Unfinished as left:
        why = "interrupted" if left.interrupted else "the answers ended before the questions"
        complain(f"{why}; {left.kept}")
        return INTERRUPTED if left.interrupted else WRONG_INPUT


def add_question(
    commands: Any, name: str, ask: Callable[..., Any], says: str
) -> argparse.ArgumentParser:
    """One question about one file."""
    made = commands.add_parser(name, help=says, description=f"Says {says}.")
    made.add_argument("file", metavar="FILE", help="a scenario file; - reads standard input")
    made.add_argument("--json", action="store_true", help="one JSON document, numbers in SI")
    add_units(made, "of everything printed; else as the file says")
    made.set_defaults(run=answer, ask=ask, install=[])
    return made


def add_install(question: argparse.ArgumentParser) -> None:
    """What is fitted before the question is asked."""
    question.add_argument(
        "--install",
        metavar="ID[=VALUE]",
        action="append",
        default=[],
        help="an upgrade to fit first, any number of times; of a choice the fastest value, or the "
        "one stated",
    )


def add_budget(question: argparse.ArgumentParser) -> None:
    """What may be spent."""
    question.add_argument(
        "--budget",
        metavar="SUM",
        help='such as "500 EUR", or none; by default what the file says may be spent',
    )


def add_threads(question: argparse.ArgumentParser) -> None:
    """How many solve at once."""
    question.add_argument(
        "--threads", type=count, default=0, metavar="N", help="how many at once; all by default"
    )


def answer(arguments: argparse.Namespace) -> int:
    """Reads the file, asks the question, prints the answer."""
    text: str | bytes = ""
    source = "standard input" if arguments.file == "-" else arguments.file
    try:
        text = read(arguments.file)
        found = ask(ScenarioData.read(text, source).shown_in(arguments.units), arguments)
    except ScenarioError as wrong:
        return refuse(
            wrong, text if wrong.source in ("", source) else other_file(wrong), arguments.json
        )
    say(documents.to_text(found.to_dict()) if arguments.json else found.summary())
    if getattr(found, "interrupted", False):
        return INTERRUPTED
    return ANSWERED if found.answered else NO_ANSWER


def ask(scenario: ScenarioData, arguments: argparse.Namespace) -> Any:
    """The answer, of the vehicle with what is to be fitted first."""
    if not arguments.install:
        return arguments.ask(scenario, arguments)
    what = tuple(map(typed, arguments.install))
    found = arguments.ask(scenario.install(*what), arguments)
    return Installed(found, for_core(what)[0], chosen(scenario, *what))


def other_file(wrong: ScenarioError) -> bytes:
    """The file it is about, where that is not the first that was named."""
    return read(wrong.source) if Path(wrong.source).is_file() else b""


def refuse(wrong: ScenarioError, text: str | bytes, as_json: bool) -> int:
    """Says everything that is wrong with the input."""
    if as_json:
        say(documents.to_text(documents.problems_document(wrong)))
    else:
        readable = text if isinstance(text, str) else text.decode("utf-8", "replace")
        complain(problems_text(wrong, readable))
    return WRONG_INPUT


def run(arguments: argparse.Namespace) -> int:
    """One command, every way it can end."""
    try:
        return arguments.run(arguments)
    except ScenarioError as wrong:
        return refuse(wrong, "", bool(getattr(arguments, "json", False)))
    except OSError as failed:
        return cannot(failed, bool(getattr(arguments, "json", False)))
    except NoAnswer as none:
        complain(str(none))
        return NO_ANSWER
    except KeyboardInterrupt:
        complain("interrupted")
        return INTERRUPTED


def cannot(failed: OSError, as_json: bool) -> int:
    """What the system refused. Whoever closed a pipe has read enough and need not be told."""
    if failed.filename is None:
        silence(sys.stdout)
    if isinstance(failed, BrokenPipeError):
        return CLOSED_PIPE
    source = files.shown(failed.filename or "standard output")
    problem = Problem(source, 0, 0, f"{failed.strerror or failed}{meant_file(failed)}")
    return refuse(ScenarioError([problem]), "", as_json and failed.filename is not None)


def run_command(arguments: Sequence[str] | None = None) -> int:
    """Runs one command and returns its exit code. No colour is used, so NO_COLOR has no effect."""
    show_every_letter()
    made = parser()
    complete_if_asked(made)
    if not (sys.argv[1:] if arguments is None else arguments):
        complain(f"{made.format_help()}\nBegin with: windwall new {EXAMPLE}")
        return WRONG_INPUT
    try:
        stated = made.parse_args(arguments)
    except SystemExit as told:
        return int(told.code or 0)
    return run(stated)
