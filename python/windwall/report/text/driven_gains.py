"""Every upgrade by a driven run."""

from __future__ import annotations

from windwall.quantities.measures import LENGTH
from windwall.report.text_layout import Bars, Blocks, Title, paragraph, section, table
from windwall.results.driven_gains import DrivenGain, DrivenGains
from windwall.results.views import content

__all__ = ["HEADER", "HIGHEST", "NOTE", "OVER", "TO", "driven_gains_text", "what"]

TO = "time from standstill to {mark}, in {unit}"
OVER = "speed at the end of {road} from standstill, in {unit}"
HEADER = ("", "without", "with", "change")
HIGHEST = "speed where it gets no faster, in {unit}"
NOTE = (
    "Each upgrade is fitted alone, with what it requires, and held against that; a choice takes "
    "the value of the highest quick speed. Sets are ranked by that speed: rank()."
)


@content.register(DrivenGains)
def driven_gains_text(answer: DrivenGains) -> Blocks:
    """What each is worth, the best first."""
    unit = answer.of_merit.shown(answer.system)
    changes = [one.change for one in answer.gains]
    bars = Bars(HEADER[3], tuple(None if one is None else (one, one, one) for one in changes))
    rows = (_row(one, answer) for one in answer.gains)
    lines = [Title(answer.title), *paragraph(f"Driven: {what(answer).format(unit=unit)}.", "")]
    stock = "no answer" if answer.stock is None else _number(answer, answer.stock)
    lines += ["", *paragraph(f"As it is: {stock} {unit}.")]
    lines += section("Every upgrade alone", table(rows, head=HEADER, bars=bars))
    reasons = [f"{one.id}: {one.refusal}" for one in answer.gains if one.refusal]
    lines += section("Without an answer", [line for one in reasons for line in paragraph(one)])
    return [*lines, "", *paragraph(NOTE)]


def what(answer: DrivenGains) -> str:
    """What is read off a run."""
    if answer.mark is not None:
        mark = answer.mark.measure.short(answer.mark.value, answer.system, 6)
        return TO.replace("{mark}", mark)
    if answer.run_up is None:
        return HIGHEST
    return OVER.replace("{road}", LENGTH.short(answer.run_up, answer.system))


def _number(answer: DrivenGains, value: float | None) -> str:
    return "-" if value is None else answer.of_merit.number(value, answer.system, 4)


def _row(one: DrivenGain, answer: DrivenGains) -> tuple[str, str, str, str]:
    change = one.change
    shown = "-" if change is None else answer.of_merit.change(change, answer.system, 2)
    return one.id, _number(answer, one.before), _number(answer, one.fitted), shown
