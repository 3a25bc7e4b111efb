"""The inputs of a scenario one by one: what the row of each says, and how well each is known."""

from __future__ import annotations

from functools import cache
from typing import Any

from windwall import _core
from windwall.errors import ScenarioError
from windwall.quantities.si import si
from windwall.quantities.uncertain_input import UncertainInput
from windwall.scenario.data import KNOCK_ANCHOR, ScenarioData
from windwall.scenario.schema import whole_schema

__all__ = [
    "BELT_SLIP", "DRIVE_RATIO", "SLIPS", "belt_slips", "moved", "row", "sentence",
    "uncertain_inputs",
]  # fmt: skip

DRIVE_RATIO = "drive_ratio"
# Of the ratio, one standard deviation: 1 to 2 % is creep of a sound V-belt, from 3 % on something
# is wrong with it (a belt maker's glossary).
BELT_SLIP = 0.02
SLIPS = "A belt that slips"


@cache
def _root() -> dict[str, Any]:
    return whole_schema()


def row(document: dict[str, Any], address: str) -> dict[str, Any]:
    """The schema of one value of a document, made from its row."""
    node, here = _root(), document
    for key in address.split("/"):
        node, here = _step(node, here, key)
    return node


def _step(node: dict[str, Any], here: Any, key: str) -> tuple[dict[str, Any], Any]:
    if node["type"] == "array":
        inside = here[int(key) - 1] if key.isdigit() else _part(here, key)
        return _of_kind(node["items"], inside), inside
    return _of_kind(node["properties"][key], (here or {}).get(key)), (here or {}).get(key)


def _part(parts: list[dict[str, Any]], name: str) -> dict[str, Any]:
    return next(part for part in parts if part["id"] == name)


def _of_kind(node: dict[str, Any], inside: Any) -> dict[str, Any]:
    """A part or an engine has the rows of its kind."""
    if "allOf" not in node:
        return node
    kinds = ((one["if"]["properties"]["kind"]["const"], one["then"]) for one in node["allOf"])
    return next(rows for kind, rows in kinds if kind == inside["kind"])


def sentence(node: dict[str, Any]) -> str:
    """What a row is about, without its range and its default."""
    return node["description"].partition(". From ")[0].partition(". Usually ")[0].rstrip(".")


def uncertain_inputs(scenario: ScenarioData) -> list[UncertainInput]:
    """Every input that has one standard deviation, stated or of its default."""
    found = []
    for address, meaning in _core.numbers(scenario.core):
        value = scenario.get(address)
        sigma = scenario.known_to(address) if isinstance(value, float) else 0
        if sigma > 0:
            given, measure = scenario.given(address), scenario.measure(address)
            found.append(UncertainInput(address, meaning, value, sigma, given, measure))
    return found


def belt_slips(scenario: ScenarioData) -> list[UncertainInput]:
    """The ratio of every drive of a blower that is stated without a +/-: pulleys can be measured,
    but a belt slips.
    """
    return [
        UncertainInput(address, SLIPS, value, BELT_SLIP * value, True, scenario.measure(address))
        for address, _ in _core.numbers(scenario.core)
        if address.startswith("charge_path/")
        and address.endswith("/" + DRIVE_RATIO)
        and isinstance(value := scenario.get(address), float)
        and scenario.sigma(address) == 0
    ]


def moved(scenario: ScenarioData, one: UncertainInput, deviations: float) -> ScenarioData | None:
    """The scenario with one input that many standard deviations away; None beyond its range. An
    engine with rated figures is brought back onto them by what the file leaves open.
    """
    try:
        value = one.value + deviations * one.sigma
        if one.address == KNOCK_ANCHOR:
            return scenario.at_knock_anchor(value)
        return scenario.set(_restated(scenario, one.address) | {one.address: si(value)})
    except ScenarioError:
        return None


def _restated(scenario: ScenarioData, address: str) -> dict[str, str]:
    """A rated figure as it stands in the file: stated beside a change it has the stock engine found
    anew.
    """
    if not address.startswith("engine/") or scenario.rated_fit is None:
        return {}
    key, text = next(iter(scenario.document()["engine"]["rated"].items()))
    return {f"engine/rated/{key}": text}
