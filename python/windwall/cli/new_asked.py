"""The one line that `windwall new` prints for a question, from its row, and what skipping costs."""

from __future__ import annotations

import re

from windwall.cli.new_questions import QUESTIONS, Question, all_examples, document, example, trial
from windwall.cli.new_readings import Values
from windwall.scenario.data import ScenarioData
from windwall.scenario.inputs import row, sentence

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
    "primary": "Teeth of the primary drive from crank to gearbox, front:rear, or its ratio",
    "final_drive": "Turns of the gearbox's output for one turn of the driven wheels",
    "gears": "Ratios of the gearbox, first gear first, the value 1 for a single fixed gear",
    "tyre": "Size on the sidewall of the driven tyres",
    "seen_speed": "Top speed that was measured with the vehicle as described",
    "seen_gear": "The gear it was in, counted from 1",
}


def asked(question: Question) -> str:
    """The one line that is printed, made from the row."""
    node = row(document(all_examples()), question.row or question.address)
    says, described = sentence(node), node["description"]
    says = ASKED.get(question.name, says)
    bounds = re.search(r"\. (From [^(]*?)\.(?= |$)", described)
    words = f"{question.name}: {says}"
    if bounds and question.name not in UNBOUNDED:
        words += f", {bounds[1][0].lower()}{bounds[1][1:]}"
    words += f"; such as {question.example}"
    words += f", or {question.also}" if question.also else ""
    return f"{words}. {_empty(question, described)}"


def _empty(question: Question, described: str) -> str:
    """What an empty answer means, and how much worse something is then known."""
    usual = re.search(r"(Usually .*)", described)
    default = f"{usual[1][0].lower()}{usual[1][1:]}" if usual else "left out"
    if question.needed and not question.empty:
        return "Needed."
    says = f"Empty: {(question.empty or default).rstrip('.')}"
    if question.has_prior:
        says += f"; {cost_of_skipping(question)}"
    return f"{says}."


def cost_of_skipping(question: Question) -> str:
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
    then, now = (spread.short(one.known_to(address), "metric", 2) for one in (without, with_it))
    return f"then {address} is known to +/- {then} instead of +/- {now}"
