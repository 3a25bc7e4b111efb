"""What a ranking comes to: the base, first place at each knock anchor, and why sets are refused."""

from __future__ import annotations

from collections.abc import Sequence

from windwall import _core
from windwall.quantities.measures import ANGLE, LENGTH, SHARE, SPEED
from windwall.report.wording.chance import of_ten
from windwall.report.wording.sets import cost
from windwall.results.diagnosis import Reached
from windwall.results.ranking import JUDGED, MIDDLE, Ranking, UpgradeGain, UpgradeSet
from windwall.results.scenario_info import ScenarioInfo
from windwall.results.values import Values
from windwall.results.views import sentence, sentences

__all__ = [
    "ABOVE", "ALIKE", "ALREADY", "ANCHOR", "AT_ANCHOR", "AT_THE_END", "BASE", "BELOW", "BROKEN",
    "CAPPED", "CHEAPEST", "GAINS", "GOAL", "HELD", "LATE", "LATE_GAINS", "MARKS", "MET", "MISSED",
    "MOST_RANKED", "NEAR_CAP", "NOBODY", "NOT_DRIVEN", "NO_BASE", "ONLY_IF_NONE", "OPENED_TO",
    "PLACE", "REACHED", "RETIMED", "SAME_SPARK", "SAME_SPEED", "SOLVED", "STEADY", "TOO_MANY",
    "UNLESS", "UNRANKED", "UNSTEADY", "VERDICT", "WHICH", "alike", "already", "base", "capped",
    "capped_at", "cheapest_way", "first", "first_place", "gains_heading", "late_gains", "meant",
    "place", "rank_sentence", "rank_sentences", "reach_it", "verdict",
]  # fmt: skip

MOST_RANKED = 16
SAME_SPARK = 0.5 / 57.3  # rad, less than the last digit shown
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
RETIMED = (
    "As it is, and with every set, the spark is the one that the model chooses to hold the knock "
    "margin{driven}: nothing here is reached with a spark that is not set to it."
)
NOT_DRIVEN = ", {own} late as it is, and not the {driven} late that was driven"
ANCHOR = (
    "The knock anchor is the octane number that the engine asks for at the condition in which it "
    "is known to begin to knock: {stated:.4g}, known to {sigma:.2g}. At the lower one, "
    "{lower:.4g}, it knocks later than stated, and at the upper one, {upper:.4g}, sooner."
)
STEADY = (
    "First place by gain alone is {place} and stays first at knock anchors from {lowest} to "
    "{highest}."
)
GAINS = (
    "Gains in {unit}, in each column at these three anchors: the higher the anchor, the sooner the "
    "engine knocks. Alone: fitted first, on what it requires. Last: taken off the recommended set. "
    "Fair share: its mean part in that set over all orders of fitting. Late: degrees of the spark "
    "behind that of best torque with it alone, to hold the knock margin ({base} as it is).{held} "
    "Mix: lambda of the mixture with that spark; jets have to be changed to it, or the margin is "
    "not there. Cost: with what it requires; per {unit}: that over what all of it adds alone, at "
    "the anchor as stated. Nobody can tell a gain of less than {told} on the road, and the price "
    "of one is as doubtful as the gain.{marks}"
)
OPENED_TO = " Behind it, where the throttle has to be held back too: how far it may be opened."
MARKS = " !: to where answers end with thrust to spare, or from there."
LATE = 20  # degrees, from which a gain hangs on how the engine bears so late a spark
LATE_GAINS = (
    "The gain of {names} is had with the spark {late} or more late{held}: it hangs on exhaust and "
    "valves that bear it."
)
HELD = " and the throttle held back"
ALIKE = (
    "Who is first by gain alone changes with the knock anchor, but by less than can be told: at "
    "each of the three {names} lie within {told} of each other."
)
UNSTEADY = (
    "First place by gain alone changes with the knock anchor: {places}. Measure where this engine "
    "knocks before spending money on either."
)
AT_ANCHOR = "at {octane} it is {place}"
PLACE = "{upgrade} (+{gain})"
NOBODY = "no upgrade gains anything"
VERDICT = "The {which} set ({cost}) {verdict}{hangs}."
WHICH = dict(zip(JUDGED, ("cheapest", "recommended"), strict=True))
REACHED = (
    "With all that is uncertain {many} vehicles described like this one reach it with that set, "
    "and half of them are faster than {middle}."
)
MET, MISSED = "meets the goal by {by}", "misses the goal by {by}"
CAPPED = (
    " It is capped at the rev limit, at {cap}: {by} {way} the goal, and the rolling radius of its "
    "tyres is known to {known} only."
)
ABOVE, BELOW = "above", "below"
NEAR_CAP = 2  # standard deviations of the rolling radius, within which the goal may lie beyond it
ONLY_IF_NONE = ", only if none of these holds: {names}"
UNLESS = " and would meet it only with {names}"
CHEAPEST = "Cheapest set that reaches it as stated: {name}, {cost} and {hours:g} h, {speed}."


@sentence.register(Ranking)
def rank_sentence(ranking: Ranking) -> str:
    """How many of the allowed sets were solved."""
    template = UNRANKED.get(ranking.status, SOLVED)
    return template.format(**ranking.numbers, most=MOST_RANKED)


def meant(ranking: Ranking) -> str:
    """What the vehicle as it is stands with, and what lies between the speeds given for it."""
    info, said = ranking.scenario_info, []
    lower, stated, upper = ranking.knock_anchors
    if info.spark_is_chosen and ranking.base.retard is not None:
        said.append(RETIMED.format(driven=_not_driven(ranking.base, info)))
    if lower != upper:
        sigma = (upper - lower) / 2
        said.append(ANCHOR.format(stated=stated, sigma=sigma, lower=lower, upper=upper))
    return " ".join(said)


def _not_driven(base: UpgradeSet, info: ScenarioInfo) -> str:
    driven = info.driven_retard
    if driven is None or abs(driven - base.retard) < SAME_SPARK:
        return ""
    own, seen = (ANGLE.short(one, info.system, 2) for one in (base.retard, driven))
    return NOT_DRIVEN.format(own=own, driven=seen)


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
    first = {key: ranking.alone_with(key) for key in ranking.within_budget}
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


def verdict(ranking: Ranking, one: UpgradeSet, key: str, met: bool, flips: list[str]) -> str:
    """Whether a set meets the goal, and what that hangs on."""
    info = ranking.scenario_info
    by = SPEED.text(abs(one.speed[MIDDLE] - info.goal_speed), info.system, 2)
    hangs = (ONLY_IF_NONE if met else UNLESS).format(names="; ".join(flips)) if flips else ""
    said = VERDICT.format(
        which=WHICH[key],
        cost=cost(one, ranking),
        verdict=(MET if met else MISSED).format(by=by),
        hangs=hangs,
    )
    return said + capped(one, info)


def reach_it(counted: Reached, ranking: Ranking) -> str:
    """How many vehicles that are described alike get there, and where the middle of them ends."""
    return REACHED.format(
        many=of_ten(counted.chance, counted.worlds),
        middle=SPEED.text(counted.middle, ranking.scenario_info.system, 4),
    )


def capped(one: UpgradeSet, info: ScenarioInfo) -> str:
    """That the rev limit lies so near the goal that the tyres decide; empty where it does not."""
    if one.limited_by != "rev_limit":
        return ""
    beyond, known = one.balance_speed / info.goal_speed - 1, info.radius_known_to
    if abs(beyond) > NEAR_CAP * known:
        return ""
    return CAPPED.format(
        cap=SPEED.text(one.balance_speed, info.system, 4),
        by=SHARE.text(abs(beyond), info.system, 2),
        way=ABOVE if beyond >= 0 else BELOW,
        known=SHARE.text(known, info.system, 2),
    )


def capped_at(ranking: Ranking) -> float | None:
    """Where the rev limit keeps the fastest set below the goal, m/s; None where it does not."""
    best, goal = ranking.fastest, ranking.scenario_info.goal_speed
    if best is None or goal is None or best.limited_by != "rev_limit":
        return None
    return float(best.balance_speed) if best.balance_speed < goal else None


def cheapest_way(ranking: Ranking) -> str:
    """The cheapest set that reaches the goal; empty where there is none."""
    reached = ranking.cheapest_to_goal
    if reached is None:
        return ""
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
        made.append(already(sets[0].passed))
    return [*made, first_place(ranking)] if ranking.upgrades else made


def already(passed: Sequence[Values]) -> str:
    """Which limits are passed as it is."""
    return ALREADY.format(limits=", ".join(f"{one.address} ({one.why})" for one in passed))


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
    return min(alike, key=lambda one: ranking.alone_with(one.id).cost, default=None)


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
    if alike(ranking, best):
        names = list(dict.fromkeys(one.label for one in best))
        told = SPEED.short(ranking.smallest_lead, ranking.scenario_info.system, 2)
        return ALIKE.format(names=" and ".join(names), told=told)
    places = [AT_ANCHOR.format(octane=o, place=place(ranking, i)) for i, o in enumerate(octane)]
    return UNSTEADY.format(places="; ".join(places))


def alike(ranking: Ranking, best: Sequence[UpgradeGain | None]) -> bool:
    """Whether those that are first at one anchor or another cannot be told apart at any of them."""
    if None in best:
        return False
    apart = (
        max(gains) - min(gains) for gains in zip(*(one.alone for one in best if one), strict=True)
    )
    return max(apart) <= ranking.smallest_lead
