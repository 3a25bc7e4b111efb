"""Limits passed, and ratings that nobody gave."""

from __future__ import annotations

from collections.abc import Iterable

from windwall.quantities.measures import SHARE, SPEED, Measure
from windwall.report.text_layout import Blocks, paragraph, section, table
from windwall.report.wording.scenario import in_gear
from windwall.results.record import result_row
from windwall.results.scenario_info import ScenarioInfo
from windwall.results.values import Values

__all__ = [
    "AHEAD", "ONE_AHEAD", "ahead_lines", "bound_text", "limits_table", "plainly",
    "result_measure", "unrated_lines",
]  # fmt: skip
AHEAD = "Going faster it would pass these limits, the nearest first: {limits}."
ONE_AHEAD = "{address} {bound} ({why}) {share} or {speed} further"


def result_measure(address: str) -> Measure:
    """What a result measures, from its address alone."""
    return Measure.of_row(result_row(address))


def bound_text(passed: Values, system: str) -> str:
    measure = result_measure(passed.address)
    word, bound = ("max", passed.max) if passed.max is not None else ("min", passed.min)
    if passed.max is not None and passed.min is not None and passed.worst < passed.min:
        word, bound = "min", passed.min
    return f"{word} {measure.short(bound, system)}"


def limits_table(passed: Iterable[Values], info: ScenarioInfo) -> Blocks:
    """Where each is first passed, and by how much at worst."""
    system = info.system
    rows = [
        (
            one.address,
            bound_text(one, system),
            f"{SPEED.text(one.road_speed, system)}{in_gear(info, one.gear)}",
            result_measure(one.address).text(one.worst, system),
            one.why,
        )
        for one in passed
    ]
    header = ("", "limit", "first passed at", "worst", "because")
    return section(
        "Limits passed on the way", table(rows, head=header, left=(0, 4)) if rows else []
    )


def ahead_lines(ahead: Iterable[Values], info: ScenarioInfo) -> Blocks:
    """Which limits it would pass by going faster, the nearest first."""
    system = info.system
    named = [
        ONE_AHEAD.format(
            address=one.address,
            bound=bound_text(one, system),
            why=one.why,
            share=SHARE.text(one.share, system, 2),
            speed=SPEED.text(one.speed, system, 2),
        )
        for one in ahead
    ]
    return paragraph(AHEAD.format(limits="; ".join(named))) if named else []


def unrated_lines(addresses: Iterable[str]) -> Blocks:
    """What nobody has rated is never called within limits."""
    names = [f"{one} ({plainly(one)})" for one in addresses]
    if not names:
        return []
    them = "it" if len(names) == 1 else "them"
    sentence = (
        f"No rating is given for {', '.join(names)}: how much the parts bear is not stated, so "
        f"nothing is said about {them}."
    )
    return section("Not rated", paragraph(sentence))


def plainly(address: str) -> str:
    """What a result is, in words to stand beside its address."""
    sentence = str(result_row(address)["sentence"])
    return f"{sentence[0].lower()}{sentence[1:]}"
