"""What `windwall new` prints of a question, from its row, and what skipping costs."""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import Any

from windwall import _core
from windwall.cli.new_question import Question
from windwall.cli.new_questions import (
    QUESTIONS,
    all_examples,
    document,
    example,
    trial,
)
from windwall.cli.new_readings import Values
from windwall.cli.new_upgrades import CHANGED, MENU
from windwall.cli.new_us import ALSO, EXAMPLES
from windwall.scenario.data import ScenarioData
from windwall.scenario.inputs import row, sentence
from windwall.scenario.units_told import SYSTEMS, described, dimension_of

__all__ = [
    "ASKED", "METRIC", "MORE", "UNBOUNDED", "US", "asked", "cost_of_skipping", "example_in",
    "explained", "said_of", "units_of",
]  # fmt: skip

METRIC, US = SYSTEMS

UNBOUNDED = ("primary", "rated_torque", "rated_power")  # the row is of a part of the answer
# Words of `windwall new` where a row is about one part and the question about which part there is.
ASKED = {
    "title": "What the vehicle is called",
    "displacement": "Displacement of all cylinders together, as printed",
    "compression_ratio": "Compression ratio of the stock engine",
    "rated_torque": "Torque that the maker printed of the stock engine, and its speed",
    "rated_power": "Power that the maker printed of the stock engine, and its speed",
    "compression_now": "Compression ratio as it is now, if that was changed",
    "blower": "Volume moved by one turn of the blower's driven rotor",
    "fuel": "Research octane number of the fuel in the tank, as the pump states it",
    "ethanol": "Ethanol in that fuel by volume",
    "primary": "Teeth of the primary drive from crank to gearbox, front:rear, or its ratio",
    "final_drive": "Turns of the gearbox's output for one turn of the driven wheels",
    "gears": "Ratios of the gearbox, first gear first, the value 1 for a single fixed gear",
    "tyre": "Size on the sidewall of the driven tyres",
    "seen_speed": "Top speed that was measured with the vehicle as described",
    "seen_gear": "The gear it was in, counted from 1",
    "upgrades": "Upgrades that you consider, each with a cost: sprockets, pulley, cooler, fairing",
    "upgrade": "One of your own: what it is called, what it costs, what it changes",
    "upgrade_2": "Another of your own",
    "upgrade_3": "Another of your own",
}
# What `?` tells beside the row.
MORE = {
    "upgrades": "Sprockets and pulley are tried in several sizes around those that there are. What "
    "a cooler or a fairing does is a guess until you put the numbers of yours into the file.",
    "upgrade": "What it changes is one change or several, with commas between: "
    f"{', '.join(CHANGED)}, or any address of a file, and behind it = with a new value, x with a "
    "factor, + or - with an amount.",
}


def said_of(question: Question) -> str:
    """What a question asks for, in a few words."""
    return ASKED.get(question.name) or sentence(_row(question))


def _row(question: Question) -> dict[str, Any]:
    """The row of an answer; of several values at once there is none."""
    if question.address == MENU:
        return {}
    return row(document(all_examples()), question.row or question.address)


def example_in(question: Question, system: str) -> str:
    return EXAMPLES.get(question.name, question.example) if system == US else question.example


def _also(question: Question, system: str) -> str:
    return ALSO.get(question.name, question.also) if system == US else question.also


def _bounds(question: Question, system: str) -> str:
    found = re.search(r"\. (From [^(]*?)\.(?= |$)", described(_row(question), system))
    return found[1] if found and question.name not in UNBOUNDED else ""


def asked(question: Question, system: str = METRIC, place: str = "") -> str:
    """The one line that is printed, made from the row; at its end where the talk has come to."""
    words = f"{question.name}: {said_of(question)}"
    bounds, also = _bounds(question, system), _also(question, system)
    words += f", {bounds[0].lower()}{bounds[1:]}" if bounds else ""
    words += f"; such as {example_in(question, system)}"
    words += f", or {also}" if also else ""
    return f"{words}. {_empty(question, system)}{f' ({place})' if place else ''}"


def _empty(question: Question, system: str) -> str:
    """What an empty answer means."""
    usual = re.search(r"(Usually .*)", described(_row(question), system))
    default = f"{usual[1][0].lower()}{usual[1][1:]}" if usual else "left out"
    if question.needed and not question.empty:
        return "Needed."
    return f"Empty: {(question.empty or default).rstrip('.')}."


def explained(question: Question, system: str = METRIC) -> Iterator[str]:
    """What `?` tells of a question: what is meant, its units, its range, its usual value, how much
    worse something is known without an answer, and where that stands in the file.
    """
    node = _row(question)
    yield f"{said_of(question)}."
    if more := MORE.get(question.name):
        yield more
    if words := node.get("enum"):
        yield f"One of {', '.join(words)}; the beginning of a word is enough."
    if units := units_of(node):
        yield f"{units}, with ± or +/- and how well it is known behind it where that can be told."
    if bounds := _bounds(question, system):
        yield f"{bounds}."
    if usual := re.search(r"(Usually .*)", described(node, system)):
        yield f"{usual[1].rstrip('.')}."
    also = _also(question, system)
    yield f"For example {example_in(question, system)}{f', or {also}' if also else ''}."
    yield _empty(question, system)
    if question.has_prior:
        yield f"Left empty, {cost_of_skipping(question, system)}."
    if not question.address.startswith("stock/"):
        yield f"In the file it stands at {question.address}."


def units_of(node: dict[str, Any]) -> str:
    """The units that a quantity may be typed in, in the words of the loader."""
    dimension = dimension_of(node)
    if not dimension or node.get("type") == "string":
        return ""
    try:
        _core.read_quantity("1 unit", dimension, "", "")
    except ValueError as refused:
        found = re.search(r"(an? [^;,]+) is expected \(([^;]*)\)", str(refused))
        if not found:
            return ""
        units = "" if found[2] == "%" and "%" not in node["description"] else f" in {found[2]}"
        return f"{found[1][0].upper()}{found[1][1:]}{units}"
    return ""


def cost_of_skipping(question: Question, system: str = METRIC) -> str:
    """What is known worst beside an engine of which all is answered: that of the examples."""
    told: Values = {}
    for one in QUESTIONS:
        told |= example(one) if one.has_prior else {}
    untold = {key: value for key, value in told.items() if key not in example(question)}
    with_it, without = (ScenarioData.read(trial(values)) for values in (told, untold))

    def wider(address: str) -> float:
        known = with_it.known_to(address)
        return without.known_to(address) / known if known > 0 else 0

    address = max((one["address"] for one in with_it.class_values), key=wider)
    spread = with_it.measure(address).spread
    then, now = (spread.short(one.known_to(address), system, 2) for one in (without, with_it))
    return f"{address} is known to +/- {then} instead of +/- {now}"
