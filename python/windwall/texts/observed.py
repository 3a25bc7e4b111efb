"""The model held against what was seen, first of all."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from windwall.explaining import Explained, Explanation, explained
from windwall.layout import bullet, paragraph, section, table
from windwall.measures import ENGINE_SPEED
from windwall.observed import FAR_OFF, Compared, Fact

if TYPE_CHECKING:
    from windwall.scenario import Scenario

HEADER = ("", "observed", "+/-", "model", "+/- by knock", "standard deviations off")


def observed_lines(scenario: Scenario) -> list[str]:
    """Model beside observation, in standard deviations of both, with a caution where far off."""
    system = scenario.system
    compared = scenario.against_observed()
    lines = table([HEADER, *(_row(one, system) for one in compared)]) if compared else []
    for one in explained(scenario):
        lines += caution(one, scenario)
    lines += [line for sentence in not_compared(scenario) for line in paragraph(sentence)]
    return section("Held against what was observed", lines)


def label(fact: Fact, system: str) -> str:
    """What was seen, and when."""
    name = fact.key.replace("_", " ")
    if fact.at_top_speed:
        return name
    return f"{name} at {ENGINE_SPEED.text(fact.engine_speed, system, 4)}"


def _row(one: Compared, system: str) -> tuple[str, ...]:
    measure, name = one.measure, label(one.fact, system)
    if one.key == "knock":
        spread = f"{one.model_sigma:.1f}"
        return name, str(one.observed), "", f"{one.model:+.1f} octane", spread, f"{one.off:+.1f}"
    observed, model = (measure.short(value, system) for value in (one.observed, one.model))
    if one.key == "gear":
        return name, observed, "", model, "", "same" if one.model == one.observed else "another"
    known = "not stated" if one.sigma is None else measure.spread.number(one.sigma, system, 2)
    spread = measure.spread.number(one.model_sigma, system, 2)
    return name, observed, known, model, spread, "" if one.off is None else f"{one.off:+.1f}"


def caution(one: Explained, scenario: Scenario) -> list[str]:
    """That a fact is far off, and which single input would explain it."""
    name = label(one.compared.fact, scenario.system)
    opening = (
        f"CAUTION: the model is over {FAR_OFF} standard deviations from what was observed in "
        f"{name}, and what follows is worth less until that is explained. "
    )
    if not one.inputs:
        return paragraph(
            opening + "No single input moved within two of its standard deviations explains it: "
            "several are wrong at once, or something that the file or the model does not have."
        )
    lines = paragraph(opening + "Any one of these, so far off, would explain it:")
    return lines + [line for each in one.inputs for line in bullet(moved_text(each, scenario))]


def moved_text(one: Explanation, scenario: Scenario) -> str:
    """An input, what it is and what it would have to be."""
    known, measure = one.input, scenario.measure(one.input.address)
    now, then = (measure.short(value, scenario.system, 3) for value in (known.value, one.value))
    stated = "stated" if known.given else "by default"
    return (
        f"{known.address}: {then} instead of {now} {stated}, "
        f"{one.deviations:+.1f} of its standard deviations"
    )


def not_compared(scenario: Scenario) -> Iterator[str]:
    """Observations that the model cannot be asked about."""
    for at, entry in enumerate(scenario.observed, 1):
        if entry["what"] != "top speed" and not entry["engine_speed"]:
            yield f"observed/{at} is not compared: full throttle needs its engine_speed."
