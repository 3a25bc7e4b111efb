"""The answer to "which upgrade buys the most speed"."""

from __future__ import annotations

import textwrap
from collections.abc import Iterator, Sequence
from math import isnan

from windwall.quantities.measures import AREA, KILOWATTS, SPEED
from windwall.report.text.common import head, pairs
from windwall.report.text.limits import bound_text, limits_table
from windwall.report.text.observed import observed_lines
from windwall.report.text.safety_notes import safety_notes
from windwall.report.text_layout import bullet, paragraph, section, table
from windwall.report.wording.ranking import outside as why_outside
from windwall.report.wording.ranking import target
from windwall.report.wording.scenario import conditions, road_length
from windwall.results.diagnosis import Diagnosis
from windwall.results.ranking import MIDDLE, Ranking, UpgradeGain, UpgradeSet
from windwall.results.values import Values
from windwall.results.views import summary

NONE = "-"
SMALLEST_GAIN = 0.05  # in the unit of speed shown; a smaller one is printed as 0.0
SMALLEST_STEP = 0.5  # likewise, between two sets that are both printed
SET_WIDTH = 48
NOTHING = paragraph("There is nothing to rank: the file lists no upgrades.")


@summary.register(Ranking)
def rank_text(ranking: Ranking, diagnosis: Diagnosis | None = None) -> str:
    """Everything worth reading about a ranking."""
    info = ranking.scenario_info
    lines = head(info, question(ranking))
    if not ranking.answered:
        return "\n".join([*lines, *no_answer(ranking), *safety_notes()])
    lines += observed_lines(info, diagnosis)
    lines += stopped(ranking)
    lines += ["", *pairs(start(ranking))]
    lines += limits_table(ranking.base.passed, info)
    lines += menu(ranking) if ranking.upgrades else section("The menu is empty", NOTHING)
    lines += section("The goal", goal(ranking)) if ranking.complete else []
    sentences = [ranking.sentence, *ranking.sentences]
    lines += section("How sure", [line for one in sentences if one for line in bullet(one)])
    return "\n".join([*lines, *safety_notes()])


def menu(ranking: Ranking) -> list[str]:
    """Every upgrade and every set worth knowing."""
    return [
        *upgrades_table(ranking),
        *partners_table(ranking),
        *new_limits(ranking),
        *(outside(ranking) if ranking.complete else []),
        *best_table("Best set for every budget", ranking.best_by_cost, ranking),
        *best_table("Best set for every number of hours", ranking.best_by_hours, ranking),
    ]


def no_answer(ranking: Ranking) -> list[str]:
    """Why there is nothing to rank against."""
    reasons = [one.reason for one in ranking.sets[:1] if not one.upgrades]
    lines = [line for one in [ranking.sentence, *reasons] for line in paragraph(one)]
    return section(f"No answer ({ranking.status})", lines)


def stopped(ranking: Ranking) -> list[str]:
    """That a ranking is not whole, before anything is read off it."""
    if ranking.complete:
        return []
    return section(
        "STOPPED EARLY", paragraph(f"{ranking.sentence} What follows is of those alone.")
    )


def question(ranking: Ranking) -> str:
    budget = ranking.budget
    limit = "no budget" if budget is None else f"budget {budget:.0f} {ranking.currency}"
    return (
        f"which upgrades buy the most speed, {speed_meant(ranking)}; "
        f"{conditions(ranking.scenario_info)}; {limit}."
    )


def speed_meant(ranking: Ranking) -> str:
    road = road_length(ranking.scenario_info)
    return f"reached {road} from rest" if road else "where full throttle stops accelerating"


def start(ranking: Ranking) -> Iterator[tuple[str, str]]:
    """Where the vehicle stands, and how far the goal is."""
    system = ranking.scenario_info.system
    low, now, high = ranking.base.speed
    unit = SPEED.shown(system)
    anchors = f"({_speed(low, system)} at the lower and {_speed(high, system)} at the upper anchor)"
    yield "as it is", f"{_speed(now, system)} {unit} {anchors}"
    goal = ranking.scenario_info.goal_speed
    if goal is not None:
        short = SPEED.value(goal - now, system)
        verdict = f"{short:.1f} {unit} short" if short > 0 else "already reached"
        yield "goal", f"{_speed(goal, system)} {unit}: {verdict}"


def upgrades_table(ranking: Ranking) -> list[str]:
    """Every upgrade in every light."""
    system = ranking.scenario_info.system
    unit = SPEED.shown(system)
    header = ("", "alone", "last", "fair share", "cost", f"per {unit}")
    rows = [_upgrade_row(key, ranking) for key in ranking.within_budget]
    lines = table([header, *rows])
    lines += paragraph(
        f"Gains in {unit} at knock anchors of {_anchors(ranking)}, the middle one as stated; the "
        "lower the anchor, the later the engine knocks. Alone: fitted first, with what it "
        "requires. Last: taken off the set below. Fair share: its mean part in that set "
        f"over all orders of fitting. Cost per {unit} goes by the gain alone at the middle anchor."
    )
    lines += paragraph(too_dear(ranking))
    return section("Every upgrade", [*lines, *paragraph(target(ranking))])


def too_dear(ranking: Ranking) -> str:
    """The upgrades that no row is about."""
    names = [key for key in ranking.upgrades if key not in ranking.within_budget]
    return f"Beyond the budget, with what they require: {', '.join(names)}." if names else ""


def _anchors(ranking: Ranking) -> str:
    low, stated, high = (f"{octane:.0f}" for octane in ranking.knock_anchors)
    return f"{low}, {stated} and {high} octane numbers"


def _upgrade_row(key: str, ranking: Ranking) -> tuple[str, ...]:
    system = ranking.scenario_info.system
    worth, terms = ranking.upgrades[key], ranking.menu[key]
    cost = NONE if terms.cost is None else f"{terms.cost:.0f} {ranking.currency}"
    gain = SPEED.value(worth.alone[MIDDLE], system)
    priced = terms.cost is not None and gain >= SMALLEST_GAIN
    price = f"{terms.cost / gain:.0f} {ranking.currency}" if priced else NONE
    views = [_gains(view, system) for view in (worth.alone, worth.last, worth.share)]
    return worth.label, *views, cost, price


def partners_table(ranking: Ranking) -> list[str]:
    """Every upgrade beside those that make the most and the least of it."""
    system = ranking.scenario_info.system
    header = ("", "alone", "helped most by", "hindered most by", "best pair")
    rows = [
        (
            worth.id,
            SPEED.change(worth.alone[MIDDLE], system),
            _beside(worth, worth.most_helped, ranking),
            _beside(worth, worth.most_hindered, ranking),
            _together(worth, ranking),
        )
        for worth in ranking.within_budget.values()
    ]
    if all(row[2:] == (NONE,) * 3 for row in rows):
        return []
    lines = table([header, *rows], left=(0, 2, 3, 4))
    lines += paragraph(
        f"{SPEED.shown(system)} at the middle anchor, from the sets that are solved; none of these "
        "pairs passes a limit. Helped and hindered: what the upgrade adds where that other one is "
        "fitted, which is more or less than alone. Best pair: what the two add together to the "
        "vehicle as it is."
    )
    return section("Every upgrade with a partner", lines)


def _beside(worth: UpgradeGain, partner: Values | None, ranking: Ranking) -> str:
    system = ranking.scenario_info.system
    if not partner or abs(SPEED.value(partner.interaction[MIDDLE], system)) < SMALLEST_GAIN:
        return NONE
    return f"{SPEED.change(partner.beside[MIDDLE], system)} {_named(worth, partner, ranking)}"


def _together(worth: UpgradeGain, ranking: Ranking) -> str:
    pair = worth.best_pair
    if not pair:
        return NONE
    gain = SPEED.change(pair.together[MIDDLE], ranking.scenario_info.system)
    return f"{gain} {_named(worth, pair, ranking)}"


def _named(worth: UpgradeGain, partner: Values, ranking: Ranking) -> str:
    """The other one, and every value that was chosen for the two and what they require."""
    pair = ranking.sets[partner.pair]
    own = [one.sentence for one in pair.chosen if one.upgrade == worth.id]
    others = {one.upgrade for one in pair.chosen} - {worth.id, partner.id}
    return ", ".join([pair.label(partner.id), *own, *map(pair.label, sorted(others))])


def new_limits(ranking: Ranking) -> list[str]:
    """Limits that the vehicle passes with one upgrade and what it requires, and not without."""
    before = {passed.address for passed in ranking.base.passed}
    system = ranking.scenario_info.system
    lines = [
        line
        for key, worth in ranking.upgrades.items()
        for one in worth.passed
        if one.address not in before
        for line in bullet(f"{key}: {one.address} {bound_text(one, system)} ({one.why})")
    ]
    none = "No upgrade, fitted alone, passes a limit that is not passed already."
    return section("Limits that an upgrade passes when fitted alone", lines or paragraph(none))


def outside(ranking: Ranking) -> list[str]:
    """Why an upgrade is not in the set."""
    lines = [
        line
        for key, worth in ranking.upgrades.items()
        if worth.outside != "none"
        for line in bullet(f"{key}: {why_outside(ranking, worth)}")
    ]
    return section("Not in the set", lines)


def best_table(heading: str, sets: Sequence[UpgradeSet], ranking: Ranking) -> list[str]:
    """The sets that no cheaper or quicker one beats."""
    system = ranking.scenario_info.system
    header = ("", "hours", SPEED.shown(system), "least margin", "set")
    printed = worth_printing(sets, system)
    rows = [row for one in printed for row in _set_rows(one, ranking)]
    lines = table([header, *rows], left=(4,)) if rows else []
    if len(printed) < len(sets):
        step = f"{SMALLEST_STEP} {SPEED.shown(system)}"
        lines += paragraph(f"Sets less than {step} faster than the one above are left out.")
    return section(heading, lines)


def worth_printing(sets: Sequence[UpgradeSet], system: str) -> list[UpgradeSet]:
    """The first and the last, and in between those that a builder could tell apart."""
    kept: list[UpgradeSet] = []
    for one in sets:
        speed = SPEED.value(one.speed[MIDDLE], system)
        if not kept or speed >= SPEED.value(kept[-1].speed[MIDDLE], system) + SMALLEST_STEP:
            kept.append(one)
    return kept if not sets or kept[-1] is sets[-1] else [*kept, sets[-1]]


def _set_rows(one: UpgradeSet, ranking: Ranking) -> Iterator[tuple[str, ...]]:
    """A set, with its members on as many lines as they take."""
    first, *more = wrapped(one.name)
    speed = _speed(one.speed[MIDDLE], ranking.scenario_info.system)
    cost = f"{one.cost:.0f} {ranking.currency}".rstrip()
    yield cost, f"{one.hours:g}", speed, f"{one.least_margin:+.1f}", first
    for line in more:
        yield "", "", "", "", line


def wrapped(name: str) -> list[str]:
    """The name of a set on several lines; an upgrade stays beside its value."""
    bound = name.replace(" ", "\xa0").replace("\xa0+\xa0", " + ")
    lines = textwrap.wrap(bound, SET_WIDTH, break_long_words=False)
    return [line.replace("\xa0", " ") for line in lines] or [""]


def goal(ranking: Ranking) -> list[str]:
    """The cheapest way there, or what is missing."""
    info = ranking.scenario_info
    if info.goal_speed is None:
        return []
    reached = ranking.cheapest_to_goal
    if reached:
        return paragraph(
            f"Cheapest set that reaches it: {reached.name}, {reached.cost:.0f} {ranking.currency} "
            f"and {reached.hours:g} h, {SPEED.text(reached.speed[MIDDLE], info.system, 4)}."
        )
    return paragraph(missing(ranking))


def missing(ranking: Ranking) -> str:
    """What the fastest set lacks."""
    lacking, system = ranking.missing, ranking.scenario_info.system
    if lacking is None:
        return "No allowed set that passes no limit reaches it."
    ways = []
    if lacking.power is not None:
        ways.append(f"{KILOWATTS.text(lacking.power, system)} more at the flywheel")
    if lacking.drag_area is not None:
        ways.append(f"{AREA.text(lacking.drag_area, system, 2)} less drag area")
    needs = " or ".join(ways) or "more than three times its power or a fifth of its drag area"
    return f"No set that passes no limit reaches it; the fastest of them still needs {needs}."


def _speed(speed: float, system: str) -> str:
    return NONE if isnan(speed) else f"{SPEED.value(speed, system):.1f}"


def _gains(gains: tuple[float, ...], system: str) -> str:
    """Three gains, or one dash where there is none."""
    if all(isnan(gain) for gain in gains):
        return NONE
    return " ".join(NONE if isnan(gain) else SPEED.change(gain, system) for gain in gains)
