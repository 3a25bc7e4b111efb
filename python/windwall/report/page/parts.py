"""The parts of a page, one after the other: a heading, what is said, and what is drawn."""

from __future__ import annotations

from collections.abc import Iterator
from functools import partial
from typing import NamedTuple

from windwall.report import plots
from windwall.report.page.findings import Findings
from windwall.report.page.inputs import input_blocks
from windwall.report.page.pictures import picture
from windwall.report.page.spoken import spoken
from windwall.report.page.steps import MOST, rest, steps
from windwall.report.plots.account import HEADING as WATTS
from windwall.report.plots.account import bars
from windwall.report.plots.ranking import lines
from windwall.report.text.common import caution_lines
from windwall.report.text.disagreement import is_far
from windwall.report.text.drawn import choices, drawn_ranking_lines
from windwall.report.text.knock import knock_lines
from windwall.report.text.limits import limits_table, unrated_lines
from windwall.report.text.observed import observed_lines
from windwall.report.text.rank_doubts import goal, verdict_lines
from windwall.report.text.rank_sets import best_table, target_table
from windwall.report.text.speed import faster_than_seen, gains, reasons
from windwall.report.text_layout import Blocks, Section, Title, bullet, paragraph
from windwall.report.wording.sets import budget
from windwall.results.ranking import Ranking

__all__ = [
    "SEEN", "WHICH", "WITHIN", "Part", "cautions", "inner", "knock", "known", "parts", "seen",
    "upgrades", "watts", "why",
]  # fmt: skip

WHICH = "Which upgrade"
WITHIN = "Which upgrade, for at most {budget}"
SEEN = "Held against what was observed"


class Part(NamedTuple):
    """A heading with what stands below it; `folded` is opened by whoever wants it."""

    heading: str
    blocks: Blocks
    drawn: tuple[str, ...] = ()  # pictures, as elements
    folded: tuple[tuple[str, Blocks], ...] = ()  # (what it is, blocks)
    look: str = ""  # a word for the style of the page
    above: Blocks = []  # noqa: RUF012  # never changed; what needs the whole width
    below: Blocks = []  # noqa: RUF012  # never changed; what the pictures leave out


def parts(findings: Findings) -> Iterator[Part]:
    """Everything below the answer."""
    best = findings.best
    if not best.answered:
        yield Part("No answer", paragraph(best.sentence) + spoken(inner(caution_lines(best))))
        return
    if is_far(findings.diagnosis):  # a fold would hide it, and paper has none
        yield Part(SEEN, seen(findings))
    yield why(findings)
    yield watts(findings)
    if findings.ranking is not None:
        yield upgrades(findings)
    yield knock(findings)
    yield cautions(findings)
    yield known(findings)


def why(findings: Findings) -> Part:
    """What binds, where the lines cross, and what a little of anything is worth."""
    drawn = picture("force", partial(plots.force_against_speed, findings.scenario), 2.3)
    first, _, *rest = reasons(findings.best)  # the sentence between them stands above
    worth = gains(findings.best)
    said = [*(Title(one.heading) for one in worth), *inner(worth)]
    return Part("Why it stops there", said, (drawn,), above=[first, *spoken(rest)])


def watts(findings: Findings) -> Part:
    """Both accounts, and the charge on its way."""
    best = findings.best
    height = 0.85 + 0.137 * bars(best)
    drawn = (
        picture("accounts", partial(plots.accounts, best), height, WATTS),
        picture("stations", partial(plots.stations, best), height),
    )
    return Part(WATTS, [], drawn)


def upgrades(findings: Findings) -> Part:
    """What to buy, and how sure that is."""
    ranking, drawn = findings.ranking, findings.drawn_ranking
    said = inner(target_table(ranking))
    if drawn is not None:
        said += [line for one in choices(drawn) for line in paragraph(one)]
    else:
        said += verdict_lines(ranking, findings.diagnosis)
    said += steps(ranking)
    height = max(1.3 + 0.135 * lines(ranking, MOST), 2.4)
    pictures = (
        picture("gains", partial(plots.gains, ranking, drawn, most=MOST), height),
        picture("money", partial(plots.best_by_cost, ranking, table=False), height),
    )
    folded = [("Best set for every budget", inner(best_table("", ranking.best_by_cost, ranking)))]
    if ranking.scenario_info.goal_speed is not None:
        folded.append(("What the goal hangs on", spoken(goal(ranking, findings.diagnosis))))
    if drawn is not None:
        folded.append(("How sure each gain and each set is", drawn_ranking_lines(drawn)[:-1]))
    return Part(_which(ranking), said, pictures, tuple(folded), below=rest(ranking))


def _which(ranking: Ranking) -> str:
    """With what may be spent, if that is stated."""
    within = budget(ranking)
    return WITHIN.format(budget=within) if within else WHICH


def knock(findings: Findings) -> Part:
    """As a band, never as safe."""
    best = findings.best
    said = inner(knock_lines(best))
    if best.knock is None:
        return Part("Knock and spark", said)
    drawn = picture("knock", partial(plots.knock_over_engine_speed, findings.scenario), 2.35)
    return Part("Knock and spark", said, (drawn,))


def cautions(findings: Findings) -> Part:
    """What to know before it is believed or driven."""
    best = findings.best
    said = inner(caution_lines(best)) + inner(limits_table(best.passed, best.scenario_info))
    said += inner(unrated_lines(best.unrated)) + inner(faster_than_seen(best, findings.diagnosis))
    return Part("Cautions", spoken(said) or bullet("None that the model has."))


def known(findings: Findings) -> Part:
    """The inputs by what their doubt is worth, and the model beside what was seen."""
    first, every = input_blocks(findings)
    folded = [("All inputs that are not known exactly", every)] if every else []
    if findings.diagnosis is not None and not is_far(findings.diagnosis):
        folded.insert(0, (SEEN, seen(findings)))
    return Part("How well the inputs are known", first, (), tuple(folded), "inputs")


def seen(findings: Findings) -> Blocks:
    """The model beside what was observed, and what would explain a difference."""
    return spoken(inner(observed_lines(findings.best.scenario_info, findings.diagnosis)))


def inner(blocks: Blocks) -> Blocks:
    """What stands below the headings of some sections."""
    return [each for one in blocks for each in (one.blocks if isinstance(one, Section) else [one])]
