"""Where the climb of a vehicle ends and why, and what would bind next."""

from __future__ import annotations

from windwall.quantities.measures import ENGINE_SPEED, FORCE, KILOWATTS, SHARE, SPEED
from windwall.report.wording.operating_point import knock, lift, unanswered
from windwall.report.wording.scenario import in_gear, road_length
from windwall.results.ranking import MIDDLE, UpgradeSet
from windwall.results.scenario_info import ScenarioInfo
from windwall.results.top_speed import TopSpeed
from windwall.results.values import Values
from windwall.results.views import sentence, sentences

__all__ = [
    "AND_SEEN", "AT_THROTTLE", "BETWEEN", "BEYOND_PLATE", "ENDS", "GOAL_MISSED", "GOAL_REACHED",
    "HIGHEST", "LOWEST", "NEXT", "PLATE_SHARE", "REACHED", "SLOPE", "STANDSTILL", "beyond_plate",
    "ends_at_rev_limit", "gearing", "in_short", "limit_word", "next_to_bind", "no_answer",
    "speed_sentence", "speed_sentences", "to_a_tenth",
]  # fmt: skip

STANDSTILL = {
    True: "No gear takes the vehicle to where the clutch stops slipping: before that the road "
    "takes the whole thrust.",
    False: "Full throttle does not take the vehicle to where the clutch stops slipping: before "
    "that the road takes the whole thrust.",
}
HIGHEST = " with the belt at its highest gearing"
REACHED = 0.05 / 3.6  # m/s, less than the last digit shown
LOWEST = " with the belt at its lowest gearing"
BETWEEN = " with the belt at {ratio} to 1"
# By what binds; a vehicle with several gears and one without differ at the rev limit.
ENDS = {
    "drag": "At {speed}{gearing} at {engine_speed} air takes {air} and rolling {rolling}{slope} of "
    "the {power} at the road.{knock}",
    "rev_limit": "At {speed}{gearing} at {engine_speed} the engine reaches its limit with {excess} "
    "of thrust to spare.{knock}",
    "rev_limit of gears": "At {speed}{gearing} at {engine_speed} the engine reaches its limit with "
    "{excess} of thrust to spare, and no other gear has any left there.{knock}",
    "grip": "At {speed}{gearing} at {engine_speed} the tyres hold no more than {thrust}, and the "
    "road takes all of it.",
    "torque_step": "At {speed}{gearing} at {engine_speed} there is {excess} of thrust to spare, "
    "and a little faster the torque falls away by more than that.{knock}",
    "no_answer": "At {speed}{gearing} at {engine_speed} there is {excess} of thrust to spare, and "
    "the model has no answer beyond. {beyond} The driver would have to lift there.",
}
SLOPE = " and the slope {share}"
NEXT = {
    "drag": "Longer gearing would meet drag next: here the road takes {share} of the thrust.",
    "grip": "Next to bind is grip: the tyres hold {share} more thrust.",
    "rev_limit": "Next to bind is the rev limit, {share} or {speed} further.",
    "rev_limit of gears": "Next to bind is the rev limit, {share} or {speed} further in this gear.",
}
# Both before why: how fast, and the goal.
AT_THROTTLE = {True: "at full throttle", False: "with the throttle held back, for knock"}
GOAL_MISSED = ", {short} short of the goal of {goal}"
GOAL_REACHED = ": the goal of {goal} is reached"
PLATE_SHARE = 0.1  # beyond its highest speed, from which it is said: chosen by the project
BEYOND_PLATE = (
    "That engine speed is {share} beyond {plate}, the highest that a rated figure is stated at: "
    "what friction, filling and valves do there hangs on the engine's class{seen}, and on no plate."
)
AND_SEEN = " and on what was observed"


def no_answer(tried: Values | None, info: ScenarioInfo) -> str:
    """Why a vehicle has no top speed."""
    return unanswered(tried, info.system) if tried else STANDSTILL[info.gears > 1]


def limit_word(answer: TopSpeed) -> str:
    """What binds, in a word or two."""
    return answer.limited_by.replace("_", " ")


def ends_at_rev_limit(one: UpgradeSet) -> bool:
    """Whether more thrust would not make a set faster in this gearing: it reaches the rev limit,
    and does not only come nearer to it to where the road ends.
    """
    if one.limited_by != "rev_limit":
        return False
    return one.speed[MIDDLE] >= one.balance_speed - REACHED


def gearing(answer: TopSpeed) -> str:
    """The gear, where there are several, and where the belt of a variator stands; each with a space
    before it, nothing where the vehicle has one ratio.
    """
    belt = answer.belt
    where = ""
    if belt:
        where = BETWEEN.format(ratio=f"{belt.ratio:#.3g}")
        where = HIGHEST if belt.highest else LOWEST if belt.lowest else where
    return in_gear(answer.scenario_info, answer.gear) + where


def _of_gears(key: str, texts: dict[str, str], info: ScenarioInfo) -> str:
    of_gears = f"{key} of gears"
    return texts[of_gears if info.gears > 1 and of_gears in texts else key]


@sentence.register(TopSpeed)
def speed_sentence(answer: TopSpeed) -> str:
    """Where the climb ends and why."""
    info, binds = answer.scenario_info, answer.limited_by
    if not answer.answered:
        drowned = [sentence(one) for one in answer.cautions if one.about == "drowned"]
        return " ".join([no_answer(answer["unanswered"], info), *drowned])
    ends = _of_gears("drag" if binds == "knock" else binds, ENDS, info).format(**_values(answer))
    return f"{lift(answer.status, answer.opening, info.system)} {ends}".lstrip()


def _values(answer: TopSpeed) -> dict[str, str]:
    info, road, spark = answer.scenario_info, answer.point.road, answer.point.knock
    system = info.system
    total = road.air + road.rolling + road.grade
    beyond = answer.unanswered
    lifted = lift(answer.status, answer.opening, system)  # which goes ahead of all
    slope = SLOPE.format(share=SHARE.text(road.grade / total, system, 2)) if road.grade else ""
    return {
        "speed": SPEED.text(answer.speed, system, 4),
        "gearing": gearing(answer),
        "engine_speed": ENGINE_SPEED.text(answer.engine_speed, system, 4),
        "air": SHARE.text(road.air / total, system, 2),
        "rolling": SHARE.text(road.rolling / total, system, 2),
        "slope": slope,
        "power": KILOWATTS.text(road.thrust * road.speed, system),
        "excess": FORCE.text(answer.surplus, system),
        "thrust": FORCE.text(road.thrust, system),
        "beyond": unanswered(beyond, system) if beyond else "",
        "knock": "" if lifted else knock("", 1.0, spark.retard if spark else 0.0, system),
    }


def in_short(answer: TopSpeed) -> str:
    """How fast, and whether that is the goal."""
    info = answer.scenario_info
    where = f"after {road_length(info)} from rest" if answer.run_up else ""
    said = f"{to_a_tenth(answer.goal_speed, info.system)} {where or AT_THROTTLE[_flat_out(answer)]}"
    if info.goal_speed is None:
        return f"{said}."
    short = info.goal_speed - answer.goal_speed
    goal = (GOAL_MISSED if short > 0 else GOAL_REACHED).format(
        short=to_a_tenth(short, info.system), goal=to_a_tenth(info.goal_speed, info.system)
    )
    return f"{said}{goal}."


def _flat_out(answer: TopSpeed) -> bool:
    return answer.status != "knock_limited"


def to_a_tenth(speed: float, system: str) -> str:
    """To one decimal, so that speeds can be compared."""
    return f"{SPEED.value(speed, system):.1f} {SPEED.shown(system)}"


def beyond_plate(answer: TopSpeed) -> str:
    """How far beyond the rated figures of its engine an answer stands; empty where it does not."""
    info = answer.scenario_info
    if info.plate_speed is None or answer.engine_speed < (1 + PLATE_SHARE) * info.plate_speed:
        return ""
    return BEYOND_PLATE.format(
        share=SHARE.text(answer.engine_speed / info.plate_speed - 1, info.system, 2),
        plate=ENGINE_SPEED.text(info.plate_speed, info.system, 4),
        seen=AND_SEEN if info.observed else "",
    )


@sentences.register(TopSpeed)
def speed_sentences(answer: TopSpeed) -> list[str]:
    """Where the climb ends, and what would bind next; empty where nothing is known of it."""
    return [speed_sentence(answer), next_to_bind(answer)]


def next_to_bind(answer: TopSpeed) -> str:
    """Which condition would bind next and how far away it is."""
    found, info = answer["next"], answer.scenario_info
    if not found:
        return ""
    return _of_gears(found.binding, NEXT, info).format(
        share=SHARE.text(found.share, info.system, 2),
        speed="" if found.speed is None else SPEED.text(found.speed, info.system, 4),
    )
