"""What to measure next, and what that is worth."""

from __future__ import annotations

from collections.abc import Sequence

from windwall.quantities.measures import SPEED, TIME
from windwall.report.wording.sets import sum_of_money
from windwall.results.measure import MeasurePlan, ToMeasure, Worth
from windwall.results.views import sentence

__all__ = [
    "AND_LEAD", "CHOOSING", "COST", "MONEY", "NEXT_FOR_CHOICE", "NEXT_FOR_SPEED", "NOTHING",
    "NO_CHOICE", "NO_CHOICE_HANGS", "OF_SPEED", "OTHERS", "OTHERS_NO_CHOICE", "TELLS",
    "choosing", "effort", "errors", "measure_cost", "measure_sentence", "money", "percent",
    "teaches", "worth_sentence", "worth_sentences",
]  # fmt: skip

COST = (
    "{speeds} top speeds of {draws} draws are to be solved, about {time}; Ctrl-C keeps what is "
    "done."
)
NEXT_FOR_CHOICE = "Next, {title}: nothing else on the list tells as much of which set to buy."
NEXT_FOR_SPEED = "Next, {title}: nothing else on the list narrows the speed as much{no_choice}."
NO_CHOICE_HANGS = "; which set to buy hangs on none of them"
NOTHING = "Nothing on the list teaches anything of it."
OF_SPEED = "it leaves {speed} of the ± of the speed"
AND_LEAD = " and {ahead} of that of the lead"
CHOOSING = (
    "; choosing after it is worth {gain} ± {error} {unit}{money}, by straight lines {by_lines}"
)
NO_CHOICE = "; choosing after it is worth nothing that {draws} draws can tell"
OTHERS_NO_CHOICE = (
    "Choosing after any of the others is worth nothing that {draws} draws can tell; what each "
    "leaves stands in the table: {names}."
)
OTHERS = "What each of the others leaves stands in the table: {names}."
MONEY = ", for which upgrades ask {sum}"
TELLS = 0.005  # of a ±, less than which nobody would see


@sentence.register(MeasurePlan)
def measure_cost(plan: MeasurePlan) -> str:
    """What it will take."""
    seconds = TIME.short(max(plan.seconds, 1.0), "metric", 2)
    return COST.format(speeds=plan.speeds, draws=plan.draws, time=seconds)


@sentence.register(ToMeasure)
def measure_sentence(answer: ToMeasure) -> str:
    """What to do next."""
    first = next(iter(answer.rows), None)
    if first is None or not teaches(first):
        return NOTHING
    if first.pays:
        return NEXT_FOR_CHOICE.format(title=first.title)
    no_choice = NO_CHOICE_HANGS if answer.ahead is not None else ""
    return NEXT_FOR_SPEED.format(title=first.title, no_choice=no_choice)


def teaches(one: Worth) -> bool:
    """Whether it tells anything that somebody would see."""
    ahead = one.by_curves.ahead_left
    return min(one.by_curves.speed_left, 1.0 if ahead is None else ahead) < 1 - TELLS


def worth_sentences(rows: Sequence[Worth], answer: ToMeasure) -> list[str]:
    """What readings are worth: in full those that pay and the one to do next, then the others."""
    full = [one for one in rows if one.pays or one is rows[0]]
    rest = [one for one in rows if one not in full]
    if len(rest) < 2:
        return [worth_sentence(one, answer) for one in rows]
    names = ", ".join(f"{one.id} ({one.title}, {errors(one, answer.system)})" for one in rest)
    template = OTHERS if answer.ahead is None else OTHERS_NO_CHOICE
    others = template.format(draws=answer.draws - answer.refused, names=names)
    return [*(worth_sentence(one, answer) for one in full), others]


def worth_sentence(one: Worth, answer: ToMeasure) -> str:
    """What one reading is worth."""
    says = [f"{one.title} ({errors(one, answer.system)}; {effort(one)}): "]
    says.append(OF_SPEED.format(speed=percent(one.by_curves.speed_left)))
    if one.by_curves.ahead_left is not None:
        says.append(AND_LEAD.format(ahead=percent(one.by_curves.ahead_left)))
        says.append(choosing(one, answer))
    made = "".join(says)
    return made[0].upper() + made[1:] + "."


def choosing(one: Worth, answer: ToMeasure) -> str:
    """What choosing after it is worth, in speed and in money."""
    unit = SPEED.shown(answer.system)
    gain, error, by_lines = (
        SPEED.number(each or 0.0, answer.system, 2)
        for each in (one.by_curves.gain, one.by_curves.error, one.by_lines.gain)
    )
    if not one.pays:
        draws = answer.draws - answer.refused
        return NO_CHOICE.format(draws=draws)
    said = {"gain": gain, "error": error, "unit": unit, "by_lines": by_lines}
    return CHOOSING.format(**said, money=money(one, answer))


def money(one: Worth, answer: ToMeasure) -> str:
    """What the gain would cost in upgrades."""
    sum_of_it = answer.money(one.by_curves.gain)
    if sum_of_it is None:
        return ""
    return MONEY.format(sum=sum_of_money(sum_of_it, answer.currency))


def errors(one: Worth, system: str) -> str:
    """The sensor's ± of each number."""
    both = zip(one.measures, one.sigmas, strict=True)
    return ", ".join(f"± {measure.spread.short(sigma, system, 2)}" for measure, sigma in both)


def effort(one: Worth) -> str:
    """Money and time."""
    return f"{one.cost:g} EUR, {one.hours:g} h" if one.cost else f"{one.hours:g} h"


def percent(share: float) -> str:
    return f"{100 * share:.0f} %"
