"""What there is to know about an answer, by the word it is warned with."""

from __future__ import annotations

from windwall.quantities.measures import (
    ENGINE_SPEED,
    FLOW,
    PRESSURE_DIFFERENCE,
    SHARE,
    TEMPERATURE,
    TORQUE,
    Measure,
)
from windwall.results.entry import Caution
from windwall.results.views import sentence

__all__ = ["CAUTIONS", "FOUND", "RATIO", "caution_sentence"]

RATIO = Measure("plain number", "")

CAUTIONS = {
    "compression_ratio": "The table of fuel-air efficiency covers compression ratios 6 to 12; "
    "beyond it is extrapolated.",
    "mixture": "The table of fuel-air efficiency covers lambda 0.72 to 1.67; beyond it is "
    "extrapolated.",
    "inlet_mach_index": "The inlet Mach index is beyond 1.2, where the filling table ends; it is "
    "extrapolated.",
    "exhaust_over_intake": "Exhaust over intake pressure is outside 0.3 to 3, where the filling "
    "rule is stated.",
    "late_spark": "The spark is more than 30 degrees from the best one, beyond what its penalty is "
    "fitted to.",
    "knock_pressure": "The manifold pressure is less than half or more than twice that of the "
    "knock anchor: the octane rule is extrapolating.",
    "measured_speed": "The engine speed is outside the measured torque curve; its end is held.",
    "overspeed": "The engine turns at {found}, beyond its limit of {high}: rods, valves and a "
    "blower that it drives may come apart, and what is near with them.",
    "much_water": "More water than 0.6 of the fuel: what it does for knock was measured to there, "
    "and is extrapolated beyond; it is credited to 1.5 at most.",
    "wet_plug": "Drops of more than six hundredths of the air reach the cylinder: they wet "
    "the plug and wash the oil off the wall, and the engine may stop firing before this model "
    "says so.",
    "torque_curve": "A torque curve says nothing of knock and heat, and nothing of what another "
    "charge path or spark would give.",
    "detonation": "The knock margin is negative in the middle of its band: detonation is likely "
    "and breaks pistons.",
    "hot_head": "The head is at {found}; heads of aluminium lose their strength above {high}.",
    "hot_oil": "The oil is at {found}; above {high} it ages within hours and its film thins.",
    "exhaust_heat": "The engine's own energy balance makes the exhaust {found}, outside the usual "
    "{low} to {high}: some heat is booked in the wrong place.",
    "late_heat": "The exhaust is at {found} at the port, above {high}, with the spark more than 12 "
    "degrees later than the best one: the burn ends late, and valves, seats and all that the "
    "exhaust meets take the heat. That bound is common practice; what the makers of valves, "
    "exhaust or turbine rate stands before it, as a limit of the file.",
    "inlet_depression": "The blower's inlet is {found} below the air around: unvented seals draw "
    "oil into the charge, which costs octane and fouls plugs.",
    "hot_charge": "The charge leaves the blower at {found}: rotors grow into the case far below "
    "that.",
    "thermal_runaway": "The hot leak is {found} of what the rotors carry: a little more pressure "
    "or less speed and the temperature runs away.",
    "surge": "The compressor is asked for more pressure than its speed holds at this flow: it "
    "surges, which shakes belt and bearings to pieces. What is printed here is a continuation, not "
    "a prediction.",
    "choke": "The compressor is beyond the choke end of its speed line: it passes little more, and "
    "the map says nothing of its efficiency here.",
    "condensation": "Water condenses in the cooler, {found}: it pools there and comes out in "
    "gulps.",
    "coarse_spray": "The nozzle has {found} across it, less than the {low} of a fine spray: it "
    "dribbles, and most of it wets the wall.",
    "siphoning": "Vacuum draws {found} of liquid out of the tank while the pump rests: a check "
    "valve in the line holds it back.",
    "idle_pump": "The pump never runs: at its highest in the whole pull its switch reads {found} "
    "less than where the pump starts.",
    "untriggered_pump": "The pump never runs in the whole pull: what its `trigger` asks for beside "
    "the pressure is met at no speed where the pressure is.",
    "uneven_spray": "The valve's pulses and the intake strokes miss each other: what one cycle "
    "catches of the spray is {found} off the mean, more than {high}. A shorter period evens it, or "
    "more volume behind the nozzle.",
    "throttled_spray": "The throttle that holds off knock takes the pressure at the pump's switch "
    "down with it: the pump gives {found} of its start, and more spray would need less throttle.",
    "drowned": "The pump puts the fire out: at {engine_speed} and full throttle it sprays {found} "
    "of the air, more than can burn, and so it does below that. Let it start at some boost "
    "(`starts_at`), or take a smaller nozzle.",
    "leak": "{found} of the charge that was paid for leaves through this hole: close it, or "
    "take it for the reason where boost stays below what the pulleys promise.",
    "false_air": "{found} of air is drawn in here past the filter: behind a carburettor it leans "
    "the mixture, and what burns lean burns hot.",
    "two_balances": "The bypass may stand in another balance at this pedal, less open, with the "
    "charge at {found}: a valve that its own opening helps to open keeps to the side it comes "
    "from. What is answered is the open one, which an engine finds that comes from speed with the "
    "throttle shut.",
    "slip": "It slips at full throttle: at {engine_speed} {found} arrive at its shaft, and it "
    "holds {high} there; what it cannot pass on heats it until it fails.",
    "short_travel": "The driving sheave meets its stop at {found} to 1: the belt never gets to the "
    "{low} to 1 that is stated.",
    "unshifted": "The engine is at the end of its speeds with the belt at {found} to 1: it never "
    "gets to {low} to 1. Heavier weights or a softer spring shift earlier.",
    "early_grip": "The belt is gripped at {found}, and the engine idles at {low}: standing, it "
    "drags the vehicle or stalls.",
}
# What is found, and to how many digits it is said.
FOUND: dict[str, tuple[Measure, int]] = {
    "hot_head": (TEMPERATURE, 3),
    "hot_oil": (TEMPERATURE, 3),
    "exhaust_heat": (TEMPERATURE, 3),
    "late_heat": (TEMPERATURE, 3),
    "inlet_depression": (PRESSURE_DIFFERENCE, 2),
    "hot_charge": (TEMPERATURE, 3),
    "thermal_runaway": (SHARE, 2),
    "condensation": (FLOW, 2),
    "coarse_spray": (PRESSURE_DIFFERENCE, 3),
    "siphoning": (FLOW, 2),
    "leak": (FLOW, 2),
    "false_air": (FLOW, 2),
    "idle_pump": (PRESSURE_DIFFERENCE, 2),
    "throttled_spray": (SHARE, 2),
    "uneven_spray": (SHARE, 2),
    "drowned": (SHARE, 2),
    "two_balances": (TEMPERATURE, 3),
    "slip": (TORQUE, 3),
    "short_travel": (RATIO, 3),
    "unshifted": (RATIO, 3),
    "early_grip": (ENGINE_SPEED, 3),
    "overspeed": (ENGINE_SPEED, 4),
}


@sentence.register(Caution)
def caution_sentence(caution: Caution) -> str:
    """What there is to know, with the numbers it takes."""
    system = caution.scenario_info.system
    values = {}
    if caution.engine_speed is not None:
        values["engine_speed"] = ENGINE_SPEED.text(caution.engine_speed, system, 3)
    if caution.about in FOUND:
        measure, digits = FOUND[caution.about]
        for key in ("found", "low", "high"):
            value = getattr(caution, key)
            values[key] = "" if value is None else measure.text(value, system, digits)
    return CAUTIONS[caution.about].format(**values)
