"""A log as it was understood: what was read, mended and taken for what, its pulls and its facts."""

from __future__ import annotations

from collections.abc import Iterable

from windwall.quantities.measures import ENGINE_SPEED, Measure
from windwall.report.text_layout import Blocks, Title, bullet, paragraph, section, table
from windwall.results.drive import moment_row
from windwall.results.log import LogFact, Pull, ReadLog
from windwall.results.views import content

__all__ = ["log_text"]


@content.register(ReadLog)
def log_text(read: ReadLog) -> Blocks:
    """Everything worth reading about a log."""
    lines = [Title(f"The log {read.log.source}"), "", *paragraph(_sentence(read))]
    lines += section("What was mended", _bullets(one.text() for one in read.mended))
    lines += section("What the columns are", _columns(read))
    lines += section("Pulls", _pulls(read))
    lines += section("What they tell", _facts(read))
    lines += section("What to know", _bullets([*read.left_out, *_notes(read)]))
    return lines


def _bullets(texts: Iterable[str]) -> Blocks:
    return [line for text in texts for line in bullet(text)]


def _sentence(read: ReadLog) -> str:
    log = read.log
    parts = int(log.part[-1]) + 1
    apart = f" in {parts} parts" if parts > 1 else ""
    began = f", begun at {log.began}" if log.began else ""
    count = f"{len(read.pulls)} pull{'s' * (len(read.pulls) != 1)}"
    return (
        f"{len(log.time)} rows of {len(log.columns)} columns over {log.time[-1]:.4g} s{apart}"
        f'{began}, read as {log.dialect}; the clock is "{log.clock}". '
        f"{count}, {len(read.facts)} facts."
    )


def _columns(read: ReadLog) -> Blocks:
    found = []
    for one in read.proposed:
        what = one.address or "left out"
        unit = f" in {one.unit}" if one.address and one.unit else ""
        reasons = "; ".join(reason for reason in one.reasons if reason)
        found += bullet(f'"{one.column}" is {what}{unit}' + (f": {reasons}." if reasons else "."))
    return found


def _pulls(read: ReadLog) -> Blocks:
    system = read.scenario_info.system
    if not read.pulls:
        return []
    heads = ["", "lines", "gear", f"from {ENGINE_SPEED.shown(system)}", "to", "s", "ratio off by"]
    return table((_pull_row(one, system) for one in read.pulls), head=heads, left=(0, 1))


def _pull_row(one: Pull, system: str) -> list[str]:
    low, high = (ENGINE_SPEED.number(speed, system) for speed in one.engine_speed)
    return [
        one.name,
        f"{one.lines[0]} to {one.lines[1]}",
        str(one.gear or "?"),
        low,
        high,
        f"{one.time[1] - one.time[0]:.1f}",
        "" if one.slip is None else f"{100 * one.slip:+z.1f} %",
    ]


def _facts(read: ReadLog) -> Blocks:
    system = read.scenario_info.system
    if not read.facts:
        return []
    heads = ["", "gear", ENGINE_SPEED.shown(system), "result", "value", "±", ""]
    return table((_fact_row(one, system) for one in read.facts), head=heads, left=(0, 3))


def _fact_row(one: LogFact, system: str) -> list[str]:
    measure = Measure.of_row(moment_row(one.address))
    return [
        one.source,
        str(one.situation["gear"] or "?"),
        ENGINE_SPEED.number(one.situation["engine_speed"], system),
        one.address,
        measure.number(one.value, system, 4),
        measure.spread.number(one.sigma, system, 2),
        measure.shown(system),
    ]


def _notes(read: ReadLog) -> list[str]:
    if not read.facts:
        return ["Nothing is learned from it."]
    return [
        "Rows are no independent readings: each number is of a window of its own, the noise of "
        "neighbours is taken as tied, and an error of the gauge, which all numbers of a column "
        "share, stands in each of them times the root of their count.",
        "The model is asked as after a long pull; by how much seconds at full throttle differ from "
        "that is part of every ±.",
    ]
