"""What a ranking comes to: the base, first place at each knock anchor, and why sets are refused."""

from __future__ import annotations

from windwall import _core
from windwall.quantities.measures import LENGTH, SPEED
from windwall.report.wording.top_speed import no_answer
from windwall.results.ranking import MIDDLE, Ranking, UpgradeGain, UpgradeSet
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
PASSES = "passes {address}"
OUTSIDE = {
    "none": "",
    "excluded": "excluded by what is fitted",
    "no_answer": "{reason}",
    "passes_limit": "would pass {address}",
    "adds_nothing": "adds nothing to it",
    "beyond_budget": "beyond the budget",
}


@sentence.register(Ranking)
def rank_sentence(ranking: Ranking) -> str:
    """How many of the allowed sets were solved."""
    template = UNRANKED.get(ranking.status, SOLVED)
    return template.format(**ranking.numbers, most=MOST_RANKED)


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
    return OUTSIDE[gain.outside].format(
        reason=beside.reason if beside else "",
        address=beside.passed[0].address if beside and beside.passed else "",
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
    """The upgrade that gains most alone at one anchor; None where none gains."""
    gaining = [one for one in ranking.upgrades.values() if one.alone[anchor] > 0]
    return max(gaining, key=lambda one: one.alone[anchor], default=None)


def place(ranking: Ranking, anchor: int) -> str:
    best = first(ranking, anchor)
    if best is None:
        return NOBODY
    gain = SPEED.text(best.alone[anchor], ranking.scenario_info.system, 2)
    return PLACE.format(upgrade=best.id, gain=gain)


def first_place(ranking: Ranking) -> str:
    """Who gains most alone, and whether that stands whatever the knock anchor is."""
    octane = [_core.readable_number(number, 3) for number in ranking.knock_anchors]
    best = [first(ranking, anchor) for anchor in range(len(octane))]
    if len({one and one.id for one in best}) == 1:
        return STEADY.format(place=place(ranking, MIDDLE), lowest=octane[0], highest=octane[-1])
    places = [AT_ANCHOR.format(octane=o, place=place(ranking, i)) for i, o in enumerate(octane)]
    return UNSTEADY.format(places="; ".join(places))
