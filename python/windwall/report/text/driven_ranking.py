"""Sets of upgrades by a run that is driven."""

from __future__ import annotations

from collections.abc import Iterable

from windwall.report.text.rank_sets import wrapped
from windwall.report.text_layout import Blocks, Title, bullet, paragraph, section, table
from windwall.report.wording.driven_ranking import as_it_is, what
from windwall.results.driven_ranking import DrivenRanking, DrivenSet
from windwall.results.views import content

__all__ = ["MOST_LINES", "driven_ranking_text"]

MOST_LINES = 10  # of the best, whatever they cost


@content.register(DrivenRanking)
def driven_ranking_text(answer: DrivenRanking) -> Blocks:
    """Everything worth reading about it."""
    asked = f"Asked: sets of upgrades by the {what(answer)}, driven."
    lines = [Title(answer.title), *paragraph(asked, "")]
    lines += ["", *paragraph(f"As it is: {as_it_is(answer)}.")]
    lines += section("What it comes to", [x for one in answer.sentences for x in bullet(one)])
    lines += section("Best for every price", _table(answer, answer.best_for_price))
    holding = [one for one in answer.runs if one.holds]
    lines += section("Best of all", _table(answer, holding[:MOST_LINES]))
    reasons = [f"{one.fitted.name}: {one.refusal}" for one in answer.runs if one.refusal]
    refused = [line for one in reasons[:MOST_LINES] for line in paragraph(one)]
    return lines + section("Without an answer", refused)


def _table(answer: DrivenRanking, runs: Iterable[DrivenSet]) -> Blocks:
    head = (answer.currency or "cost", answer.of_merit.shown(answer.system), "gain", "")
    rows = ((*_numbers(answer, one), wrapped(one.fitted.name)) for one in runs)
    return table(rows, left=(3,), head=head)


def _numbers(answer: DrivenRanking, one: DrivenSet) -> tuple[str, str, str]:
    gain = answer.gain(one)
    measure, system = answer.of_merit, answer.system
    number = "-" if one.merit is None else measure.number(one.merit, system, 4)
    change = "-" if gain is None else measure.change(gain, system, 2)
    return f"{one.fitted.cost:.0f}", number, change
