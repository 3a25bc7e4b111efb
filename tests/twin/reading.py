"""A scenario file as nested dicts of SI floats, with the defaults that `windwall schema` prints.

Units are read from the tables of docs/units.md, by the dimension that the schema names.
"""

import json
import re
from functools import cache
from pathlib import Path

from windwall.scenario.schema import whole_schema

ROOT = Path(__file__).parents[2]
QUANTITY = re.compile(r"\s*([-+0-9.eE]+)\s*([^±+]*?)\s*(?:(?:±|\+/-)\s*[0-9.eE+-]+\s*(.*?))?\s*")
SPREAD = re.compile(r"(?:±|\+/-)\s*([0-9.eE+-]+)")
ALIKE = str.maketrans({"²": "2", "³": "3", "·": " ", "*": " ", "^": None})
SKIPPED = {
    "upgrades",
    "outings",
    "observed",
    "limits",
    "title",
    "notes",
    "format",
    "$schema",
    "units",
}


def told(scenario):
    """The document with what the design of the engine and its rated figures chose written out: a
    table and a fit that the twin does not have.
    """
    chosen = [one["address"] for one in scenario.class_values if not one["stated"]]
    return scenario.set({address: scenario.get(address) for address in chosen}).document()


@cache
def schema():
    # a schema may come as text or as a dict
    found = whole_schema()
    return json.loads(found) if isinstance(found, str) else found


@cache
def unit_tables():
    """{dimension: {unit: (shift, factor, divisor)}}"""
    tables, table = {}, {}
    for line in (ROOT / "docs" / "units.md").read_text("utf-8").splitlines():
        if line.startswith("## "):
            table = tables[line[3:].replace(" ", "_")] = {}
        cells = [cell.strip() for cell in line.strip("|").split("|")]
        if len(cells) == 7 and cells[0] not in {"unit", "---"}:
            names = re.findall(r"`([^`]*)`", cells[0] + cells[1]) or [""]
            for name in names:
                table[name.translate(ALIKE)] = tuple(map(float, cells[2:5]))
    return tables


def quantity(text, dimension):
    """SI value of "36 ± 0.2 mm"; what is known of its spread is passed over."""
    if not isinstance(text, str):
        return float(text)
    value, unit, behind = QUANTITY.fullmatch(text).groups()
    unit = (unit or behind or "").translate(ALIKE).replace("°", "deg")
    if dimension == "whole_number":
        return float(value)
    if unit == "%":
        return float(value) / 100
    shift, factor, divisor = unit_tables()[dimension][unit]
    return (float(value) + shift) * factor / divisor


def any_unit(unit):
    """Where a table's column names its unit, and the schema no dimension."""
    return next(table[unit] for table in unit_tables().values() if unit in table)


def branch(node, value):
    """The schema of the kind that a part names."""
    for choice in node.get("allOf", []):
        if choice["if"]["properties"]["kind"]["const"] == value["kind"]:
            return choice["then"]
    return node


def understood(node, value):
    """What stands at one place of the file, its gaps filled from the schema."""
    if value is None:
        if "default" not in node:
            # a group is filled unless something in it has no default
            fillable = "properties" in node and not node.get("required")
            return understood(node, {}) if fillable else None
        value = node["default"]
    if isinstance(value, dict) and "columns" in value:
        units = value["columns"].items()
        columns = zip(*value["rows"], strict=True)
        return {
            key: [(number + shift) * factor / divisor for number in column]
            for (key, unit), column in zip(units, columns, strict=True)
            for shift, factor, divisor in [any_unit(unit)]
        }
    if isinstance(value, dict):
        keys = branch(node, value)["properties"]
        return {key: understood(sub, value.get(key)) for key, sub in keys.items()}
    if isinstance(value, list):
        return [understood(node["items"], entry) for entry in value]
    if "$ref" in node and not isinstance(value, bool):
        return quantity(value, node["$ref"].rsplit("/", 1)[-1])
    return value


def scenario(source):
    """`source`: the path of a file, or what its JSON holds."""
    given = source if isinstance(source, dict) else json.loads(Path(source).read_text("utf-8"))
    roots = schema()["properties"]
    read = {
        key: understood(node, given.get(key)) for key, node in roots.items() if key not in SKIPPED
    }
    if "knock_anchor" in read["engine"]:
        stated = given["engine"].get("knock_anchor", {}).get("octane_number")
        read["engine"]["knock_anchor"]["known_to"] = spread(stated)
    return read


def spread(text):
    """The number behind the ± of a plain number, or None."""
    found = SPREAD.search(text) if isinstance(text, str) else None
    return float(found[1]) if found else None
