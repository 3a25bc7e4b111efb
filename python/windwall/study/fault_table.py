"""Single faults, one row for each: what it does to an input, how bad it may be, and the check in
the garage that finds it.

How bad a fault may be, and how well a check tells that, is common practice without a source; that
something is wrong is taken as likely as not before anything is read, and each fault that a vehicle
can have as likely as the next: chosen by the project.
"""

from __future__ import annotations

from math import radians
from typing import NamedTuple

from windwall.quantities.measures import ANGLE, SHARE, Measure
from windwall.study import fault_changes as change
from windwall.study.fault_changes import Change

__all__ = ["FAULTS", "HOLE", "NO_FAULT_SHARE", "TIMES", "Check", "Fault"]

NO_FAULT_SHARE = 0.5  # of the chance, before anything is read
HOLE = Measure("area", "mm2")
TIMES = Measure("plain number", "")


class Check(NamedTuple):
    """What finds one fault by itself."""

    says: str
    hours: float
    error: float  # of its severity, one standard deviation, SI
    care: str


class Fault(NamedTuple):
    """One thing that may be wrong, with one severity."""

    id: str
    title: str
    severity: str  # how a severity is told
    measure: Measure
    most: float  # SI, where the severities thought possible end
    needs: tuple[str, ...]  # words of parts that the vehicle must have
    change: Change
    check: Check
    gas: bool = False  # whether it is one of an engine whose mixture and knock are modelled


FAULTS = (
    Fault(
        "leak",
        "a leak behind the blower",
        "a hole of {severity}",
        *(HOLE, 60e-6, ("blower",)),
        change.leak,
        Check(
            "close the mouth of the intake, put 20 kPa of air into the cold path through a tyre "
            "valve and brush every joint behind the blower with soapy water",
            1,
            3e-6,
            "no more pressure than in a pull, and nobody in line with a hose",
        ),
    ),
    Fault(
        "belt_slip",
        "a slipping belt of the blower",
        "{severity} of its turns lost",
        *(SHARE, 0.2, ("blower",)),
        change.belt_slip,
        Check(
            "count the turns of blower and crank in a pull with two pick-ups or a stroboscope",
            1,
            0.01,
            "guards on, and hands, hair and sleeves away from belts and fan",
        ),
    ),
    Fault(
        "bypass_open",
        "a bypass stuck open",
        "{severity} open",
        *(SHARE, 1.0, ("blower", "bypass")),
        change.bypass_open,
        Check(
            "blank the bypass with a plate and repeat the pull",
            0.5,
            0.05,
            "only at full throttle and for one pull: shut throttles behind a blower without its "
            "bypass burst hoses",
        ),
    ),
    Fault(
        "filter_blocked",
        "a blocked air filter",
        "a drop higher by {severity} times itself",
        *(TIMES, 10.0, ("filter",)),
        change.filter_blocked,
        Check(
            "read the depression behind the filter on a water column, or repeat the pull with a "
            "new one",
            0.5,
            0.2,
            "never without any filter: the blower's clearances take no grit",
        ),
    ),
    Fault(
        "nozzle_blocked",
        "a blocked spray nozzle",
        "{severity} of its flow missing",
        *(SHARE, 0.9, ("spray",)),
        change.nozzle_blocked,
        Check(
            "let the nozzle spray into a jar for a minute and weigh it",
            0.5,
            0.03,
            "methanol burns without a flame to be seen and goes through the skin",
        ),
    ),
    Fault(
        "hot_intake",
        "an intake that draws hot air",
        "{severity} of its air from under the bodywork",
        *(SHARE, 1.0, ()),
        change.hot_intake,
        Check(
            "hold a thermometer in the mouth of the intake and read it in a pull",
            0.5,
            0.05,
            "leads tied away from fan, belts and exhaust",
        ),
    ),
    Fault(
        "late_spark",
        "a late spark",
        "{severity} late",
        *(ANGLE, radians(20), ()),
        change.late_spark,
        Check(
            "put a timing light on the crank's mark at the engine speed of the pull",
            0.5,
            radians(1),
            "hands, leads and sleeves away from belts and fan",
        ),
        gas=True,
    ),
    Fault(
        "lean",
        "a lean mixture",
        "lambda higher by {severity}",
        *(TIMES, 0.3, ()),
        change.lean,
        Check(
            "cut the ignition at the end of a pull, roll out and read the plugs, or read a "
            "wide-band probe in the pull",
            1,
            0.03,
            "a lean engine knocks and melts pistons: short pulls",
        ),
        gas=True,
    ),
    Fault(
        "brake",
        "a dragging brake",
        "rolling resistance higher by {severity}",
        *(TIMES, 0.03, ()),
        change.brake,
        Check(
            "jack up each wheel after a run, spin it by hand and feel its hub",
            0.3,
            0.002,
            "on stands, the other wheels chocked; drums burn",
        ),
    ),
    Fault(
        "slip",
        "a slipping clutch, belt drive or gear",
        "{severity} of the turns lost",
        *(SHARE, 0.25, ("turns",)),
        change.slip,
        Check(
            "read engine speed and road speed together in the highest gear, at part and at full "
            "throttle: sound, their ratio stays",
            0.3,
            0.01,
            "on a closed course, with somebody beside to read",
        ),
    ),
)
