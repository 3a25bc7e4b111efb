"""What a ranking comes to: the base, first place at each knock anchor, and why sets are refused."""

from __future__ import annotations

from windwall import _core
from windwall.quantities.measures import LENGTH, SPEED, Measure
from windwall.report.wording.top_speed import no_answer
from windwall.results.ranking import MIDDLE, Chosen, Ranking, UpgradeGain, UpgradeSet
from windwall.results.views import sentence, sentences

MOST_RANKED = 16
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
UNSTEADY = (
    "First place by gain alone changes with the knock anchor: {places}. Measure where this engine "
    "knocks before spending money on either."
)
AT_ANCHOR = "at {octane} it is {place}"
PLACE = "{upgrade} (+{gain})"
NOBODY = "no upgrade gains anything"
NO_TARGET = "There is no such set: every allowed one passes a limit or has no answer."
EMPTY_TARGET = "The set is empty: nothing within the budget is faster without passing a limit."
FASTEST = (
    "The set: {name} ({cost}, {speed}). It is the fastest within the budget, and over every "
    "cheaper one it has a lead that can be told: more than {smallest} at the stated knock anchor "
    "or one standard deviation to either side of it."
)
ALIKE = (
    "The set: {name} ({cost}, {speed}). It is the cheapest within the budget that cannot be told "
    "from the fastest, {fastest} ({dearer}). That leads it by {lead} {unit} at a knock anchor one "
    "standard deviation lower, as stated, and as much higher; a lead that can be told is more than "
    "{smallest}."
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
    return "" if not one.passed else PASSES.format(address=one.passed[0].address)


def outside(ranking: Ranking, gain: UpgradeGain) -> str:
    """Why an upgrade is not in the target."""
    beside = None if gain.beside_target is None else ranking.sets[gain.beside_target]
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
    values = {
        "name": best.name,
        "cost": _cost(best, ranking),
        "speed": SPEED.text(best.speed[MIDDLE], system, 4),
        "smallest": SPEED.short(ranking.smallest_lead, system, 2),
        "fastest": ranking.fastest.name,
        "dearer": _cost(ranking.fastest, ranking),
        "lead": ", ".join(SPEED.change(one, system) for one in ranking.lead),
        "unit": SPEED.shown(system),
    }
    return (FASTEST if best == ranking.fastest else ALIKE).format(**values)


def _cost(one: UpgradeSet, ranking: Ranking) -> str:
    return f"{one.cost:.0f} {ranking.currency}".rstrip()


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
    """The upgrade that gains most alone at one anchor; None where none gains."""
    gaining = [one for one in ranking.within_budget.values() if one.alone[anchor] > 0]
    return max(gaining, key=lambda one: one.alone[anchor], default=None)


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
