"""What holding a road speed or an idle takes."""

from __future__ import annotations

from windwall.quantities.measures import (
    ENGINE_SPEED,
    FLOW,
    FUEL,
    MASS,
    POWER,
    PRESSURE_DIFFERENCE,
    SHARE,
    SPEED,
    TEMPERATURE,
    TEMPERATURE_DIFFERENCE,
    TORQUE,
)
from windwall.report.wording.operating_point import knock, unanswered
from windwall.report.wording.scenario import in_gear
from windwall.report.wording.top_speed import BETWEEN
from windwall.results.part_load import BeyondGears, PartLoad
from windwall.results.views import sentence

__all__ = [
    "BLOWER", "BOOSTS", "CHARGE", "EACH", "ENDS", "FULL", "GEARS", "GRIP", "HELD", "IDLES",
    "IDLES_FASTER", "IDLE_EXHAUST", "KNOWN_TO", "LIFTED", "NEARLY_OPEN", "NEEDS_BRAKE", "NO_GEAR",
    "ROUND", "WASTED", "each", "gearing", "no_pedal", "part_load_sentence",
]  # fmt: skip

HELD = (
    "{speed} takes {opening} of the pedal{gearing}: the engine turns {engine_speed} and the "
    "flywheel gives {torque}. It burns {petrol}, {each}."
)
EACH = {"metric": (1e5, "{mass} for 100 km"), "us": (160934.4, "{mass} for 100 mi")}  # m
IDLES = "It idles at {engine_speed} with {opening} of the pedal and burns {petrol}."
CHARGE = " The charge reaches the engine at {temperature}."
BLOWER = (
    " The blower takes {power} for that, {what}, with its inlet {depression} below the air around."
)
# What the throttle takes away again it need not have given.
WASTED, BOOSTS = "all of it wasted", "which gives {boost} of boost"
# Sigmas of what walls and port take and of the spark of an idle together: docs/physics/heat.md.
KNOWN_TO = 150  # K
IDLE_EXHAUST = (
    " How hot its exhaust is behind the port is known to some {spread}; a probe there, which reads "
    "the mean over time, shows less."
)
ROUND = " {returned} goes round through the bypass."
# By the part that an answer ends at, and there by the end of the pedal.
ENDS = {
    ("throttle", True): "Even with the pedal released the engine gives {torque} at "
    "{engine_speed}, more than {what} asks for: the throttle lets too much past when it is shut. "
    "{more}",
    ("throttle", False): "Even at {most} the engine gives no more than {torque} at "
    "{engine_speed}, less than {what} asks for.",
}
NEARLY_OPEN = 0.995  # of the pedal's travel
FULL, LIFTED = "full throttle", "the {opening} of its pedal that the margin to knock leaves"
IDLES_FASTER = (
    "The engine idles faster than that; a smaller `leak_area` of its throttle is its cure."
)
NEEDS_BRAKE = "It is held by the brake, or by a lower gear."
GEARS = (
    "The engine would not turn between its idle and its limit at {speed}{gear}: there is no pedal "
    "to hold it."
)
NO_GEAR = (
    "The engine would not turn between its idle and its limit at {speed} in any gear: there is no "
    "pedal to hold it. Nearest comes gear {number}."
)
GRIP = "The driven tyres, or a clutch, do not pass on what {speed} asks for{gear}."


def gearing(answer: PartLoad) -> str:
    """The gear, where there are several, and where the belt of a variator stands."""
    belt = answer.point.get("variator")
    where = BETWEEN.format(ratio=f"{belt.ratio:#.3g}") if belt else ""
    return in_gear(answer.scenario_info, answer["gear"]) + where


def each(answer: PartLoad) -> str:
    """What it burns for so much road; a dash where it stands."""
    system, fuel = answer.scenario_info.system, answer.fuel_per_metre
    length, said = EACH[system]
    return "-" if fuel is None else said.format(mass=MASS.text(fuel * length, system, 3))


def no_pedal(answer: PartLoad, system: str) -> str:
    """Why no pedal holds it."""
    part, opening = answer.ending.part, answer["opening"]
    values = {
        "speed": SPEED.text(answer["road_speed"], system),
        "engine_speed": ENGINE_SPEED.text(answer["engine_speed"], system, 4),
        "gear": in_gear(answer.scenario_info, answer["gear"]),
        "number": answer["gear"],
    }
    if isinstance(answer, BeyondGears) and answer.scenario_info.gears > 1:
        return NO_GEAR.format(**values)
    if part == "gears":
        return GEARS.format(**values)
    if part == "grip":
        return GRIP.format(**values)
    what = "an idle" if answer.idles else values["speed"]
    more = IDLES_FASTER if answer.idles else NEEDS_BRAKE
    torque = TORQUE.text(answer["torque"], system)
    most = LIFTED.format(opening=SHARE.text(opening, system, 2)) if opening < NEARLY_OPEN else FULL
    return ENDS[part, opening <= 0].format(**values, what=what, torque=torque, more=more, most=most)


@sentence.register(PartLoad)
def part_load_sentence(answer: PartLoad) -> str:
    """What it takes, or why nothing holds it."""
    system = answer.scenario_info.system
    if not answer.answered:
        beyond = answer.status == "out_of_range" and answer.ending.part != "tyres"
        return no_pedal(answer, system) if beyond else unanswered(answer, system)
    made = (IDLES if answer.idles else HELD).format(
        speed=SPEED.text(answer.road_speed, system),
        opening=SHARE.text(answer.opening, system, 2),
        gearing="" if answer.idles else gearing(answer),
        each=each(answer),
        engine_speed=ENGINE_SPEED.text(answer.engine_speed, system, 4),
        torque=TORQUE.text(answer.torque, system),
        petrol=FUEL.text(answer.petrol, system, 2),
    )
    made += CHARGE.format(temperature=TEMPERATURE.text(answer.charge_temperature, system))
    if answer["blower_power"] is not None:
        boost = answer.point.manifold.boost
        boosts = BOOSTS.format(boost=PRESSURE_DIFFERENCE.text(boost, system, 2))
        made += BLOWER.format(
            what=boosts if boost > 0 else WASTED,
            power=POWER.text(answer.blower_power, system, 2),
            depression=PRESSURE_DIFFERENCE.text(answer.inlet_depression, system, 2),
        )
    if answer["returned"]:
        made += ROUND.format(returned=FLOW.text(answer.returned, system, 2))
    if answer.idles:
        made += IDLE_EXHAUST.format(spread=TEMPERATURE_DIFFERENCE.text(KNOWN_TO, system))
    spark = answer.point.knock
    retard = spark.retard if spark and not answer.idles else 0.0
    return made + knock(answer.status, answer.opening, retard, system)
