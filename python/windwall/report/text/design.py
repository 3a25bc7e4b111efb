"""What the design of an engine stands in for, and how much better one more word would tell it."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from windwall.report.text_layout import Blocks, bullet, paragraph, section
from windwall.scenario.data import ScenarioData

__all__ = ["ANCHOR", "WORTH_SAYING", "class_text", "design_lines"]

ANCHOR = "engine/knock_anchor/"
WORTH_SAYING = 0.98  # of the sigma: less of a narrowing is not worth a word


def design_lines(scenario: ScenarioData) -> Blocks:
    """Every value that is not stated and that the design chose."""
    values = [
        one
        for one in scenario.class_values
        if not one["stated"] and one["sigma"] > 0 and not _settled(scenario, one["address"])
    ]
    lines = [line for one in values for line in bullet(class_text(scenario, one))]
    if lines:
        lines += paragraph("A value of yours, written at its address, takes the place of any.")
    return section("Values by the design of the engine", lines)


def _settled(scenario: ScenarioData, address: str) -> bool:
    """Whether the rated figures of the stock engine told it."""
    fit = scenario.rated_fit
    if not fit:
        return False
    by_fuel = fit["anchored"] and address.startswith(ANCHOR)
    return by_fuel or any(one["address"] == address for one in fit["inputs"])


def class_text(scenario: ScenarioData, one: dict[str, Any]) -> str:
    """One value with its sigma, the words that chose it, and what the others would tell."""
    measure = scenario.measure(one["address"])
    value = measure.short(one["value"], scenario.system, 3)
    by = ", ".join(one["words"]) or "all that it may be"
    said = f"{one['address']}: {value} +/- {_spread(scenario, one, one['sigma'])}, by {by}"
    return "; ".join([said, *_narrowings(scenario, one)])


def _narrowings(scenario: ScenarioData, one: dict[str, Any]) -> Iterator[str]:
    for known in one["narrowed"]:
        if known["sigma"] < WORTH_SAYING * one["sigma"]:
            spread = _spread(scenario, one, known["sigma"])
            yield f"design/{known['word']} would make it +/- {spread}"


def _spread(scenario: ScenarioData, one: dict[str, Any], sigma: float) -> str:
    return scenario.measure(one["address"]).spread.short(sigma, scenario.system, 2)
