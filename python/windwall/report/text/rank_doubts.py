"""What hangs on what: the goal under every assumption, and both opinions on knock."""

from __future__ import annotations

from collections.abc import Iterator
from math import isnan
from typing import NamedTuple

from windwall.quantities.measures import AREA, KILOWATTS, SHARE, SPEED
from windwall.report.text_layout import Blocks, paragraph, section, table
from windwall.report.wording.knock import apart
from windwall.report.wording.ranking import WHICH, capped_at, cheapest_way, reach_it, verdict
from windwall.report.wording.sets import cost, speed_number
from windwall.results.diagnosis import Diagnosis
from windwall.results.knock import beyond_bands
from windwall.results.ranking import MIDDLE, Ranking, UpgradeSet

__all__ = [
    "DELAY", "LITTLE_LEFT", "LONGER", "LONGER_AT_LEAST", "NEITHER", "NONE", "NOT_EVEN_LONGER",
    "OPINIONS", "REV_LIMITED", "SMALLEST", "Assumption", "apart_by_much", "assumptions", "goal",
    "hangs_on_the_rule", "meets", "missing", "opinions", "verdict_lines",
]  # fmt: skip

NONE = "-"
OPINIONS = ("", "by the rule", "by the delay", "")
DELAY = "the ignition delay of the end gas, not the rule"
REV_LIMITED = (
    "No set that passes no limit reaches it: the fastest of them is capped by the rev limit, at "
    "{cap}, where neither power nor less drag adds speed."
)
LONGER = "Longer gearing reaches it: {address} of {value} instead of {now}, {speed}."
NOT_EVEN_LONGER = "No longer gearing reaches it either, for want of thrust."
LONGER_AT_LEAST = "It needs a gearing that is at least {share} longer, and the thrust to pull it."
NEITHER = (
    "stays below it even with three times its power, and even with a fifth of its drag area: where "
    "the gearing or the tyres end it, neither helps"
)
LITTLE_LEFT = 0.5  # of a gain: what leaves less of it, or adds as much, is what it hangs on
SMALLEST = 0.5  # km/h, of a gain that can hang on anything


class Assumption(NamedTuple):
    """Something that may be so, and the speeds of the judged sets then, m/s."""

    name: str
    speeds: dict[str, float | None]


def assumptions(ranking: Ranking, diagnosis: Diagnosis | None) -> Iterator[Assumption]:
    """The knock anchor elsewhere, the other model of knock, and every explanation of a fact that
    contradicts the model.
    """
    sets, system = ranking.judged, ranking.scenario_info.system
    for anchor, octane in enumerate(ranking.knock_anchors):
        if octane != ranking.knock_anchors[MIDDLE]:
            speeds = {key: one.speed[anchor] for key, one in sets.items()}
            yield Assumption(f"a knock anchor of {octane:.4g}", speeds)
    said = {key: ranking.opinion(one) for key, one in sets.items()}
    if apart_by_much(ranking) and all(said.values()):
        yield Assumption(DELAY, {key: one.speed for key, one in said.items()})
    for explained in diagnosis.explained if diagnosis else ():
        for one in (each for each in explained.inputs if not each.is_misread):
            value = one.input.measure.short(one.value, system, 3)
            yield Assumption(f"{one.input.address} of {value}", one.speeds)


def verdict_lines(ranking: Ranking, diagnosis: Diagnosis | None) -> Blocks:
    """Of each set that may be gone by: whether it meets the goal, and what that hangs on."""
    goal = ranking.scenario_info.goal_speed
    if goal is None or not ranking.complete:
        return []
    lines = []
    for key, one in ranking.judged.items():
        met = one.speed[MIDDLE] >= goal
        flips = [
            each.name
            for each in assumptions(ranking, diagnosis)
            if meets(each.speeds.get(key), goal) is (not met)
        ]
        said = verdict(ranking, one, key, met, flips)
        counted = [each for each in (diagnosis.reached if diagnosis else ()) if each.which == key]
        lines += paragraph(" ".join([said, *(reach_it(each, ranking) for each in counted)]))
    return lines


def meets(speed: float | None, goal: float) -> bool | None:
    """None where there is no speed."""
    return None if speed is None or isnan(speed) else speed >= goal


def goal(ranking: Ranking, diagnosis: Diagnosis | None) -> Blocks:
    """The cheapest way there or what is missing, and both sets under every assumption."""
    aim, sets = ranking.scenario_info.goal_speed, ranking.judged
    if aim is None:
        return []
    lines = paragraph(cheapest_way(ranking) or missing(ranking, diagnosis))
    if not sets:
        return lines
    system = ranking.scenario_info.system
    stated = Assumption("as stated", {key: one.speed[MIDDLE] for key, one in sets.items()})
    header = ("with", *(f"{WHICH[key]}, {cost(one, ranking)}" for key, one in sets.items()))
    rows = [
        (each.name, *(_judged(each.speeds.get(key), aim, system) for key in sets))
        for each in [stated, *assumptions(ranking, diagnosis)]
    ]
    return lines + (table(rows, head=header) if len(rows) > 1 else [])


def _judged(speed: float | None, aim: float, system: str) -> str:
    met = meets(speed, aim)
    if met is None:
        return NONE
    return f"{speed_number(speed, system)} {'met' if met else 'missed'}"


def missing(ranking: Ranking, diagnosis: Diagnosis | None) -> str:
    """What the fastest set lacks; at the rev limit that is neither power nor less drag."""
    lacking, system = ranking.missing, ranking.scenario_info.system
    if lacking is None:
        return "No allowed set that passes no limit reaches it."
    if (cap := capped_at(ranking)) is not None:
        said = REV_LIMITED.format(cap=SPEED.text(cap, system, 4))
        return f"{said} {_gearing(cap, ranking, diagnosis)}"
    ways = []
    if lacking.power is not None:
        ways.append(f"{KILOWATTS.text(lacking.power, system)} more at the flywheel")
    if lacking.drag_area is not None:
        ways.append(f"{AREA.text(lacking.drag_area, system, 2)} less drag area")
    needs = f"still needs {' or '.join(ways)}" if ways else NEITHER
    return f"No set that passes no limit reaches it; the fastest of them {needs}."


def _gearing(cap: float, ranking: Ranking, diagnosis: Diagnosis | None) -> str:
    """The gearing that would take a set there that the rev limit keeps from it."""
    longer, info = diagnosis.longer if diagnosis else None, ranking.scenario_info
    if longer is None:
        share = (info.goal_speed or 0.0) / cap - 1
        return LONGER_AT_LEAST.format(share=SHARE.text(share, info.system, 2))
    if longer.value is None:
        return NOT_EVEN_LONGER
    value, now = (longer.measure.short(one, info.system, 4) for one in (longer.value, longer.now))
    reaches = SPEED.text(longer.speed or 0.0, info.system, 4)
    return LONGER.format(address=longer.address, value=value, now=now, speed=reaches)


def apart_by_much(ranking: Ranking) -> bool:
    """Whether the two models of knock are further apart than their bands, as the vehicle is."""
    said = ranking.opinion(ranking.base)
    return said is not None and beyond_bands(said.above_the_rule, ranking.scenario_info.knock_sigma)


def opinions(ranking: Ranking) -> Blocks:
    """How far the second model of knock is from the one that all is ranked by, and what it makes
    of the first gains and of the sets that are named.
    """
    said = ranking.opinion(ranking.base)
    if said is None:
        return []
    lines = paragraph(apart(said.above_the_rule, ranking.scenario_info.knock_sigma))
    if apart_by_much(ranking):
        lines += table(_both(ranking), left=(0, 3), head=OPINIONS)
    return section("Two opinions on knock", lines)


def _both(ranking: Ranking) -> Iterator[tuple[str, ...]]:
    system = ranking.scenario_info.system

    def speeds(one: UpgradeSet) -> tuple[float, float]:
        said = ranking.opinion(one)
        return one.speed[MIDDLE], said.speed if said else float("nan")

    def shown(speed: float) -> str:
        return NONE if isnan(speed) else speed_number(speed, system)

    yield "as it is", *map(shown, speeds(ranking.base)), ""
    for worth in ranking.leaders:
        with_it, before = ranking.alone_with(worth.id), ranking.required_by(worth.id)
        rule, delay = (a - b for a, b in zip(speeds(with_it), speeds(before), strict=True))
        yield worth.label, *_gains(rule, delay, system), hangs_on_the_rule(rule, delay, system)
    for key, one in ranking.judged.items():
        yield WHICH[key], *map(shown, speeds(one)), ""


def _gains(rule: float, delay: float, system: str) -> tuple[str, str]:
    return tuple(NONE if isnan(one) else SPEED.change(one, system) for one in (rule, delay))


def hangs_on_the_rule(rule: float, delay: float, system: str) -> str:
    """Whether the other model leaves less than half of a gain, or adds half of it."""
    large = SPEED.value(rule, system) >= SMALLEST
    return "hangs on the rule" if large and abs(delay - rule) > LITTLE_LEFT * rule else ""
