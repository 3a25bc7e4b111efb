"""Every upgrade of a menu: in every light, and with a partner."""

from __future__ import annotations

from math import isnan

from windwall.quantities.measures import ANGLE, SHARE, SPEED
from windwall.report.text_layout import Bars, Blocks, paragraph, section, table
from windwall.report.wording.ranking import GAINS, MARKS, OPENED_TO, gains_heading, late_gains
from windwall.report.wording.sets import sum_of_money
from windwall.report.wording.top_speed import ends_at_rev_limit
from windwall.results.ranking import MIDDLE, Ranking, UpgradeGain, UpgradeSet
from windwall.results.values import Values

__all__ = [
    "ALONE", "AT_REV_LIMIT", "CHOICES", "CUT_SHORT", "LATE", "NONE", "SMALLEST_GAIN", "loses",
    "mixture", "other_choices", "partners_table", "spark_late", "too_dear", "upgrades_table",
]  # fmt: skip

NONE = "-"
CUT_SHORT = "!"
ALONE = "alone, over the anchors"
LATE = 4  # column
CHOICES = "An open choice takes at each anchor what is fastest there."
AT_REV_LIMIT = (
    "The recommended set ends at the rev limit, where less drag or mass adds nothing: the engine "
    "turns no faster, and under less weight the driven tyres slip more."
)
SMALLEST_GAIN = 0.05  # in the unit of speed shown; a smaller one is printed as 0.0


def upgrades_table(ranking: Ranking) -> Blocks:
    """Every upgrade in every light."""
    system = ranking.scenario_info.system
    unit = SPEED.shown(system)
    header = ("", "alone", "last", "fair share", "late", "mix", "cost", f"per {unit}")
    rows = [_upgrade_row(one, ranking) for one in ranking.within_budget.values()]
    lines = table(rows, head=header, bars=_bars(ranking))
    marks = MARKS if any(CUT_SHORT in cell for row in rows for cell in row[1:]) else ""
    held = OPENED_TO if any(" at " in row[LATE] for row in rows) else ""
    base, told = spark_late(ranking.base, system), SPEED.short(ranking.smallest_lead, system, 2)
    lines += paragraph(GAINS.format(unit=unit, base=base, held=held, told=told, marks=marks))
    lines += paragraph(other_choices(ranking)) + paragraph(loses(ranking))
    lines += paragraph(late_gains(ranking)) + paragraph(too_dear(ranking))
    return section(gains_heading(ranking), lines)


def _bars(ranking: Ranking) -> Bars:
    """Each gain alone at the anchor as stated, with its range over the anchors."""
    gains = [one.alone for one in ranking.within_budget.values()]
    return Bars(ALONE, tuple(map(_over_anchors, gains)))


def _over_anchors(gain: tuple[float, ...]) -> tuple[float, float, float] | None:
    known = [one for one in gain if not isnan(one)]
    return None if isnan(gain[MIDDLE]) else (min(known), gain[MIDDLE], max(known))


def loses(ranking: Ranking) -> str:
    """Why taking something off the recommended set may make it faster."""
    best = ranking.target
    gains = [gain for one in ranking.within_budget.values() for gain in one.last]
    lost = any(SPEED.value(gain, _system(ranking)) <= -SMALLEST_GAIN for gain in gains)
    return AT_REV_LIMIT if lost and best and ends_at_rev_limit(best) else ""


def too_dear(ranking: Ranking) -> str:
    """The upgrades that no row is about."""
    names = [key for key in ranking.upgrades if key not in ranking.within_budget]
    return f"Beyond the budget, with what they require: {', '.join(names)}." if names else ""


def _upgrade_row(worth: UpgradeGain, ranking: Ranking) -> tuple[str, ...]:
    first = ranking.alone_with(worth.id)
    alone = _gains(worth.alone, ranking, ranking.cut_short_alone(worth.id))
    views = [_gains(view, ranking) for view in (worth.last, worth.share)]
    if first is None:
        return worth.label, alone, *views, NONE, NONE, NONE, NONE
    spark = (spark_late(first, _system(ranking)), mixture(first))
    return worth.label, alone, *views, *spark, *_price(worth, first, ranking)


def other_choices(ranking: Ranking) -> str:
    """The values taken in the recommended set, where they are others than alone."""
    best = ranking.target
    inside = [best.label(one) for one in best.upgrades] if best else []
    alone = {one.label for one in ranking.upgrades.values()}
    others = [one for one in inside if one not in alone]
    said = f"Last and fair share are with {', '.join(others)}. " if others else ""
    open_choices = any(one.chosen for one in ranking.upgrades.values())
    return said + (CHOICES if open_choices else "")


def _price(worth: UpgradeGain, first: UpgradeSet, ranking: Ranking) -> tuple[str, str]:
    """What it costs with what it requires, and that over what they add together."""
    if all(ranking.menu[one].cost is None for one in first.upgrades):
        return NONE, NONE
    gain = SPEED.value(first.speed[MIDDLE] - ranking.base.speed[MIDDLE], _system(ranking))
    priced = gain >= SMALLEST_GAIN and not ranking.cut_short_alone(worth.id)[MIDDLE]
    each = sum_of_money(first.cost / gain, ranking.currency) if priced else NONE
    return sum_of_money(first.cost, ranking.currency), each


def spark_late(one: UpgradeSet, system: str) -> str:
    """Degrees late, and the throttle where it is held back too."""
    if not one.answered or one.retard is None:
        return NONE
    late = f"{ANGLE.value(one.retard, system):.0f}"
    held = f" at {SHARE.text(one.opening, system, 2)}"
    return late + (held if one.opening < 1 else "")


def mixture(one: UpgradeSet) -> str:
    """Lambda where its pull ends."""
    return f"{one['lambda']:.2f}" if one.answered and one["lambda"] else NONE


def partners_table(ranking: Ranking) -> Blocks:
    """Every upgrade beside those that make the most and the least of it."""
    system = _system(ranking)
    header = ("", "alone", "helped most by", "hindered most by", "best pair")
    rows = [
        (
            worth.id,
            SPEED.change(worth.alone[MIDDLE], system)
            + (CUT_SHORT if ranking.cut_short_alone(worth.id)[MIDDLE] else ""),
            _beside(worth, worth.most_helped, ranking),
            _beside(worth, worth.most_hindered, ranking),
            _together(worth, ranking),
        )
        for worth in ranking.within_budget.values()
    ]
    if all(row[2:] == (NONE,) * 3 for row in rows):
        return []
    lines = table(rows, head=header, left=(0, 2, 3, 4))
    lines += paragraph(
        f"{SPEED.shown(system)} at the knock anchor as stated, from the sets that are solved; none "
        "of these pairs passes a limit or ends without an answer, and of those that gain the same "
        "the cheapest is named. Helped and hindered: what the upgrade adds where that other one is "
        "fitted, which is more or less than alone. Best pair: what the two add together to the "
        "vehicle as it is, with what they require."
    )
    return section("Every upgrade with a partner", lines)


def _beside(worth: UpgradeGain, partner: Values | None, ranking: Ranking) -> str:
    system = _system(ranking)
    if not partner or abs(SPEED.value(partner.interaction[MIDDLE], system)) < SMALLEST_GAIN:
        return NONE
    return f"{SPEED.change(partner.beside[MIDDLE], system)} {_named(worth, partner, ranking)}"


def _together(worth: UpgradeGain, ranking: Ranking) -> str:
    pair = worth.best_pair
    if not pair:
        return NONE
    gain = SPEED.change(pair.together[MIDDLE], _system(ranking))
    return f"{gain} {_named(worth, pair, ranking)}"


def _named(worth: UpgradeGain, partner: Values, ranking: Ranking) -> str:
    """The other one, and every value that was chosen for the two and what they require."""
    pair = ranking.set_at(partner.pair)
    own = [one.sentence for one in pair.chosen if one.upgrade == worth.id]
    others = {one.upgrade for one in pair.chosen} - {worth.id, partner.id}
    return ", ".join([pair.label(partner.id), *own, *map(pair.label, sorted(others))])


def _gains(gains: tuple[float, ...], ranking: Ranking, cut: tuple[bool, ...] = ()) -> str:
    """A gain at each anchor, or one dash where there is none; marked where answers end."""
    if all(isnan(gain) for gain in gains):
        return NONE
    marks = [CUT_SHORT if one else "" for one in cut or (False,) * len(gains)]
    return " ".join(
        (NONE if isnan(gain) else SPEED.change(gain, _system(ranking))) + mark
        for gain, mark in zip(gains, marks, strict=True)
    )


def _system(ranking: Ranking) -> str:
    return ranking.scenario_info.system
