"""The answer to "what becomes of this outing"."""

from __future__ import annotations

from windwall.quantities.measures import ENERGY, LENGTH, SPEED, TEMPERATURE, TIME, Measure
from windwall.report.text.common import caution_lines, head
from windwall.report.text.drive_runs import runs
from windwall.report.text.limits import bound_text, result_measure
from windwall.report.text.safety_notes import safety_notes
from windwall.report.text_layout import Blocks, bullet, headline, paragraph, section, table
from windwall.report.wording.drive import ENERGIES, beyond_for
from windwall.report.wording.drive_load import mixture_sentence
from windwall.report.wording.drive_places import place, when
from windwall.report.wording.scenario import conditions
from windwall.results.drive import Drive
from windwall.results.drive_summary import SPENT, DriveSummary
from windwall.results.knock import KnockBand
from windwall.results.views import content, sentence

__all__ = [
    "MASS", "MOST_EVENTS", "MOST_SHARE", "STANDING", "UNTOLD", "drive_text", "energy",
    "happened", "hottest", "knock", "limits",
]  # fmt: skip

MASS = Measure("mass", "kg")
STANDING = "standing"
UNTOLD = ("road_turns", "pulls_away", "limit_passed")  # limits have a section of their own
MOST_EVENTS = 60
MOST_SHARE = 2.0  # of what the crank gave, above which an entry is no share of it


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
    lines += runs(drive, found)
    lines += section("Hottest", hottest(drive, found))
    lines += knock(found, drive)
    lines += section("Mixture under load", paragraph(mixture_sentence(drive)))
    lines += caution_lines(drive)
    lines += limits(drive)
    lines += section("What happened", happened(drive))
    lines += energy(found, info.system)
    return [*lines, *safety_notes()]


def hottest(drive: Drive, found: DriveSummary) -> Blocks:
    """The most that each thing comes to, and when: the charge, the exhaust, and what takes time."""
    system = drive.scenario_info.system
    told = ("manifold/temperature", "engine/exhaust_gas_temperature", *drive.nodes)
    rows = [
        (
            place(address),
            TEMPERATURE.text(most.value, system),
            when(drive, most.time),
        )
        for address, most in found.hottest.items()
        if address in told or address.endswith("/outlet/temperature")
    ]
    return table(rows, left=(0, 2))


def knock(found: DriveSummary, drive: Drive) -> Blocks:
    """Where it comes nearest to knock."""
    least = found.nearest_knock
    if least is None:
        return []
    band = sentence(KnockBand(least.value, drive.scenario_info.knock_sigma))
    at = when(drive, least.time)
    said = f"{at[0].upper()}{at[1:]}: {band}."
    return section("Knock, where the margin is least", paragraph(said))


def limits(drive: Drive) -> Blocks:
    """Where each is first passed, and by how much at worst."""
    system = drive.scenario_info.system
    lines = []
    for one in drive.passed:
        measure = result_measure(one.address)
        speed = f"at {SPEED.text(one.road_speed, system)}" if one.road_speed else STANDING
        lines += bullet(
            f"{one.address}, {bound_text(one, system)}: first passed "
            f"{when(drive, one.time)}, {speed}; at worst {measure.text(one.worst, system)}, "
            f"{beyond_for(one.lasting)}: {one.why.rstrip('.')}."
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


def _is_a_whole(spent: dict[str, float]) -> bool:
    """Whether what the crank gave is enough for shares of it to say something: a slope may give
    more.
    """
    most = max((abs(spent.get(key, 0.0)) for key in SPENT), default=0.0)
    return spent["crank"] > most / MOST_SHARE


def energy(found: DriveSummary, system: str) -> Blocks:
    """Where the energy went, and what was used up."""
    crank, told = found.energy["crank"], _is_a_whole(found.energy)
    header = ("", ENERGY.shown(system), *(["% of the crank's"] if told else []))
    rows = []
    for key, name in ENERGIES.items():
        joules = found.energy.get(key, 0.0)
        # What the engine makes of its fuel is no share of what the crank gives.
        share = f"{100 * joules / crank:z.1f}" if told and key != "fuel" else ""
        rows.append((name, ENERGY.number(joules, system, 4), *([share] if told else [])))
    used = f"Fuel from the tank: {MASS.text(found.fuel_used, system)}"
    burnt = found.energy.get("fuel", 0.0)
    gave = burnt and told
    used += f", of whose energy the crank gave {100 * crank / burnt:.0f} %." if gave else "."
    if found.liquid_used > 0:
        used += f" Liquid sprayed: {MASS.text(found.liquid_used, system)}."
    return [*section("Energy of the whole outing", table(rows, head=header)), *paragraph(used)]
