"""The model held against what was seen, first of all."""

from __future__ import annotations

from collections.abc import Iterator

from windwall.quantities.measures import ENGINE_SPEED
from windwall.report.text_layout import bullet, paragraph, section, table
from windwall.results.diagnosis import (
    FAR_OFF,
    Compared,
    Diagnosis,
    Explained,
    Explanation,
    Fact,
    heard_tells,
    listened_for_knock,
)
from windwall.results.scenario_info import ScenarioInfo

HEADER = ("", "observed", "+/-", "model", "+/- by knock", "standard deviations off")
NOT_YET = "The model is not held against what was observed here: diagnose() of the scenario does."


def observed_lines(info: ScenarioInfo, diagnosis: Diagnosis | None) -> list[str]:
    """Model beside observation, in standard deviations of both, with a caution where far off."""
    heading = "Held against what was observed"
    if diagnosis is None:
        return section(heading, paragraph(NOT_YET)) if info.observed else []
    system, compared = info.system, diagnosis.compared
    lines = table([HEADER, *(_row(one, system) for one in compared)]) if compared else []
    for one in diagnosis.explained:
        lines += caution(one, system)
    lines += [line for sentence in not_compared(info) for line in paragraph(sentence)]
    return section(heading, lines)


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


def caution(one: Explained, system: str) -> list[str]:
    """That a fact is far off, and which single input would explain it."""
    name = label(one.compared.fact, system)
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
    return lines + [line for each in one.inputs for line in bullet(moved_text(each, system))]


def moved_text(one: Explanation, system: str) -> str:
    """An input, what it is and what it would have to be."""
    known = one.input
    now, then = (known.measure.short(value, system, 3) for value in (known.value, one.value))
    stated = "stated" if known.given else "by default"
    return (
        f"{known.address}: {then} instead of {now} {stated}, "
        f"{one.deviations:+.1f} of its standard deviations"
    )


def not_compared(info: ScenarioInfo) -> Iterator[str]:
    """Observations that the model cannot be asked about."""
    for at, entry in enumerate(info.observed, 1):
        if entry["what"] != "top speed" and not entry["engine_speed"]:
            yield f"observed/{at} is not compared: full throttle needs its engine_speed."
        if listened_for_knock(entry) and not heard_tells(entry, info.spark_is_chosen):
            yield (
                f'What was heard of knock in observed/{at} ("{entry["knock"]}") says nothing until '
                "its retard is stated: the spark that was driven."
            )
