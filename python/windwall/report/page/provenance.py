"""Where an input comes from: the file, what it learned, rated figures, a design, a usual value."""

from __future__ import annotations

import re
from collections.abc import Callable
from typing import Any

from windwall.quantities.uncertain_input import UncertainInput
from windwall.report.plot_axes import human
from windwall.scenario.data import ScenarioData
from windwall.scenario.inputs import row

__all__ = [
    "DESIGN", "FILE", "LEARNED", "NOTE", "RATED", "SOURCE", "USUAL", "known_by", "source",
]  # fmt: skip

FILE = "the file"
LEARNED = "the file, learned from {facts} facts, as its notes say"
RATED = "rated figures of the stock engine"
DESIGN = "design of the engine, {words}"
USUAL = "usual value"
SOURCE = re.compile(r" Usually [^(]*\((?P<source>.*)\)\.$")
NOTE = re.compile(r"Learned by windwall \S+ from (?P<facts>\d+) facts")


def known_by(scenario: ScenarioData) -> Callable[[UncertainInput], str]:
    """Says of an input where its value and its +/- come from."""
    document, fit = scenario.document(), scenario.rated_fit
    note = NOTE.search(document.get("notes", ""))
    pairs = [one["between"] for one in document.get("correlations", [])] if note else []
    learned = {address for pair in pairs for address in pair}
    rated = {one["address"] for one in fit["inputs"]} if fit else set()
    design = {one["address"]: one for one in scenario.class_values if not one["stated"]}

    def told(one: UncertainInput) -> str:
        if one.given:
            if note and one.address in learned:
                return LEARNED.format(facts=note["facts"])
            return FILE
        if one.address in rated:
            return RATED
        if one.address in design:
            return _of_design(design[one.address])
        return _with(USUAL, source(row(document, one.address)))

    return told


def source(node: dict[str, Any]) -> str:
    """What the row of an input names as the source of its usual value; empty where it has none."""
    found = SOURCE.search(node["description"])
    return found["source"] if found else ""


def _of_design(one: dict[str, Any]) -> str:
    words = ", ".join(map(human, one["words"])) or "of which nothing is said"
    return _with(DESIGN.format(words=words), "; ".join(one["sources"]))


def _with(known: str, said: str) -> str:
    """The source behind it, whole: half a sentence is no source."""
    return f"{known}: {said}" if said else known
