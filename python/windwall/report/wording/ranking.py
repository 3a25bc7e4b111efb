"""What a ranking comes to: the base, first place at each knock anchor, and why sets are refused."""

from __future__ import annotations

from math import isnan

from windwall import _core
from windwall.quantities.measures import ANGLE, LENGTH, SHARE, SPEED, Measure
from windwall.report.wording.operating_point import unanswered
from windwall.report.wording.top_speed import no_answer
from windwall.results.ranking import MIDDLE, Chosen, Ranking, UpgradeGain, UpgradeSet
from windwall.results.views import sentence, sentences

MOST_RANKED = 16
SAME_SPEED = 0.05 / 3.6  # m/s, less than the last digit shown
SOLVED = (
    "{solved} of {allowed} allowed sets of {considered} upgrades were solved at three knock "
    "anchors."
)
TOO_MANY = (
    "The menu has {considered} upgrades and all sets of up to {most} are solved: name the ones to "
    "consider."
)
BROKEN = "The ranking broke off inside. That is a fault of windwall, and of nothing that was asked."
UNRANKED = {"out_of_range": TOO_MANY, "broken_off": BROKEN}
BASE = "As it stands: {speed}{road}{goal}."
AT_THE_END = " at the end of {length}"
GOAL = "; the goal is {speed}"
NO_BASE = "As it stands the vehicle has no answer: {reason}"
ALREADY = (
    "As it stands the vehicle already passes: {limits}. No set that still passes it is recommended."
)
STEADY = (
    "First place by gain alone is {place} and stays first at knock anchors from {lowest} to "
    "{highest}."
)
GAINS = (
    "Gains in {unit}, in each column at these three anchors: the higher the anchor, the sooner the "
    "engine knocks. Alone: fitted first, on what it requires. Last: taken off the recommended set. "
    "Fair share: its mean part in that set over all orders of fitting. Spark: degrees later than "
    "best torque with it alone, to hold the knock margin ({base} as it is); a share behind it is "
    "how far the throttle may be opened then. Cost: with what it requires; per {unit}: that over "
    "what all of it adds, at the anchor as stated.{marks}"
)
MARKS = " !: to where answers end with thrust to spare, or from there."
LATE = 20  # degrees, from which a gain hangs on how the engine bears so late a spark
LATE_GAINS = (
    "The gain of {names} is had with the spark {late} or more late{held}: it hangs on exhaust and "
    "valves that bear it."
)
HELD = " and the throttle held back"
ENDING_EARLY = (
    "{number} of the {solved} sets end with thrust to spare, because the model has no answer "
    "beyond, at the knock anchor as stated. Their speed is that where answers end. None of them is "
    "recommended, the best for a price or a partner above. The smallest of them:"
)
ENDS_EARLY = "its pull ends at {speed} with thrust to spare. {reason}"
UNSTEADY = (
    "First place by gain alone changes with the knock anchor: {places}. Measure where this engine "
    "knocks before spending money on either."
)
AT_ANCHOR = "at {octane} it is {place}"
PLACE = "{upgrade} (+{gain})"
NOBODY = "no upgrade gains anything"
NO_TARGET = "There is none: every allowed set passes a limit, has no answer or ends without one."
EMPTY_TARGET = "It is empty: nothing within the budget is faster without passing a limit."
FASTEST = (
    "{speed} at the three knock anchors. It is the fastest within the budget, and over every "
    "cheaper one it has a lead that can be told: more than {smallest} at one of the anchors.{early}"
)
ALIKE = (
    "{speed} at the three knock anchors. It is the cheapest within the budget that cannot be told "
    "from the fastest. That has {changes}: {dearer}, and a lead of {lead} {unit}; one that can be "
    "told is more than {smallest}.{early}"
)
EARLY_ELSEWHERE = (
    " At {anchors} octane numbers its pull ends with thrust to spare, for want of an answer."
)
VERDICT = "The {which} set ({cost}) {verdict}{hangs}."
WHICH = {"cheapest_to_goal": "cheapest", "target": "recommended"}
MET, MISSED = "meets the goal by {by}", "misses the goal by {by}"
ONLY_IF_NONE = ", only if none of these holds: {names}"
UNLESS = " and would meet it only with {names}"
CHEAPEST = "Cheapest set that reaches it as stated: {name}, {cost} and {hours:g} h, {speed}."
PASSES = "passes {address}"
OUTSIDE = {
    "none": "",
    "excluded": "excluded by what is fitted",
    "no_answer": "{reason}",
    "passes_limit": "would pass {address}",
    "adds_nothing": "adds nothing to it",
    "adds_too_little": "adds {gain} to it, too little to be told",
    "beyond_budget": "beyond the budget",
    "ends_without_answer": "with it {reason}",
}


@sentence.register(Ranking)
def rank_sentence(ranking: Ranking) -> str:
    """How many of the allowed sets were solved."""
    template = UNRANKED.get(ranking.status, SOLVED)
    return template.format(**ranking.numbers, most=MOST_RANKED)


@sentence.register(Chosen)
def value(one: Chosen) -> str:
    """A chosen value as people say it."""
    keys = [key for key in one.address.split("/") if not key.isdigit()]
    if one.number is None:
        return one.text.replace("_", " ")
    if one.unit:
        return Measure(one.dimension, one.unit).short(one.number, one.scenario_info.system)
    if one.counted:
        return f"{one.number:g} {keys[-1].partition('_')[0]}"
    return f"{keys[-1].replace('_', ' ')} {one.number:g}"


@sentence.register(UpgradeSet)
def refusal(one: UpgradeSet) -> str:
    """Why a set has no answer, or which limit it passes."""
    if one.refused_for == "not_installable":
        return one.refusal
    if one.refused_for == "no_answer":
        return no_answer(one.unanswered, one.scenario_info)
    if one.refused_for == "ends_without_answer":
        system = one.scenario_info.system
        return ENDS_EARLY.format(
            speed=SPEED.text(one.speed[MIDDLE], system, 4),
            reason=unanswered(one.unanswered, system),
        )
    return "" if not one.passed else PASSES.format(address=one.passed[0].address)


def outside(ranking: Ranking, gain: UpgradeGain) -> str:
    """Why an upgrade is not in the target."""
    beside = None if gain.beside_target is None else ranking.set_at(gain.beside_target)
    more = beside.speed[MIDDLE] - ranking.target.speed[MIDDLE] if beside else 0.0
    return OUTSIDE[gain.outside].format(
        gain=SPEED.text(more, ranking.scenario_info.system, 2),
        reason=beside.reason if beside else "",
        address=beside.passed[0].address if beside and beside.passed else "",
    )


def target(ranking: Ranking) -> str:
    """The set that the fair shares are of, and why it is this one."""
    best, system = ranking.target, ranking.scenario_info.system
    if best is None:
        return NO_TARGET
    if not ranking.fastest.upgrades:
        return EMPTY_TARGET
    unit = SPEED.shown(system)
    speeds = ", ".join("-" if isnan(one) else _speed(one, system) for one in best.speed)
    values = {
        "speed": f"{speeds} {unit}",
        "smallest": SPEED.short(ranking.smallest_lead, system, 2),
        "changes": changes(best, ranking.fastest),
        "dearer": cost(ranking.fastest, ranking),
        "lead": ", ".join(SPEED.change(one, system) for one in ranking.lead),
        "unit": unit,
        "early": early_elsewhere(best, ranking),
    }
    return (FASTEST if best == ranking.fastest else ALIKE).format(**values)


def changes(one: UpgradeSet, other: UpgradeSet) -> str:
    """What another set has that this one has not, and the other way round."""
    mine, its = ([each.label(key) for key in each.upgrades] for each in (one, other))
    more = [label for label in its if label not in mine]
    less = [label for label in mine if label not in its]
    said = [", ".join(more) + " more"] if more else []
    return " and ".join([*said, *([", ".join(less) + " less"] if less else [])])


def early_elsewhere(one: UpgradeSet, ranking: Ranking) -> str:
    """That a set which has an answer as stated has none at another anchor."""
    anchors = [f"{ranking.knock_anchors[at]:.4g}" for at in one.cut_short]
    return EARLY_ELSEWHERE.format(anchors=" and ".join(anchors)) if anchors else ""


def cost(one: UpgradeSet, ranking: Ranking) -> str:
    return f"{one.cost:.0f} {ranking.currency}".rstrip()


def set_text(one: UpgradeSet, system: str) -> str:
    """How fast, and at the other two anchors."""
    low, stated, high = ("no answer" if isnan(v) else _speed(v, system) for v in one.speed)
    return f"{stated} {SPEED.shown(system)} ({low} lower, {high} upper knock anchor)"


def spark(one: UpgradeSet, system: str) -> str:
    """How late, behind a speed; nothing where it is as early as it likes."""
    if not one.retard:
        return ""
    held = "" if one.opening == 1 else f", throttle at {SHARE.text(one.opening, system, 2)}"
    return f", spark {ANGLE.value(one.retard, system):.0f} {ANGLE.shown(system)} late{held}"


def _speed(speed: float, system: str) -> str:
    return f"{SPEED.value(speed, system):.1f}"


def gains_heading(ranking: Ranking) -> str:
    """The three anchors, in the one convention of all tables."""
    low, stated, high = (f"{octane:.4g}" for octane in ranking.knock_anchors)
    if low == high:
        return "Every upgrade"
    return (
        f"Every upgrade, at knock anchors of {low}, {stated}, {high} "
        "(as stated -/+ one standard deviation)"
    )


def late_gains(ranking: Ranking) -> str:
    """The upgrades that gain alone with a spark so late that the gain hangs on it."""
    system = ranking.scenario_info.system
    first = {key: ranking.fitted_first(key) for key in ranking.within_budget}
    late = {
        key: one
        for key, one in first.items()
        if one is not None
        and ranking.upgrades[key].alone[MIDDLE] > 0
        and ANGLE.value(one.retard or 0.0, "metric") >= LATE
    }
    if not late:
        return ""
    least = min(one.retard for one in late.values())
    held = HELD if all(one.opening < 1 for one in late.values()) else ""
    return LATE_GAINS.format(names=" and ".join(late), late=ANGLE.text(least, system, 2), held=held)


def ending_early(ranking: Ranking) -> str:
    """How many sets end without an answer, and what is not made of them."""
    return ENDING_EARLY.format(number=ranking.number_cut_short, solved=ranking.solved)


def verdict(ranking: Ranking, one: UpgradeSet, key: str, met: bool, flips: list[str]) -> str:
    """Whether a set meets the goal, and what that hangs on."""
    info = ranking.scenario_info
    by = SPEED.text(abs(one.speed[MIDDLE] - info.goal_speed), info.system, 2)
    hangs = (ONLY_IF_NONE if met else UNLESS).format(names="; ".join(flips)) if flips else ""
    return VERDICT.format(
        which=WHICH[key],
        cost=cost(one, ranking),
        verdict=(MET if met else MISSED).format(by=by),
        hangs=hangs,
    )


def cheapest_to_goal(ranking: Ranking) -> str:
    reached = ranking.cheapest_to_goal
    return CHEAPEST.format(
        name=reached.name,
        cost=cost(reached, ranking),
        hours=reached.hours,
        speed=SPEED.text(reached.speed[MIDDLE], ranking.scenario_info.system, 4),
    )


@sentences.register(Ranking)
def rank_sentences(ranking: Ranking) -> list[str]:
    """About the base, the limits it passes already, and first place at each anchor."""
    sets = ranking.sets
    if not sets or sets[0].upgrades:
        return []
    made = [base(ranking, sets[0])]
    if sets[0].passed:
        limits = ", ".join(f"{one.address} ({one.why})" for one in sets[0].passed)
        made.append(ALREADY.format(limits=limits))
    return [*made, first_place(ranking)] if ranking.upgrades else made


def base(ranking: Ranking, one: UpgradeSet) -> str:
    """The vehicle as it stands."""
    info = ranking.scenario_info
    if not one.answered:
        return NO_BASE.format(reason=one.reason)
    length = None if info.run_up is None else LENGTH.text(info.run_up, info.system, 4)
    goal = None if info.goal_speed is None else SPEED.text(info.goal_speed, info.system, 4)
    return BASE.format(
        speed=SPEED.text(one.speed[MIDDLE], info.system, 4),
        road=AT_THE_END.format(length=length) if length else "",
        goal=GOAL.format(speed=goal) if goal else "",
    )


def first(ranking: Ranking, anchor: int) -> UpgradeGain | None:
    """The upgrade that gains most alone at one anchor, of equals the cheapest; None where none
    gains. A gain to where answers end counts for nothing.
    """
    gaining = [
        one
        for one in ranking.within_budget.values()
        if one.alone[anchor] > 0 and not ranking.cut_short_alone(one.id)[anchor]
    ]
    most = max((one.alone[anchor] for one in gaining), default=0.0)
    alike = [one for one in gaining if one.alone[anchor] >= most - SAME_SPEED]
    return min(alike, key=lambda one: ranking.fitted_first(one.id).cost, default=None)


def place(ranking: Ranking, anchor: int) -> str:
    best = first(ranking, anchor)
    if best is None:
        return NOBODY
    gain = SPEED.text(best.alone[anchor], ranking.scenario_info.system, 2)
    return PLACE.format(upgrade=best.label, gain=gain)


def first_place(ranking: Ranking) -> str:
    """Who gains most alone, and whether that stands whatever the knock anchor is."""
    octane = [_core.readable_number(number, 3) for number in ranking.knock_anchors]
    best = [first(ranking, anchor) for anchor in range(len(octane))]
    if len({one and one.id for one in best}) == 1:
        return STEADY.format(place=place(ranking, MIDDLE), lowest=octane[0], highest=octane[-1])
    places = [AT_ANCHOR.format(octane=o, place=place(ranking, i)) for i, o in enumerate(octane)]
    return UNSTEADY.format(places="; ".join(places))
