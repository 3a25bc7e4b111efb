"""What is said of a set of upgrades: what is in it, how fast it goes, why it is not recommended."""

from __future__ import annotations

from collections.abc import Sequence
from math import inf, isnan

from windwall.quantities.measures import ANGLE, BOOST, SHARE, SPEED, TEMPERATURE, Measure
from windwall.report.wording.knock import blocked, water
from windwall.report.wording.operating_point import unanswered
from windwall.report.wording.top_speed import no_answer
from windwall.results.knock import held_late
from windwall.results.ranking import (
    ANCHORS,
    CHOSEN,
    MIDDLE,
    Chosen,
    Ranking,
    UpgradeGain,
    UpgradeSet,
)
from windwall.results.scenario_info import ScenarioInfo
from windwall.results.values import Values
from windwall.results.views import sentence

__all__ = [
    "ALIKE", "AT_THE_END", "BEHIND", "EARLY_ELSEWHERE", "EMPTY_TARGET", "ENDING_EARLY",
    "ENDS_EARLY", "FASTEST", "MEETS_TOO", "NO_SPEED", "NO_TARGET", "OF_THE_FILE", "OUTSIDE",
    "PASSED_OVER", "PASSES", "RECOMMENDED_BEHIND", "at_the_end", "budget", "changes",
    "chosen_elsewhere", "cost", "early_elsewhere", "ending_early", "outside", "passed_over",
    "refusal", "set_text", "spark", "speed_number", "sum_of_money", "target", "value",
]  # fmt: skip

OF_THE_FILE = ", as the file states"
NO_TARGET = "There is none: every allowed set passes a limit, has no answer or ends without one."
EMPTY_TARGET = "It is empty: nothing{within} is faster without passing a limit."
FASTEST = (
    "{speed} at the three knock anchors{elsewhere}. It is the fastest{within}, and over every "
    "cheaper one it has a lead that can be told: more than {smallest} at one of the anchors.{early}"
)
ALIKE = (
    "{speed} at the three knock anchors{elsewhere}. It is the cheapest{within} that cannot be told "
    "from the fastest, which is this set {changes}: {dearer}, and a lead of {lead} {unit}; one "
    "that can be told is more than {smallest}.{early}"
)
PASSED_OVER = (
    "The recommended set {changes} is cheaper, {cost}, reaches {speed} as stated{goal}, and is "
    "passed over all the same. What decides is a knock anchor of {octane}: there it {behind}."
)
MEETS_TOO = " and meets the goal too"
NO_SPEED = "has no answer"
BEHIND = "is {lead} slower than the fastest set, more than the {smallest} that can be told{own}"
RECOMMENDED_BEHIND = ", and the recommended one {lead}"
EARLY_ELSEWHERE = (
    " At {anchors} octane numbers its pull ends with thrust to spare, for want of an answer."
)
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
AT_THE_END = "Where its pull ends it has {found}."
ENDING_EARLY = (
    "{number} of the {solved} sets end with thrust to spare, because the model has no answer "
    "beyond, at the knock anchor as stated. Their speed is that where answers end. None of them is "
    "recommended, the best for a price or a partner above. The smallest of them:"
)
ENDS_EARLY = "its pull ends at {speed} with thrust to spare. {reason}"


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
    within = "" if ranking.budget is None else " within the budget"
    if best is None:
        return NO_TARGET
    if not ranking.fastest.upgrades:
        return EMPTY_TARGET.format(within=within)
    unit = SPEED.shown(system)
    speeds = ", ".join("-" if isnan(one) else speed_number(one, system) for one in best.speed)
    values = {
        "speed": f"{speeds} {unit}",
        "within": within,
        "smallest": SPEED.short(ranking.smallest_lead, system, 2),
        "changes": changes(best, ranking.fastest),
        "dearer": cost(ranking.fastest, ranking),
        "lead": ", ".join(SPEED.change(one, system) for one in ranking.lead),
        "unit": unit,
        "elsewhere": chosen_elsewhere(best, ranking),
        "early": early_elsewhere(best, ranking),
    }
    return (FASTEST if best == ranking.fastest else ALIKE).format(**values)


def passed_over(ranking: Ranking, rows: Sequence[UpgradeSet]) -> str:
    """Why the best of these rows for less money is not recommended where that hangs on another
    anchor alone; empty where its speed as stated says it.
    """
    best, most, system = ranking.target, ranking.fastest, ranking.scenario_info.system
    cheaper = [one for one in rows if best and one.cost < best.cost]
    if not cheaper:
        return ""
    one = cheaper[-1]
    leads = [a - b for a, b in zip(most.speed, one.speed, strict=True)]
    told = [at for at, lead in enumerate(leads) if not lead <= ranking.smallest_lead]
    if MIDDLE in told or not told:
        return ""
    decides = max(told, key=lambda at: inf if isnan(leads[at]) else leads[at])
    goal = ranking.scenario_info.goal_speed
    return PASSED_OVER.format(
        changes=changes(best, one),
        cost=cost(one, ranking),
        speed=SPEED.text(one.speed[MIDDLE], system, 4),
        goal=MEETS_TOO if goal is not None and one.speed[MIDDLE] >= goal else "",
        octane=f"{ranking.knock_anchors[decides]:.4g}",
        behind=_behind(ranking, leads[decides], decides),
    )


def _behind(ranking: Ranking, lead: float, anchor: int) -> str:
    """How far a set is behind the fastest at one anchor, beside the recommended one."""
    if isnan(lead):
        return NO_SPEED
    system, own = ranking.scenario_info.system, ""
    if ranking.target != ranking.fastest:
        own = RECOMMENDED_BEHIND.format(lead=SPEED.text(ranking.lead[anchor], system, 2))
    told = SPEED.short(ranking.smallest_lead, system, 2)
    return BEHIND.format(lead=SPEED.text(lead, system, 2), smallest=told, own=own)


def at_the_end(end: Values, info: ScenarioInfo) -> str:
    """What a set has where its pull ends, and how it stands without its spray."""
    system = info.system
    found = [f"{BOOST.text(end.boost, system)} of boost"]
    if end.head_temperature is not None:
        found.append(f"a head of {TEMPERATURE.text(end.head_temperature, system)}")
    if end.blower_outlet_temperature is not None:
        outlet = TEMPERATURE.text(end.blower_outlet_temperature, system, 2)
        found.append(f"{outlet} behind the blower")
    *others, last = found
    said = AT_THE_END.format(found=f"{', '.join(others)} and {last}" if others else last)
    if end.margin_without_spray is not None:
        said += f" {blocked(end.margin_without_spray, info.knock_sigma, 'the jet of its spray')}"
    return said + water(end.water_per_fuel)


def changes(one: UpgradeSet, other: UpgradeSet) -> str:
    """What another set has that this one has not, and the other way round."""
    mine, its = ([each.label(key) for key in each.upgrades] for each in (one, other))
    more = [label for label in its if label not in mine]
    less = [label for label in mine if label not in its]
    said = [("with", more), ("without", less)]
    return " and ".join(f"{word} {', '.join(labels)}" for word, labels in said if labels)


def chosen_elsewhere(one: UpgradeSet, ranking: Ranking) -> str:
    """What open choices take at another anchor, where that is something else."""
    others = []
    for key, octane in zip(CHOSEN, ranking.knock_anchors, strict=True):
        changed = [each.sentence for each in one[key] if each not in one.chosen]
        if changed:
            others.append(f"with {' and '.join(changed)} at {octane:.4g}")
    return f" ({', '.join(others)})" if others else ""


def early_elsewhere(one: UpgradeSet, ranking: Ranking) -> str:
    """That a set which has an answer as stated has none at another anchor."""
    anchors = [
        f"{ranking.knock_anchors[at]:.4g}" for at in range(len(ANCHORS)) if one.ends_early(at)
    ]
    return EARLY_ELSEWHERE.format(anchors=" and ".join(anchors)) if anchors else ""


def cost(one: UpgradeSet, ranking: Ranking) -> str:
    return sum_of_money(one.cost, ranking.currency)


def sum_of_money(amount: float, currency: str) -> str:
    """A sum; a file without costs has no currency."""
    return f"{amount:.0f} {currency}".rstrip()


def budget(ranking: Ranking) -> str:
    """What may be spent, and where that stands; empty where anything may."""
    if ranking.budget is None:
        return ""
    of_file = OF_THE_FILE if ranking.budget_of_file else ""
    return sum_of_money(ranking.budget, ranking.currency) + of_file


def set_text(one: UpgradeSet, system: str) -> str:
    """How fast, and at the other two anchors."""
    low, stated, high = ("no answer" if isnan(v) else speed_number(v, system) for v in one.speed)
    return f"{stated} {SPEED.shown(system)} ({low} lower, {high} upper knock anchor)"


def spark(one: UpgradeSet, system: str) -> str:
    """How late, behind a speed; nothing where it is as early as it likes."""
    if held_late(one.retard) <= 0:
        return ""
    held = "" if one.opening == 1 else f", throttle at {SHARE.text(one.opening, system, 2)}"
    return f", spark {ANGLE.value(one.retard, system):.0f} {ANGLE.shown(system)} late{held}"


def ending_early(ranking: Ranking) -> str:
    """How many sets end without an answer, and what is not made of them."""
    return ENDING_EARLY.format(number=ranking.number_cut_short, solved=ranking.solved)


def speed_number(speed: float, system: str) -> str:
    """Without its unit."""
    return f"{SPEED.value(speed, system):.1f}"
