"""The runs of a drive side by side: their marks, and how warm each sets out and comes in."""

from __future__ import annotations

from collections.abc import Iterator

from windwall.quantities.measures import ANGLE, ENERGY, LENGTH, SPEED, TEMPERATURE, TIME, Measure
from windwall.report.text_layout import Blocks, paragraph, section, table
from windwall.report.wording.drive_places import place
from windwall.results.drive import Drive
from windwall.results.drive_load import CASE, clutch_energy, run_ends
from windwall.results.drive_summary import DriveSummary, Mark

__all__ = ["BESIDE", "CHARGE", "ENDS", "METAL", "Waited", "runs"]

BESIDE = 4  # runs that stand beside each other
METAL = ("engine/head/temperature", "engine/oil/temperature")
CHARGE = "charge"  # what the manifold's temperature is called here
ENDS = "Warmth and spark: where the run sets out, and where the engine drives it for the last time."
Waited = tuple[float | None, float | None]  # for a distance, or for a speed
_Row = tuple[str, ...]


def runs(drive: Drive, found: DriveSummary) -> Blocks:
    """The marks of every run and what it does to the engine, a few runs side by side."""
    lines, system = [], drive.scenario_info.system
    for first in range(1, len(found.fastest) + 1, BESIDE):
        numbers = range(first, min(first + BESIDE, len(found.fastest) + 1))
        header = ("", *(f"run {run}" for run in numbers))
        fastest = (SPEED.text(found.fastest[run - 1].value, system, 4) for run in numbers)
        ends = list(_ends(drive, numbers))
        rows = [("fastest", *fastest), *_marks(found, numbers, system), *ends]
        blocks = table(rows, head=header) + (paragraph(ENDS) if ends else [])
        lines += section("Runs, each counted from where it sets out", blocks)
    return lines


def _marks(found: DriveSummary, numbers: range, system: str) -> Iterator[_Row]:
    marks = [{_waited_for(one): one for one in found.reached(run)} for run in numbers]
    for key in sorted({key for one in marks for key in one}, key=_order):
        yield _mark_name(key, system), *(_cell(one.get(key), system) for one in marks)


def _ends(drive: Drive, numbers: range) -> Iterator[_Row]:
    """Head, oil, blower case, charge and spark of each run, and what its clutch took."""
    system, there = drive.scenario_info.system, set(drive.addresses)
    cases = tuple(one for one in drive.nodes if one.endswith(CASE))
    warm = {one: place(one) for one in (*METAL, *cases)}
    warm |= {"manifold/temperature": CHARGE}
    rows = [(of, name, TEMPERATURE, 0) for of, name in warm.items()]
    rows += [("knock/retard", "spark late", ANGLE, 1)]
    for address, name, measure, places in rows:
        if address in there:
            shown = [_span(drive, address, run, measure, places) for run in numbers]
            if any(one != "-" for one in shown):
                yield f"{name}, {measure.shown(system)}", *shown
    heat = [clutch_energy(drive, run) for run in numbers] if "clutch_heat" in there else []
    if any(heat):
        yield "into the clutch", *(ENERGY.text(one, system) for one in heat)


def _span(drive: Drive, address: str, run: int, measure: Measure, places: int) -> str:
    ends = run_ends(drive, address, run)
    if ends is None:
        return "-"
    system = drive.scenario_info.system
    return " to ".join(f"{measure.value(one, system):z.{places}f}" for one in ends)


def _waited_for(mark: Mark) -> Waited:
    return mark.at_distance, mark.at_speed


def _order(key: Waited) -> tuple[bool, float]:
    distance, speed = key
    return (False, distance or 0.0) if speed is None else (True, speed)


def _mark_name(key: Waited, system: str) -> str:
    distance, speed = key
    if speed is not None:
        return f"to {SPEED.short(speed, system)}"
    return f"over {LENGTH.short(distance or 0.0, system)}"


def _cell(mark: Mark | None, system: str) -> str:
    """The time, and what else the mark tells: the speed there, or how far it is to it."""
    if mark is None:
        return "-"
    time = f"{mark.time:.2f} {TIME.shown(system)}"
    if mark.at_distance is None:
        return f"{time}, {LENGTH.text(mark.distance, system)}"
    return f"{time}, {SPEED.text(mark.road_speed, system)}"
