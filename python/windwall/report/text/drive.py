"""The answer to "what becomes of this outing"."""

from __future__ import annotations

from windwall.quantities.measures import ENERGY, LENGTH, SPEED, TEMPERATURE, TIME, Measure
from windwall.report.text.common import head
from windwall.report.text.limits import bound_text, result_measure
from windwall.report.text.safety_notes import safety_notes
from windwall.report.text_layout import Blocks, bullet, headline, paragraph, section, table
from windwall.report.wording.drive import ENERGIES, beyond_for, time_text
from windwall.report.wording.scenario import conditions
from windwall.results.drive import Drive
from windwall.results.drive_summary import DriveSummary, Mark
from windwall.results.knock import KnockBand
from windwall.results.views import content, sentence

__all__ = [
    "AT_THE_START", "BESIDE", "MASS", "MOST_EVENTS", "STANDING", "UNTOLD", "Waited", "drive_text",
    "energy", "happened", "hottest", "knock", "limits", "runs",
]  # fmt: skip

MASS = Measure("mass", "kg")
AT_THE_START, STANDING = "at the start", "standing"
BESIDE = 4  # runs that stand beside each other
UNTOLD = ("road_turns", "pulls_away", "limit_passed")  # limits have a section of their own
MOST_EVENTS = 60
Waited = tuple[float | None, float | None]  # for a distance, or for a speed


@content.register(Drive)
def drive_text(drive: Drive) -> Blocks:
    """Everything worth reading about a drive."""
    info, found = drive.scenario_info, drive.summary
    name = f"{drive.outing.title} ({drive.outing.id})" if drive.outing.title else drive.outing.id
    lines = head(info, f"the outing {name}, over time; {conditions(info)}.")
    if drive.answered:
        lines += ["", *headline(drive.ended.sentence)]
    else:
        lines += section(f"STOPPED EARLY ({drive.ended.word})", paragraph(drive.ended.sentence))
    lines += runs(found, info.system)
    lines += section("Hottest", hottest(drive, found))
    lines += knock(found, drive)
    lines += limits(drive)
    lines += section("What happened", happened(drive))
    lines += energy(found, info.system)
    return [*lines, *safety_notes()]


def runs(found: DriveSummary, system: str) -> Blocks:
    """The marks of every run, a few runs side by side."""
    lines = []
    for first in range(1, len(found.fastest) + 1, BESIDE):
        numbers = range(first, min(first + BESIDE, len(found.fastest) + 1))
        marks = [{_waited_for(one): one for one in found.reached(run)} for run in numbers]
        header = ("", *(f"run {run}" for run in numbers))
        fastest = [SPEED.text(found.fastest[run - 1].value, system, 4) for run in numbers]
        rows = [["fastest", *fastest]]
        for key in sorted({key for one in marks for key in one}, key=_order):
            rows.append([_mark_name(key, system), *(_cell(one.get(key), system) for one in marks)])
        lines += section("Runs, each counted from where it sets out", table(rows, head=header))
    return lines


def _waited_for(mark: Mark) -> Waited:
    return mark.at_distance, mark.at_speed


def _order(key: Waited) -> tuple[bool, float]:
    distance, speed = key
    return (False, distance) if speed is None else (True, speed)


def _mark_name(key: Waited, system: str) -> str:
    distance, speed = key
    if speed is not None:
        return f"to {SPEED.short(speed, system)}"
    return f"over {LENGTH.short(distance, system)}"


def _cell(mark: Mark | None, system: str) -> str:
    """The time, and what else the mark tells: the speed there, or how far it is to it."""
    if mark is None:
        return "-"
    time = f"{mark.time:.2f} {TIME.shown(system)}"
    if mark.at_distance is None:
        return f"{time}, {LENGTH.text(mark.distance, system)}"
    return f"{time}, {SPEED.text(mark.road_speed, system)}"


def hottest(drive: Drive, found: DriveSummary) -> Blocks:
    """The most that each thing comes to, and when: the charge, the exhaust, and what takes time."""
    system = drive.scenario_info.system
    told = ("manifold/temperature", "engine/exhaust_gas_temperature", *drive.nodes)
    rows = [
        (
            address.removesuffix("/temperature"),
            TEMPERATURE.text(most.value, system),
            _when(most.time),
        )
        for address, most in found.hottest.items()
        if address in told or address.endswith("/outlet/temperature")
    ]
    return table(rows, left=(0, 2))


def _when(seconds: float) -> str:
    return f"after {time_text(seconds)}" if seconds else AT_THE_START


def knock(found: DriveSummary, drive: Drive) -> Blocks:
    """Where it comes nearest to knock."""
    least = found.nearest_knock
    if least is None:
        return []
    band = sentence(KnockBand(least.value, drive.scenario_info.knock_sigma))
    said = f"{_when(least.time).capitalize()}: {band}."
    return section("Knock, where the margin is least", paragraph(said))


def limits(drive: Drive) -> Blocks:
    """Where each is first passed, and by how much at worst."""
    system = drive.scenario_info.system
    lines = []
    for one in drive.passed:
        measure = result_measure(one.address)
        speed = f"at {SPEED.text(one.road_speed, system)}" if one.road_speed else STANDING
        lines += bullet(
            f"{one.address}, {bound_text(one, system)}: first passed {_when(one.time)}, "
            f"{speed}; at worst {measure.text(one.worst, system)}, "
            f"{beyond_for(one.lasting)}: {one.why}."
        )
    return section("Limits passed on the way", lines)


def happened(drive: Drive) -> Blocks:
    """What happened, in order; a day of many runs is cut short."""
    system = drive.scenario_info.system
    told = [one for one in drive.happened if one.what not in UNTOLD]
    header = (TIME.shown(system), LENGTH.shown(system), SPEED.shown(system), "")
    rows = [
        (
            f"{one.time:.2f}",
            f"{LENGTH.value(one.distance, system):.1f}",
            f"{SPEED.value(one.road_speed, system):.1f}",
            one.sentence,
        )
        for one in told[:MOST_EVENTS]
    ]
    lines = table(rows, head=header, left=(3,)) if rows else []
    more = len(told) - MOST_EVENTS
    return lines + (paragraph(f"And {more} more; `events` has them all.") if more > 0 else [])


def energy(found: DriveSummary, system: str) -> Blocks:
    """Where the energy went, and what was used up."""
    crank = found.energy["crank"]
    header, rows = ("", ENERGY.shown(system), "% of the crank's"), []
    for key, name in ENERGIES.items():
        joules = found.energy.get(key, 0.0)
        # What the engine makes of its fuel is no share of what the crank gives.
        share = f"{100 * joules / crank:z.1f}" if crank and key != "fuel" else ""
        rows.append((name, ENERGY.number(joules, system, 4), share))
    used = f"Fuel from the tank: {MASS.text(found.fuel_used, system)}"
    burnt = found.energy.get("fuel", 0.0)
    used += f", of whose energy the crank gave {100 * crank / burnt:.0f} %." if burnt else "."
    if found.liquid_used > 0:
        used += f" Liquid sprayed: {MASS.text(found.liquid_used, system)}."
    return [*section("Energy of the whole outing", table(rows, head=header)), *paragraph(used)]
