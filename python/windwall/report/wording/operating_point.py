"""How one condition ended."""

from __future__ import annotations

from windwall.quantities.measures import ANGLE, ENGINE_SPEED, KILOWATTS, SHARE, SPEED, TORQUE
from windwall.results.knock import held_late
from windwall.results.operating_point import OperatingPoint
from windwall.results.outcome import Outcome
from windwall.results.values import Values
from windwall.results.views import sentence, sentences

__all__ = [
    "FURTHEST", "GROWTH_REFERENCE", "HELD_BY_SPARK", "HELD_BY_THROTTLE", "POINT", "UNANSWERED",
    "knock", "lift", "nothing_more", "point_sentence", "unanswered",
]  # fmt: skip

GROWTH_REFERENCE = 100 / 3.6  # m/s, at which the growth of tyres is stated
# By status, and before that by status and part, where the part is a word of its own.
UNANSWERED = {
    "no_survivable_state knock": "Nothing holds the knock margin at {speed}, throttle {opening} "
    "open: not the latest spark with the richest mixture, nor the throttle, down to six tenths of "
    "the air's pressure in the manifold.",
    "no_survivable_state engine": "Nothing flows that balances at {speed}, throttle {opening} "
    "open: whatever pressure stands in the manifold, the path passes less than the engine draws, "
    "or a blower passes nothing.",
    "out_of_range tyres": "The tyres grow without end at {speed}, throttle {opening} open: their "
    "growth, stated at {reference}, cannot go on as it is stated.",
    "broken_off": "The calculation broke off inside. That is a fault of windwall, and of nothing "
    "that was asked.",
    "no_survivable_state": "No state that the parts survive balances at {speed}, throttle "
    "{opening} open: the charge runs away in temperature at {part}. A blower that is throttled "
    "behind it needs a bypass, one at small flow a smaller leak or less pressure.",
    "not_converged": "No balance was found at {speed}, throttle {opening} open{furthest}, after "
    "{evaluations} evaluations.",
    "other": "No answer at {speed}, throttle {opening} open{furthest}.",
}
FURTHEST = "; furthest off is {part}"
POINT = "At {speed} the flywheel gives {torque} and {power}."
HELD_BY_THROTTLE = (
    "Flat out it would knock; lift to {opening}: with the throttle further open neither spark nor "
    "mixture hold the knock margin."
)
HELD_BY_SPARK = (
    " The spark is {retard} late to hold the knock margin, which costs power and heats the exhaust."
)


def unanswered(tried: Values, system: str) -> str:
    """Why a condition has no answer."""
    ending = tried["ending"]
    status, part = ending.status, ending.part
    keys = (f"{status} {part}", status, "other")
    return UNANSWERED[next(key for key in keys if key in UNANSWERED)].format(
        speed=ENGINE_SPEED.text(tried["engine_speed"], system, 4),
        opening=SHARE.text(tried["opening"], system, 2),
        reference=SPEED.short(GROWTH_REFERENCE, system),
        part=part,
        furthest=FURTHEST.format(part=part) if part else "",
        evaluations=ending.evaluations,
    )


def lift(status: str, opening: float, system: str) -> str:
    """What holds knock off where only the throttle does; nothing where it need not."""
    if status != "knock_limited":
        return ""
    return HELD_BY_THROTTLE.format(opening=SHARE.text(opening, system, 2))


def knock(status: str, opening: float, retard: float, system: str) -> str:
    """What holding knock off takes, behind another sentence; nothing where it takes nothing."""
    if held := lift(status, opening, system):
        return f" {held}"
    late = held_late(retard)
    return HELD_BY_SPARK.format(retard=ANGLE.text(late, system, 2)) if late > 0 else ""


@sentences.register(Outcome)
def nothing_more(_: Outcome) -> list[str]:
    """A point comes to its one sentence."""
    return []


@sentence.register(OperatingPoint)
def point_sentence(answer: OperatingPoint) -> str:
    """What the engine gives, or why nothing."""
    system = answer.scenario_info.system
    if not answer.answered:
        return unanswered(answer, system)
    engine, spark = answer.point.engine, answer.point.knock
    made = POINT.format(
        speed=ENGINE_SPEED.text(answer.engine_speed, system, 4),
        torque=TORQUE.text(engine.torque, system),
        power=KILOWATTS.text(engine.power, system),
    )
    retard = spark.retard if spark else 0.0
    return made + knock(answer.status, engine.opening, retard, system)
