"""What there is to know of the engine under load on a drive."""

from __future__ import annotations

from windwall.quantities.measures import ENGINE_SPEED, PRESSURE_DIFFERENCE, SPEED
from windwall.report.wording.drive import time_text
from windwall.report.wording.drive_places import when
from windwall.results.drive import Drive
from windwall.results.drive_load import DriveCaution, mixture
from windwall.results.views import sentence

__all__ = [
    "BOOST",
    "CAUTIONS",
    "MIXTURE",
    "NO_BOOST",
    "OWN",
    "STEADY",
    "caution",
    "mixture_sentence",
]

CAUTIONS = {
    "lean": "The mixture is lean under load: lambda {found:.2f} at worst, {time} after setting out "
    "at {road_speed} and {engine_speed}, {boost}; the engine's own is {own:.2f}. It is so first "
    "after {first} and for {lasting} in all. Lean and under load a charge burns hot and detonates "
    "sooner than the margin here says: pistons and valves take the heat. Where a nozzle is to "
    "make up for fuel that is cut (`fuel_cut`), the cut may come only with the spray."
}
BOOST, NO_BOOST = "with {boost} of boost", "at full throttle without boost"
MIXTURE = "Richest is lambda {richest:.2f}, {first}; leanest {leanest:.2f}, {last}{own}."
STEADY = "Lambda {richest:.2f} all the time{own}."
OWN = "; the engine's own is {own:.2f}"
_SAME = 0.005  # of lambda, less than the last digit shown


@sentence.register(DriveCaution)
def caution(one: DriveCaution) -> str:
    """What may hurt the engine, when and for how long."""
    system = one.scenario_info.system
    boost = BOOST.format(boost=PRESSURE_DIFFERENCE.text(one["boost"], system, 2))
    return CAUTIONS[one["about"]].format(
        found=one["found"],
        own=one["own"],
        time=time_text(one["time"]),
        first=time_text(one["first"]),
        lasting=time_text(one["lasting"]),
        boost=boost if one["boost"] > 0 else NO_BOOST,
        road_speed=SPEED.text(one["road_speed"], system),
        engine_speed=ENGINE_SPEED.text(one["engine_speed"], system),
    )


def mixture_sentence(drive: Drive) -> str:
    """How rich and how lean it ran under load; empty where nothing is known of it."""
    ran = mixture(drive)
    if ran is None:
        return ""
    own = "" if ran.own is None else OWN.format(own=ran.own)
    said = {"richest": ran.richest.value, "leanest": ran.leanest.value, "own": own}
    if ran.leanest.value - ran.richest.value < _SAME:
        return STEADY.format(**said)
    first, last = (when(drive, one.time) for one in (ran.richest, ran.leanest))
    return MIXTURE.format(**said, first=first, last=last)
