"""The command `windwall`: the same answers as the package, as text or as one JSON document."""

from __future__ import annotations

import argparse
import os
import sys
from collections.abc import Callable, Sequence
from pathlib import Path
from typing import Any

from windwall import __version__, documents
from windwall.errors import NoAnswer, Problem, ScenarioError
from windwall.new import DEFAULT_NAME, Unfinished, new
from windwall.ranking import rank
from windwall.scenario import LARGEST_FILE, Scenario, loads
from windwall.schema import schema
from windwall.texts.check import check_text, problems_text

ANSWERED, NO_ANSWER, WRONG_INPUT, INTERRUPTED = 0, 1, 2, 130
CLOSED_PIPE = 141


def read(path: str) -> str | bytes:
    """The text of a file; `-` is standard input."""
    if path == "-":
        return sys.stdin.buffer.read(LARGEST_FILE + 1)
    with open(path, "rb") as file:
        return file.read(LARGEST_FILE + 1)


def speed(scenario: Scenario, _arguments: argparse.Namespace) -> Any:
    return scenario.top_speed()


def rank_menu(scenario: Scenario, arguments: argparse.Namespace) -> Any:
    return rank(scenario, budget=arguments.budget, threads=arguments.threads)


class Check:
    """A file without problems, as an answer."""

    answered = True

    def __init__(self, scenario: Scenario, _arguments: argparse.Namespace) -> None:
        self.scenario = scenario

    def to_dict(self) -> dict[str, Any]:
        return documents.check_document(self.scenario)

    def summary(self) -> str:
        return check_text(self.scenario)


def parser() -> argparse.ArgumentParser:
    """What may be typed."""
    made = argparse.ArgumentParser(
        prog="windwall",
        description="How fast a small blown vehicle gets, why no faster, and what would help.",
        epilog="Exit codes: 0 answered, 1 no answer, 2 wrong input, 130 interrupted.",
    )
    made.add_argument("--version", action="version", version=f"windwall {__version__}")
    commands = made.add_subparsers(dest="command", required=True, metavar="COMMAND")
    add_question(commands, "speed", speed, "how fast, why no faster, where every watt goes")
    ranking = add_question(commands, "rank", rank_menu, "which upgrades buy the most speed")
    ranking.add_argument("--budget", metavar="SUM", help='what may be spent, such as "500 EUR"')
    ranking.add_argument(
        "--threads", type=count, default=0, metavar="N", help="how many at once; all by default"
    )
    add_question(commands, "check", Check, "what is wrong with a file, and what it leaves open")
    add_new(commands)
    written = commands.add_parser("schema", help="the JSON Schema of scenario files")
    written.add_argument("--output", metavar="FILE", help="where to write it; else it is printed")
    written.add_argument("--json", action="store_true", help="it is JSON in any case")
    written.set_defaults(run=write_schema)
    return made


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
    made.set_defaults(run=make_new)


def make_new(arguments: argparse.Namespace) -> int:
    """Every way in which the questions may end."""
    try:
        return new(arguments)
    except ScenarioError as wrong:
        return refuse(wrong, "", False)
    except Unfinished:
        print("the answers ended before the questions; nothing is written", file=sys.stderr)
        return WRONG_INPUT
    except KeyboardInterrupt:
        print("interrupted; nothing is written", file=sys.stderr)
        return INTERRUPTED


def add_question(
    commands: Any, name: str, ask: Callable[..., Any], says: str
) -> argparse.ArgumentParser:
    """One question about one file."""
    made = commands.add_parser(name, help=says, description=f"Says {says}.")
    made.add_argument("file", metavar="FILE", help="a scenario file; - reads standard input")
    made.add_argument("--json", action="store_true", help="one JSON document, numbers in SI")
    made.set_defaults(run=answer, ask=ask)
    return made


def count(text: str) -> int:
    """A number of threads."""
    number = int(text)
    if not 0 <= number <= 1024:
        raise ValueError(text)
    return number


def answer(arguments: argparse.Namespace) -> int:
    """Reads the file, asks the question, prints the answer."""
    text = read(arguments.file)
    source = "standard input" if arguments.file == "-" else arguments.file
    try:
        found = arguments.ask(loads(text, source), arguments)
    except ScenarioError as wrong:
        return refuse(wrong, text, arguments.json)
    print(documents.to_text(found.to_dict()) if arguments.json else found.summary())
    return ANSWERED if found.answered else NO_ANSWER


def refuse(wrong: ScenarioError, text: str | bytes, as_json: bool) -> int:
    """Says everything that is wrong with the input."""
    if as_json:
        problems = [problem._asdict() for problem in wrong.problems]
        print(documents.to_text({"problems": problems, "cautions": []}))
    else:
        readable = text if isinstance(text, str) else text.decode("utf-8", "replace")
        print(problems_text(wrong, readable), file=sys.stderr)
    return WRONG_INPUT


def write_schema(arguments: argparse.Namespace) -> int:
    """Prints the schema, or writes it to a file."""
    text = documents.to_text(schema())
    if arguments.output is None:
        print(text)
    else:
        Path(arguments.output).write_text(text + "\n", encoding="utf-8")
    return ANSWERED


def run(arguments: argparse.Namespace) -> int:
    """One command, every way it can end."""
    try:
        return arguments.run(arguments)
    except OSError as failed:
        if isinstance(failed, BrokenPipeError):
            return quiet_end()
        problem = Problem("", 0, 0, failed.strerror or str(failed))
        return refuse(ScenarioError([problem], str(failed.filename or "")), "", _json(arguments))
    except NoAnswer as none:
        print(none, file=sys.stderr)
        return NO_ANSWER
    except KeyboardInterrupt:
        print("interrupted", file=sys.stderr)
        return INTERRUPTED


def _json(arguments: argparse.Namespace) -> bool:
    return bool(getattr(arguments, "json", False))


def quiet_end() -> int:
    """Whoever read the output has gone; nothing more is written, not even at exit."""
    os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
    return CLOSED_PIPE


def main(arguments: Sequence[str] | None = None) -> int:
    """Runs one command and returns its exit code. No colour is used, so NO_COLOR has no effect."""
    for stream in (sys.stdout, sys.stderr):
        # A title may hold letters that a terminal cannot show.
        if hasattr(stream, "reconfigure"):
            stream.reconfigure(errors="backslashreplace")
    return run(parser().parse_args(arguments))


if __name__ == "__main__":
    sys.exit(main())
