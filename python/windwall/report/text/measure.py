"""What to measure next, as people read it."""

from __future__ import annotations

from windwall.quantities.measures import SPEED
from windwall.report.text.common import pairs
from windwall.report.text.safety_notes import safety_notes
from windwall.report.text_layout import Blocks, Title, bullet, headline, paragraph, section, table
from windwall.report.wording.measure import effort, percent, teaches, worth_sentences
from windwall.report.wording.sets import sum_of_money
from windwall.results.measure import ToMeasure, Worth
from windwall.results.views import content

__all__ = [
    "ALONE", "ASKED", "BUDGET", "CAREFUL", "CHOOSING", "HEADER", "LEAD", "LEFT", "MUTE", "PERFECT",
    "PRACTICE", "REFUSED", "SPEED_OF", "STOPPED", "measure_text",
]  # fmt: skip

ASKED = "Asked: what to measure next{budget}."
BUDGET = ", with {budget} to spend"
SPEED_OF = "{speed} ± {sigma}, {vehicle}"
LEAD = "{ahead} ± {sigma} of the first of {count} sets that could be first over the second"
PERFECT = "with everything known, choosing would be worth {gain}"
HEADER = ("", "speed", "its lead", "choosing", "effort")
ALONE = ("", "speed", "effort")  # where there is nothing to choose
LEFT = "Speed{and_lead}: how much of the ± is left after it, over {draws} draws of the whole model."
CHOOSING = " Choosing: what picking the fastest set after it gains on picking it now, in {unit}."
PRACTICE = " Costs, hours and the ± of the gauges are common practice."
MUTE = "These teach nothing of it, or what is known already: {names}."
STOPPED = "Stopped after {draws} of {asked} draws; the ± of the gains says what that leaves open."
REFUSED = "{refused} of {draws} draws have no answer and are left out."
CAREFUL = "{title}: {care}."


@content.register(ToMeasure)
def measure_text(answer: ToMeasure) -> Blocks:
    """Everything worth reading about it."""
    budget = ""
    if answer.budget is not None:
        budget = BUDGET.format(budget=sum_of_money(answer.budget, answer.currency))
    lines = [Title(answer.title), *paragraph(ASKED.format(budget=budget), "")]
    lines += ["", *pairs(_what_is_in_doubt(answer))]
    lines += ["", *headline(answer.sentence)]
    telling = [one for one in answer.rows if teaches(one)]
    lines += section("What each would teach", _table(answer, telling))
    told = [line for one in worth_sentences(telling, answer) for line in bullet(one)]
    lines += section("In words", told)
    mute = ", ".join(one.id for one in answer.rows if not teaches(one))
    lines += ["", *paragraph(MUTE.format(names=mute))] if mute else []
    if answer.interrupted:
        lines += ["", *paragraph(STOPPED.format(draws=answer.draws, asked=answer.asked))]
    if answer.refused:
        lines += paragraph(REFUSED.format(refused=answer.refused, draws=answer.draws))
    return [*lines, *_care(telling), *safety_notes()]


def _what_is_in_doubt(answer: ToMeasure) -> list[tuple[str, str]]:
    system = answer.system
    sigma, speed = SPEED.number(answer.sigma, system, 2), SPEED.text(answer.speed, system, 4)
    rows = [("the speed", SPEED_OF.format(speed=speed, sigma=sigma, vehicle=answer.vehicle))]
    if answer.ahead is not None and answer.ahead_sigma is not None and answer.perfect is not None:
        first_two = LEAD.format(
            ahead=SPEED.text(answer.ahead, system, 2),
            sigma=SPEED.number(answer.ahead_sigma, system, 2),
            count=answer.could_be_first,
        )
        rows += [("the lead", first_two), ("first", answer.first), ("second", answer.second)]
        gain = SPEED.text(answer.perfect, system, 2)
        rows.append(("at most", PERFECT.format(gain=gain)))
    return rows


def _table(answer: ToMeasure, rows: list[Worth]) -> Blocks:
    if not rows:
        return []
    choice = answer.ahead is not None
    draws = answer.draws - answer.refused
    says = LEFT.format(and_lead=" and its lead" if choice else "", draws=draws)
    says += CHOOSING.format(unit=SPEED.shown(answer.system)) if choice else ""
    body = [_row(one, answer.system) for one in rows]
    lines = table(body, head=HEADER if choice else ALONE, left=(0, 4 if choice else 2))
    return lines + paragraph(says + PRACTICE)


def _row(one: Worth, system: str) -> tuple[str, ...]:
    speed, ahead = percent(one.by_curves.speed_left), one.by_curves.ahead_left
    if ahead is None:
        return one.id, speed, effort(one)
    gain = SPEED.change(one.by_curves.gain or 0.0, system, 2) if one.pays else ""
    return one.id, speed, percent(ahead), gain, effort(one)


def _care(rows: list[Worth]) -> Blocks:
    """What to mind while measuring, each thing once."""
    cares: dict[str, list[str]] = {}
    for one in rows:
        if one.care:
            cares.setdefault(one.care, []).append(one.id)
    said = (CAREFUL.format(title=", ".join(ids), care=care) for care, ids in cares.items())
    return section("While measuring", [line for one in said for line in bullet(one)])
