"""Pieces that several answers share."""

from __future__ import annotations

from collections.abc import Iterable

from windwall.errors import NoAnswer
from windwall.quantities.measures import BOOST, FLOW, PRESSURE, TEMPERATURE
from windwall.report import frames
from windwall.report.text_layout import Blocks, Title, bullet, paragraph, section, table
from windwall.results.outcome import Outcome
from windwall.results.record import Record
from windwall.results.scenario_info import ScenarioInfo
from windwall.results.standing_start import Shortfall

__all__ = ["caution_lines", "driven_lines", "head", "pairs", "station_table"]


def head(info: ScenarioInfo, question: str) -> Blocks:
    """What the vehicle is called and what was asked of it."""
    return [Title(info.title), *paragraph(f"Asked: {question}", "")]


def pairs(rows: Iterable[tuple[str, str]]) -> Blocks:
    """Names and what there is to say about each."""
    return table(rows, left=(0, 1))


def station_table(point: Record, system: str) -> Blocks:
    """The charge from station to station."""
    rows = frames.station_rows(point)
    ambient = point.manifold.pressure - point.manifold.boost
    header = ["", PRESSURE.shown(system) + " abs", "boost " + BOOST.shown(system)]
    header += [TEMPERATURE.shown(system), FLOW.shown(system)]
    lines = [
        [
            name,
            PRESSURE.number(gas.pressure, system, 4),
            BOOST.change(gas.pressure - ambient, system),
            TEMPERATURE.number(gas.temperature, system),
            FLOW.number(gas.flow, system),
        ]
        for name, gas in rows
    ]
    if any(gas.liquid > 0 for _, gas in rows):
        header.append("liquid")
        for line, (_, gas) in zip(lines, rows, strict=True):
            line.append(FLOW.number(gas.liquid, system) if gas.liquid > 0 else "")
    return section("Charge, station by station", table(lines, head=header))


def driven_lines(driven: Shortfall | NoAnswer | None, further: str = "") -> Blocks:
    """How far a run with launch, shifts and what warms up ends below the quick answer."""
    if driven is None:
        return []
    return section("Driven", paragraph(driven.sentence + further))


def caution_lines(answer: Outcome) -> Blocks:
    """What to know about an answer."""
    found = answer.cautions
    lines = [line for one in found for line in bullet(f"{one.address}: {one.sentence}")]
    return section("Cautions", lines)
