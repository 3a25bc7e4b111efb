"""Pieces that several answers share."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from windwall.errors import NoAnswer
from windwall.quantities.measures import BOOST, FLOW, PRESSURE, SPEED, TEMPERATURE
from windwall.report import frames
from windwall.report.text_layout import Blocks, Title, bullet, paragraph, section, table
from windwall.results.outcome import Cautioned, Outcome
from windwall.results.record import Record
from windwall.results.scenario_info import ScenarioInfo
from windwall.results.standing_start import Shortfall

__all__ = ["caution_lines", "cautions_once", "driven_lines", "head", "pairs", "station_table"]


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


def cautions_once(answers: Sequence[Outcome]) -> Blocks:
    """Of several answers at road speeds each caution once, as it is at the last that has it."""
    last = {(one.address, one.about): (each, one) for each in answers for one in each.cautions}
    lines = []
    for (address, _), (held, one) in last.items():
        speed = SPEED.text(held["road_speed"], held.scenario_info.system)
        lines += bullet(f"{address}, at {speed}: {one.sentence}")
    return section("Cautions", lines)


def caution_lines(answer: Outcome | Cautioned) -> Blocks:
    """What to know about an answer."""
    found = answer.cautions
    lines = [line for one in found for line in bullet(f"{one.address}: {one.sentence}")]
    return section("Cautions", lines)
