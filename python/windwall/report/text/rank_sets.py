"""Sets of upgrades: the recommended one, the best for every price, those that are refused."""

from __future__ import annotations

import math
import textwrap
from collections.abc import Sequence

from windwall.quantities.measures import BOOST, SPEED, TEMPERATURE
from windwall.report.text.limits import bound_text
from windwall.report.text.rank_upgrades import mixture, spark_late
from windwall.report.text_layout import Blocks, bullet, paragraph, section, table
from windwall.report.wording.knock import octane, of_a_hundred
from windwall.report.wording.sets import (
    at_the_end,
    cost,
    ending_early,
    speed_number,
    sum_of_money,
    target,
)
from windwall.report.wording.sets import outside as why_outside
from windwall.report.wording.top_speed import ends_at_rev_limit
from windwall.results.knock import KnockBand
from windwall.results.ranking import MIDDLE, Ranking, UpgradeSet
from windwall.results.values import Values

__all__ = [
    "AT_REV_LIMIT", "CHOSEN", "DRY", "ENDS", "HELD_BACK", "MOST_REFUSED", "SET_WIDTH",
    "SMALLEST_STEP", "TITLE_WIDTH", "best_note", "best_table", "has_spray", "new_limits", "outside",
    "target_table", "unfinished", "worth_printing", "wrapped",
]  # fmt: skip

SMALLEST_STEP = 0.5  # in the unit of speed shown, between two sets that are both printed
SET_WIDTH = 24
TITLE_WIDTH = 46
AT_REV_LIMIT = "r"
HELD_BACK = "t"
CHOSEN = ("late", "mix")
ENDS = ("boost", "head", "outlet")
DRY = "Dry: what is left of it where the pull ends, the moment the jet is blocked."
MOST_REFUSED = 5  # sets of which the reason is printed


def target_table(ranking: Ranking) -> Blocks:
    """What is in the recommended set, one line each, and why it is this one."""
    best = ranking.target
    rows = [_member(key, best, ranking) for key in best.upgrades] if best else []
    if len(rows) > 1:
        rows.append(("in all", "", cost(best, ranking), f"{best.hours:g} h"))
    lines = table(rows, left=(0, 1)) + paragraph(target(ranking))
    if best and (end := ranking.end_of(best)):
        lines += paragraph(at_the_end(end, ranking.scenario_info))
    return section("The recommended set", lines)


def _member(key: str, best: UpgradeSet, ranking: Ranking) -> tuple[str, ...]:
    terms = ranking.menu[key]
    title = textwrap.shorten(terms.title, TITLE_WIDTH, placeholder="...")
    price = "-" if terms.cost is None else sum_of_money(terms.cost, ranking.currency)
    return best.label(key), title, price, "-" if terms.hours is None else f"{terms.hours:g} h"


def outside(ranking: Ranking) -> Blocks:
    """Why an upgrade is not in the set."""
    lines = [
        line
        for key, worth in ranking.upgrades.items()
        if worth.outside != "none"
        for line in bullet(f"{key}: {why_outside(ranking, worth)}")
    ]
    return section("Not in the set", lines)


def new_limits(ranking: Ranking) -> Blocks:
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


def unfinished(ranking: Ranking) -> Blocks:
    """The sets whose pull ends without an answer, each smallest one with its reason."""
    smallest = ranking.smallest_cut_short
    if not smallest:
        return []
    lines = paragraph(ending_early(ranking))
    for one in smallest[:MOST_REFUSED]:
        lines += bullet(f"{one.name}: {one.reason}")
    if len(smallest) > MOST_REFUSED:
        lines += paragraph(f"And {len(smallest) - MOST_REFUSED} more.")
    return section("Pulls that end without an answer", lines)


def best_table(heading: str, sets: Sequence[UpgradeSet], ranking: Ranking) -> Blocks:
    """The sets that no cheaper or quicker one beats."""
    system = ranking.scenario_info.system
    printed = worth_printing(sets, system)
    sprays = any(has_spray(ranking.end_of(one)) for one in printed)
    header = (
        "",
        "hours",
        SPEED.shown(system),
        "margin",
        *(["dry"] if sprays else []),
        *CHOSEN,
        *ENDS,
        "set",
    )
    rows = [_set_row(one, ranking, sprays) for one in printed]
    lines = table(rows, head=header, left=(len(header) - 1,))
    if lines:
        lines += paragraph(best_note(ranking, printed, len(printed) < len(sets)))
    return section(heading, lines)


def best_note(ranking: Ranking, printed: Sequence[UpgradeSet], shortened: bool) -> str:
    """What the columns are, how safe the least margin is, and that not every step is shown."""
    system = ranking.scenario_info.system
    note = "Margin: octane numbers to spare of knock, where they are least on the way up"
    least = min((one.least_margin for one in printed), default=math.inf)
    sigma = ranking.scenario_info.knock_sigma
    if math.isfinite(least):
        chance = of_a_hundred(KnockBand(least, sigma).chance)
        note += (
            f"; at {least:+z.1f}, known to +/- {sigma:.1f}, about {chance} of 100 engines "
            "described like this would knock"
        )
    note += "."
    if any(has_spray(ranking.end_of(one)) for one in printed):
        note += f" {DRY}"
    note += (
        f" Boost in {BOOST.shown(system)}, head and blower's outlet in {TEMPERATURE.shown(system)} "
        "are those where the pull ends."
    )
    note += (
        " Late and mix: spark and lambda there, as the model chose them to hold the margin: not "
        "set so, the speed and the margin are others."
    )
    if any(one.opening < 1 for one in printed):
        note += f" {HELD_BACK}: with the throttle held back too."
    if any(map(ends_at_rev_limit, printed)):
        note += f" {AT_REV_LIMIT}: ends at the rev limit, where what adds thrust adds no speed."
    if shortened:
        step = f"{SMALLEST_STEP} {SPEED.shown(system)}"
        note += f" Sets less than {step} faster than the one above are left out."
    return note


def has_spray(end: Values | None) -> bool:
    return end is not None and end.water_per_fuel is not None


def worth_printing(sets: Sequence[UpgradeSet], system: str) -> list[UpgradeSet]:
    """The first and the last, and in between those that a builder could tell apart."""
    kept: list[UpgradeSet] = []
    for one in sets:
        speed = SPEED.value(one.speed[MIDDLE], system)
        if not kept or speed >= SPEED.value(kept[-1].speed[MIDDLE], system) + SMALLEST_STEP:
            kept.append(one)
    return kept if not sets or kept[-1] is sets[-1] else [*kept, sets[-1]]


def _set_row(one: UpgradeSet, ranking: Ranking, sprays: bool) -> tuple[str, ...]:
    """A set, with its members on as many lines as they take."""
    speed = speed_number(one.speed[MIDDLE], ranking.scenario_info.system)
    speed += AT_REV_LIMIT if ends_at_rev_limit(one) else ""
    end = ranking.end_of(one)
    dry = ["-" if end is None else octane(end.margin_without_spray)] if sprays else []
    told = _ends(end, ranking.scenario_info.system)
    held = (f"{one.least_margin:+z.1f}", *dry, *_chosen(one, ranking.scenario_info.system))
    row = (cost(one, ranking), f"{one.hours:g}", speed, *held, *told)
    return *row, wrapped(one.name)


def _chosen(one: UpgradeSet, system: str) -> tuple[str, str]:
    """Spark and mixture where the pull ends, marked where the throttle is held back too."""
    late, _, held = spark_late(one, system).partition(" at ")
    return late + (HELD_BACK if held else ""), mixture(one)


def _ends(end: Values | None, system: str) -> tuple[str, ...]:
    """Boost, head and blower's outlet where the pull ends."""
    if end is None:
        return ("-",) * len(ENDS)
    hot = (end.head_temperature, end.blower_outlet_temperature)
    return (
        f"{BOOST.value(end.boost, system):.0f}",
        *("-" if one is None else f"{TEMPERATURE.value(one, system):.0f}" for one in hot),
    )


def wrapped(name: str) -> str:
    """The name of a set on several lines; an upgrade stays beside its value."""
    bound = name.replace(" ", "\xa0").replace("\xa0+\xa0", " + ")
    lines = textwrap.wrap(bound, SET_WIDTH, break_long_words=False)
    return "\n".join(lines).replace("\xa0", " ")
