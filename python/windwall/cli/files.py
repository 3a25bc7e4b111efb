"""What is done with files: an entry changed, two of them compared, parts and keys looked up."""

from __future__ import annotations

import argparse
import json
from collections.abc import Callable
from typing import TYPE_CHECKING, Any

from windwall.cli.output import say
from windwall.errors import Problem, ScenarioError
from windwall.report.documents import to_text
from windwall.report.text.kinds import kinds_text
from windwall.scenario import files
from windwall.scenario.data import ScenarioData
from windwall.scenario.kinds import kinds
from windwall.scenario.schema import schema_text, whole_schema
from windwall.scenario.units_told import SYSTEMS, in_system

if TYPE_CHECKING:
    from windwall.results.differences import Differences

__all__ = [
    "Changed", "add_changes", "add_kinds", "add_other", "add_questions", "add_schema", "add_units",
    "compared", "show_kinds", "split", "write_schema",
]  # fmt: skip


class Changed:
    """A file with other values: written, or printed where no name is given for it."""

    answered = True

    def __init__(self, scenario: ScenarioData, arguments: argparse.Namespace) -> None:
        changes = dict(map(split, arguments.changes))
        self.before, self.after = scenario, scenario.set(changes)
        self.addresses, self.output = list(changes), arguments.output
        if self.output is not None:
            files.write(self.output, self.after.text())

    def to_dict(self) -> dict[str, Any]:
        changed = {
            address: {"before": self.before.get(address), "after": self.after.get(address)}
            for address in self.addresses
        }
        return {"written": self.output, "changed": changed, "digest": self.after.digest}

    def summary(self) -> str:
        if self.output is None:
            return self.after.text().rstrip("\n")
        lines = [
            f"{address}: {self.before.readable(address)} -> {self.after.readable(address)}"
            for address in self.addresses
        ]
        return "\n".join([*lines, f"written to {files.shown(self.output)}"])


def split(change: str) -> tuple[str, Any]:
    """`body/mass=340 kg`; nothing behind the sign empties an entry that may be empty."""
    address, sign, value = change.partition("=")
    if not sign:
        problem = Problem(
            change, 0, 0, 'a change is an address, "=" and a value: body/mass="340 kg"'
        )
        raise ScenarioError([problem], "set")
    return address, _typed(value)


def _typed(value: str) -> Any:
    """A bare number or a word of JSON is that, and all else a text with its unit."""
    if not value:
        return None
    try:
        found = json.loads(value)
    except ValueError:
        return value
    return found if isinstance(found, (bool, list)) else value


def compared(scenario: ScenarioData, arguments: argparse.Namespace) -> Differences:
    from windwall.study.differences import compare_files  # only where it is asked

    other = ScenarioData.read(files.read(arguments.other), arguments.other)
    return compare_files(scenario, other)


def add_questions(commands: Any, add_question: Callable[..., argparse.ArgumentParser]) -> None:
    """Everything that is done with files."""
    add_changes(add_question(commands, "set", Changed, "what becomes of a file's entries"))
    add_other(add_question(commands, "compare", compared, "what two files differ in"))
    add_kinds(commands)


def add_changes(made: argparse.ArgumentParser) -> None:
    """What is changed, and where it is written."""
    made.add_argument(
        "changes", nargs="+", metavar="ADDRESS=VALUE", help='such as body/mass="340 ± 5 kg"'
    )
    made.add_argument("-o", "--output", metavar="NEW", help="where to write it; else it is printed")


def add_other(made: argparse.ArgumentParser) -> None:
    """The file beside the first."""
    made.add_argument("other", metavar="OTHER", help="another scenario file")


def add_kinds(commands: Any) -> None:
    """The one command without a file."""
    says = "every kind of part and every key, with unit, range, usual value and source"
    made = commands.add_parser("kinds", help=says, description=f"Lists {says}.")
    made.add_argument("kind", nargs="?", metavar="KIND", help="one kind or group alone")
    made.add_argument("--json", action="store_true", help="one JSON document")
    add_units(made, "of ranges, usual values and examples; else metric")
    made.set_defaults(run=show_kinds)


def add_schema(commands: Any) -> None:
    """What editors read."""
    made = commands.add_parser("schema", help="the JSON Schema of scenario files")
    made.add_argument("--output", metavar="FILE", help="where to write it; else it is printed")
    made.add_argument("--json", action="store_true", help="it is JSON in any case")
    add_units(made, "of what it tells; it takes the same files in either, and metric unless stated")
    made.set_defaults(run=write_schema)


def add_units(made: argparse.ArgumentParser, of: str) -> None:
    """Every command takes them."""
    made.add_argument("--units", choices=SYSTEMS, help=of)


def show_kinds(arguments: argparse.Namespace) -> int:
    found = kinds(arguments.kind, arguments.units or SYSTEMS[0])
    say(to_text([one.to_dict() for one in found]) if arguments.json else kinds_text(found))
    return 0


def write_schema(arguments: argparse.Namespace) -> int:
    """Prints the schema, or writes it to a file."""
    text = schema_text(in_system(whole_schema(), arguments.units or SYSTEMS[0]))
    if arguments.output is None:
        say(text)
    else:
        files.write(arguments.output, text + "\n")
    return 0
