"""What rows say of ranges, usual values and examples, in the units of another system."""

from __future__ import annotations

import re
from typing import Any

from windwall import _core
from windwall.quantities.measures import SPEED, Measure
from windwall.scenario.schema import SHARED

__all__ = [
    "AS_READ", "BESIDE", "FROM", "NUMBER", "RANGE", "SYSTEMS", "USUAL", "described", "dimension_of",
    "in_system", "told",
]  # fmt: skip

NUMBER = r"-?\d+(?:\.\d+)?(?:e[-+]?\d+)?"
BESIDE = r"(?: above vacuum| above the local air| of difference)"
RANGE = re.compile(rf"From ({NUMBER}) to ({NUMBER}) ([^.(]+?)({BESIDE}?)\.(?= |$)")
USUAL = re.compile(
    rf"Usually ({NUMBER}) ([^,(]+?)(?:, give or take ({NUMBER}) ([^,(]+?))?(?= \(|\.$|$)"
)
AS_READ = ("", " gauge", " abs")  # behind a unit of pressure that may count from either
FROM = ("psia", "psig")  # which say themselves what they count from
SYSTEMS = ("metric", "us")


def dimension_of(node: dict[str, Any]) -> str:
    """What a row measures; empty of words and lists."""
    return node.get("$ref", "").removeprefix(f"#/{SHARED}/").replace("_", " ")


def described(node: dict[str, Any], system: str) -> str:
    """The description of a row, its range and its usual value in this system; its source is quoted
    in the units that it was read in.
    """
    text, dimension = node.get("description", ""), dimension_of(node)
    if not dimension or system == SYSTEMS[0]:
        return str(text)

    def ranged(found: re.Match[str]) -> str:
        low, high, unit, beside = found.groups()
        least, most = (told(f"{one} {unit}", dimension, system) for one in (low, high))
        number = least.partition(" ")[0]
        return f"From {number} to {most}{'' if most.endswith(FROM) else beside}."

    def usual(found: re.Match[str]) -> str:
        value, unit, spread, its_unit = found.groups()
        said = f"Usually {told(f'{value} {unit}', dimension, system)}"
        if spread is None:
            return said
        around = Measure(dimension, unit).spread.dimension
        its_unit = "K" if around != dimension else its_unit
        return f"{said}, give or take {told(f'{spread} {its_unit}', around, system)}"

    return USUAL.sub(usual, RANGE.sub(ranged, text))


def told(text: str, dimension: str, system: str) -> str:
    """One quantity with its unit in this system; as it is where it has none to change."""
    number, _, unit = text.partition(" ")
    for beside in AS_READ:
        try:
            value, _ = _core.read_quantity(f"{number} {unit}{beside}", dimension, unit, "")
        except ValueError:
            continue
        measure = SPEED if dimension == SPEED.dimension else Measure(dimension, unit)
        return measure.short(value, system, 3)
    return text


def in_system(node: Any, system: str) -> Any:
    """A schema whose descriptions and examples are in this system; what it takes stays the same,
    and so do its defaults, which are exact.
    """
    if isinstance(node, list):
        return [in_system(one, system) for one in node]
    if not isinstance(node, dict) or system == SYSTEMS[0]:
        return node
    made = {key: in_system(one, system) for key, one in node.items()}
    if isinstance(node.get("description"), str):
        made["description"] = described(node, system)
    if dimension_of(node) and isinstance(node.get("examples"), list):
        made["examples"] = [told(one, dimension_of(node), system) for one in node["examples"]]
    return made
