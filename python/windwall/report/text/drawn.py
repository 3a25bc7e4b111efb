"""How sure an answer is, over common draws."""

from __future__ import annotations

from collections.abc import Iterator

from windwall.quantities.measures import SPEED
from windwall.report.text_layout import Bars, Blocks, Title, bullet, paragraph, section, table
from windwall.report.wording.chance import of_hundred, of_ten
from windwall.report.wording.top_speed import to_a_tenth
from windwall.results.drawn import (
    AtTheEnd,
    Beats,
    DrawnGain,
    DrawnRanking,
    DrawnSet,
    DrawnSpeed,
    Spread,
)
from windwall.results.ranking import set_name
from windwall.results.views import content

__all__ = [
    "ALONE", "BEATS", "CHOICE", "EDGES", "ENDS", "FASTER", "GAINS", "GOAL", "HALF", "HOW",
    "INTERVAL", "LEFT_ASIDE", "MIDDLE", "MOST_ONE_SIDED", "MOST_SETS", "NINE_OF_TEN", "NONE",
    "NOTE_GAINS", "NOTE_SETS", "ONE_SIDED", "ON_ITS_OWN", "OVER_BUDGET", "STOPPED", "THE_NEXT",
    "UNSOLVED", "WIDEST", "WORTH_A_CHANCE", "WORTH_A_WORD", "behind_the_interval", "choices",
    "drawn_ranking_lines", "drawn_ranking_text", "drawn_speed_lines", "drawn_speed_text",
    "interval",
]  # fmt: skip

NONE = "-"
MIDDLE = (
    "Half of them are faster than {middle}, against {stated} as stated: what is stated is not the "
    "middle of what the file leaves open.{edges}"
)
EDGES = (
    " {number} of its inputs stand at the end of their range and can be wrong one way only; all "
    "in their middles make {change} {unit}, and most of it:"
)
MOST_ONE_SIDED = 3
MOST_SETS = 12
WIDEST = 100  # of a line with the name of a set
WORTH_A_CHANCE = 0.01
WORTH_A_WORD = 0.5 / 3.6  # m/s
ENDS = ("middle", "stated")
INTERVAL = "{low} to {high} in 9 of 10 vehicles described like this{goal}."
HALF = ", half faster than {middle}"
LEFT_ASIDE = (
    "They go by what the file says of its inputs; what was observed narrows that once it is "
    "learned (`windwall learn`)."
)
ONE_SIDED = "{address}: {middle} instead of {stated} makes {change} {unit}"
UNSOLVED = "{number} of {asked} vehicles {how}; nothing above counts them."
HOW = {
    "answered": "",
    "ends_without_answer": "pull to where the model has no answer, with thrust to spare",
    "no_answer": "have no answer",
    "not_installable": "cannot have the set fitted",
    "broken_rule": "break a rule of the file",
    "not_reached": "were not reached",
}
GAINS = ("", "alone", "last", "fair share", "helps")
ALONE = "alone, +/- one standard deviation"
NINE_OF_TEN = "9 of 10, and the mean"
NOTE_GAINS = (
    "{unit}: mean and one standard deviation over {worlds} worlds, each a vehicle, a day and a "
    "menu with a value for all that is uncertain, the same for every set. Helps: alone it adds "
    "anything at all. Means differ from the gains above, which are of the vehicle as stated."
)
NOTE_SETS = (
    "Of {could} sets within reach of the fastest {whole} were drawn to the end, beside those that "
    "are named. Behind: the fastest of them in each world less this one, in the mean. Chances of "
    "sets that a sentence below names are of more worlds, {more} as far as they were solved."
)
BEATS = "{first} gains more alone than {second} in {chance} worlds."
FASTER = "The fastest is faster than {second} in {chance} worlds."
THE_NEXT = "the next, {name},"
GOAL = "The goal is reached in {chance} worlds {what}."
CHOICE = (
    "To choose, over all worlds: {name}, {cost}. It is the cheapest set whose mean is not further "
    "behind the fastest ({fastest}) than can be told on the road, {apart}. Who knew the vehicle "
    "exactly would gain {regret} {unit} more in the mean by choosing for it."
)
OVER_BUDGET = "By the ± of what is bought it costs more than the budget in {chance} worlds."
ON_ITS_OWN = "The ranking over {worlds} worlds"
STOPPED = "STOPPED EARLY: {worlds} of {asked} worlds are solved; all of this is of those alone."


@content.register(DrawnSpeed)
def drawn_speed_text(drawn: DrawnSpeed) -> Blocks:
    """On its own."""
    return [Title(drawn.title), *drawn_speed_lines(drawn)]


def drawn_speed_lines(drawn: DrawnSpeed | None) -> Blocks:
    """The interval, and why its middle is not the answer itself."""
    if drawn is None or drawn.spread is None:
        return []
    said = [interval(drawn), *([LEFT_ASIDE] if drawn.observed else [])]
    return paragraph(" ".join(said)) + behind_the_interval(drawn)


def interval(drawn: DrawnSpeed | None, half: bool = False) -> str:
    """Between which speeds it lies, with the one that `half` are faster than where that is another,
    and how many such vehicles reach the goal.
    """
    if drawn is None or drawn.spread is None:
        return ""
    spread, system = drawn.spread, drawn.system
    low, high = (f"{SPEED.value(x, system):.0f}" for x in (spread.low, spread.high))
    goal = _half(drawn) if half else ""
    if drawn.goal_speed is not None:
        chance = of_hundred(drawn.chance_of_goal or 0.0, spread.worlds)
        goal += f"; the goal is reached by {chance}"
    return INTERVAL.format(low=low, high=f"{high} {SPEED.shown(system)}", goal=goal)


def behind_the_interval(drawn: DrawnSpeed) -> Blocks:
    """Why its middle is not the answer itself, and what it leaves out."""
    return _middle(drawn) + _unsolved(drawn.ends, drawn.asked)


def _middle(drawn: DrawnSpeed) -> Blocks:
    if not _apart(drawn):
        return []
    system, unit = drawn.system, SPEED.shown(drawn.system)
    middle, stated = (_shown_speed(one, system) for one in (drawn.middle, drawn.stated))
    edges = EDGES if drawn.one_sided else ""
    edges = edges.format(
        number=len(drawn.one_sided), change=SPEED.change(drawn.all_moved, system), unit=unit
    )
    lines = paragraph(MIDDLE.format(middle=middle, stated=stated, edges=edges))
    return lines + [line for one in drawn.one_sided[:MOST_ONE_SIDED] for line in _edge(one, drawn)]


def _half(drawn: DrawnSpeed) -> str:
    if drawn.middle is None or not _apart(drawn):
        return ""
    return HALF.format(middle=f"{SPEED.value(drawn.middle, drawn.system):.1f}")


def _apart(drawn: DrawnSpeed) -> bool:
    """Whether half of them are faster than another speed than the stated one."""
    if drawn.middle is None or drawn.stated is None:
        return False
    return abs(drawn.middle - drawn.stated) >= WORTH_A_WORD


def _shown_speed(speed: float | None, system: str) -> str:
    return "" if speed is None else to_a_tenth(speed, system)


def _edge(one: AtTheEnd, drawn: DrawnSpeed) -> Blocks:
    words = {key: one.measure.short(getattr(one, key), drawn.system, 3) for key in ENDS}
    change, unit = SPEED.change(one.change, drawn.system), SPEED.shown(drawn.system)
    return bullet(ONE_SIDED.format(address=one.address, change=change, unit=unit, **words))


def _unsolved(ends: dict[str, int], asked: int) -> Blocks:
    return [
        line
        for how, number in ends.items()
        if HOW[how]
        for line in paragraph(UNSOLVED.format(number=number, asked=asked, how=HOW[how]))
    ]


@content.register(DrawnRanking)
def drawn_ranking_text(drawn: DrawnRanking) -> Blocks:
    """On its own."""
    return [Title(ON_ITS_OWN.format(worlds=drawn.worlds)), *drawn_ranking_lines(drawn)]


def drawn_ranking_lines(drawn: DrawnRanking | None) -> Blocks:
    """Gains with their +/-, sets with their chance, and which to choose."""
    if drawn is None:
        return []
    unit = SPEED.shown(drawn.system)
    bars = Bars(ALONE, tuple(_give_or_take(one.alone) for one in drawn.gains))
    gains = table((_gain(x, drawn) for x in drawn.gains), head=GAINS, bars=bars)
    note = paragraph(NOTE_GAINS.format(unit=unit, worlds=drawn.worlds))
    stopped = STOPPED.format(worlds=drawn.worlds, asked=drawn.asked) if drawn.interrupted else ""
    return [
        *section("How sure is each gain", [*paragraph(stopped), *gains, *note]),
        *section("How sure is each set", _sets(drawn)),
        *section("Which to choose", [line for one in choices(drawn) for line in paragraph(one)]),
    ]


def _gain(one: DrawnGain, drawn: DrawnRanking) -> tuple[str, ...]:
    helps = NONE if one.helps is None else of_ten(one.helps, drawn.worlds)
    spreads = (_change(each, drawn.system) for each in (one.alone, one.last, one.share))
    return one.id, *spreads, helps


def _change(one: Spread | None, system: str) -> str:
    if one is None:
        return NONE
    return f"{SPEED.change(one.mean, system)} +/- {SPEED.value(one.sigma, system):.1f}"


def _sets(drawn: DrawnRanking) -> Blocks:
    unit, shown = SPEED.shown(drawn.system), _shown(drawn)
    head = (f"{unit} in 9 of 10", "goal in", "behind", "cost", "set")
    rows = [_set(one, drawn) for one in shown]
    more = max(one.counted for one in drawn.sets)
    note = NOTE_SETS.format(could=drawn.could_win, whole=drawn.drawn_whole, more=more)
    bars = Bars(NINE_OF_TEN, tuple(_interval(one.speed) for one in shown), start=None)
    return table(rows, left=(4,), head=head, widest=WIDEST, bars=bars) + paragraph(note)


def _interval(one: Spread | None) -> tuple[float, float, float] | None:
    return None if one is None else (one.low, one.mean, one.high)


def _give_or_take(one: Spread | None) -> tuple[float, float, float] | None:
    return None if one is None else (one.mean - one.sigma, one.mean, one.mean + one.sigma)


def _shown(drawn: DrawnRanking) -> list[DrawnSet]:
    """The base, the recommended and the fastest set, and the next in the mean."""
    wanted = [(), drawn.recommended, drawn.fastest]
    named = [drawn.set_of(one) for one in wanted if one is not None]
    others = [one for one in drawn.sets if one not in named]
    first = list(dict.fromkeys(one for one in named if one is not None))
    return first + others[: MOST_SETS - len(first)]


def _set(one: DrawnSet, drawn: DrawnRanking) -> tuple[str, ...]:
    system = drawn.system
    if one.speed is None:
        return NONE, NONE, NONE, _cost(one, drawn), set_name(one.upgrades)
    between = " to ".join(f"{SPEED.value(x, system):.1f}" for x in (one.speed.low, one.speed.high))
    goal = NONE if one.reaches_goal is None else of_ten(one.reaches_goal, one.counted)
    behind = NONE if one.behind is None else f"{SPEED.value(one.behind.mean, system):.1f}"
    return between, goal, behind, _cost(one, drawn), set_name(one.upgrades)


def _cost(one: DrawnSet, drawn: DrawnRanking) -> str:
    doubt = f" +/- {one.cost_sigma:.0f}" if round(one.cost_sigma) else ""
    return f"{one.cost:.0f}{doubt} {drawn.currency}".strip()


def choices(drawn: DrawnRanking) -> Iterator[str]:
    """What a builder decides by."""
    if drawn.by_gain:
        yield _beats(BEATS, drawn.by_gain)
    base, best = drawn.set_of(()), drawn.set_of(drawn.recommended or ())
    if drawn.goal_speed is not None and base and base.speed:
        yield GOAL.format(chance=of_hundred(base.reaches_goal, base.counted), what="as it is")
    if best is not None and best.upgrades and best.speed:
        yield from _recommended(best, drawn)
        yield from _over_budget(best, drawn.worlds)
    if drawn.by_speed:
        chance = of_hundred(drawn.by_speed.chance, drawn.by_speed.worlds)
        yield FASTER.format(second=_other(drawn), chance=chance)
    total = sum(drawn.ends.values())
    for how, number in drawn.ends.items():
        if HOW[how]:
            yield f"{number} of {total} solutions {HOW[how]}: they count in no mean and no chance."


def _recommended(best: DrawnSet, drawn: DrawnRanking) -> Iterator[str]:
    unit = SPEED.shown(drawn.system)
    if drawn.goal_speed is not None:
        chance = of_hundred(best.reaches_goal, best.counted)
        yield GOAL.format(chance=chance, what=f"with {set_name(best.upgrades)}")
    yield CHOICE.format(
        name=set_name(best.upgrades),
        cost=_cost(best, drawn),
        fastest=set_name(drawn.fastest or ()),
        apart=SPEED.short(drawn.told_apart, drawn.system, 2),
        regret=f"{SPEED.value(drawn.regret or 0.0, drawn.system):.1f}",
        unit=unit,
    )


def _over_budget(best: DrawnSet, worlds: int) -> Iterator[str]:
    if best.within_budget is None or 1 - best.within_budget < WORTH_A_CHANCE:
        return
    yield OVER_BUDGET.format(chance=of_ten(1 - best.within_budget, worlds))


def _other(drawn: DrawnRanking) -> str:
    """The set that the fastest is held against."""
    if drawn.recommended != drawn.fastest:
        return "it"
    return THE_NEXT.format(name=drawn.by_speed.second if drawn.by_speed else "")


def _beats(words: str, beats: Beats) -> str:
    chance = of_hundred(beats.chance, beats.worlds)
    return words.format(first=beats.first, second=beats.second, chance=chance)
