"""What an answer repeats of its scenario: the air, the road and its length, the gear."""

from __future__ import annotations

from windwall.quantities.measures import LENGTH, PRESSURE, SHARE, TEMPERATURE, wind
from windwall.results.scenario_info import ScenarioInfo

__all__ = [
    "ALTITUDE", "CONDITIONS", "GRADE", "IN_GEAR", "LEVEL", "conditions", "in_gear", "road_length",
]  # fmt: skip

CONDITIONS = "{temperature}, {place}, humidity {humidity}, headwind {headwind}, {road}"
ALTITUDE = "altitude {altitude}"
GRADE = "grade {grade}"
LEVEL = "level road"
IN_GEAR = " in gear {gear}"


def conditions(info: ScenarioInfo) -> str:
    """The air and the road."""
    system, given = info.system, info.conditions
    pressure, altitude = given["day/pressure"], given["day/altitude"]
    place = ALTITUDE.format(altitude=LENGTH.short(altitude or 0.0, system))
    grade = GRADE.format(grade=SHARE.short(given["goal/grade"], system))
    return CONDITIONS.format(
        temperature=TEMPERATURE.short(given["day/temperature"], system),
        place=place if pressure is None else PRESSURE.short(pressure, system),
        humidity=SHARE.short(given["day/relative_humidity"], system),
        headwind=wind(system).short(given["day/headwind"], system),
        road=grade if given["goal/grade"] else LEVEL,
    )


def in_gear(info: ScenarioInfo, gear: int) -> str:
    """The gear with a space before it; nothing where the vehicle has only one."""
    return IN_GEAR.format(gear=gear) if info.gears > 1 else ""


def road_length(info: ScenarioInfo) -> str:
    """The length of the goal's road; empty where it names none."""
    return "" if info.run_up is None else LENGTH.text(info.run_up, info.system)
