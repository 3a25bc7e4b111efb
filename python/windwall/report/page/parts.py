"""The parts of a page, one after the other: a heading, what is said, and what is drawn."""

from __future__ import annotations

from collections.abc import Iterator
from functools import partial
from typing import NamedTuple

from windwall.report import plots
from windwall.report.page.findings import Findings
from windwall.report.page.inputs import input_blocks
from windwall.report.page.pictures import picture, whole
from windwall.report.text.common import caution_lines, pairs
from windwall.report.text.drawn import choices, drawn_ranking_lines, drawn_speed_lines
from windwall.report.text.knock import knock_lines
from windwall.report.text.limits import limits_table, unrated_lines
from windwall.report.text.observed import observed_lines
from windwall.report.text.rank_doubts import goal, verdict_lines
from windwall.report.text.rank_sets import best_table, target_table
from windwall.report.text.speed import faster_than_seen, gains, reasons, speeds
from windwall.report.text_layout import Blocks, Section, bullet, paragraph

__all__ = [
    "Part", "answer", "cautions", "inner", "knock", "known", "parts", "upgrades", "watts", "why",
]  # fmt: skip


class Part(NamedTuple):
    """A heading with what stands below it; `folded` is opened by whoever wants it."""

    heading: str
    blocks: Blocks
    drawn: tuple[str, ...] = ()  # pictures, as elements
    folded: tuple[tuple[str, Blocks], ...] = ()  # (what it is, blocks)
    half: bool = False  # may stand beside the next one on paper


def parts(findings: Findings) -> Iterator[Part]:
    """Everything below the answer."""
    best = findings.best
    if not best.answered:
        yield Part("No answer", paragraph(best.sentence) + inner(caution_lines(best)))
        return
    yield why(findings)
    yield Part(gains(best)[0].heading, inner(gains(best)), half=True)
    yield watts(findings)
    if findings.ranking is not None:
        yield upgrades(findings)
    yield knock(findings)
    yield cautions(findings)
    yield known(findings)


def answer(findings: Findings) -> Blocks:
    """The speeds, and between which they lie."""
    return [*pairs(speeds(findings.best)), *drawn_speed_lines(findings.drawn)]


def why(findings: Findings) -> Part:
    """What binds, and where the lines cross."""
    drawn = picture("force", partial(plots.force_against_speed, findings.scenario), 2.85)
    first, _, *rest = reasons(findings.best)  # the sentence between them leads the page
    return Part("Why it stops there", [first, *rest], (drawn,), half=True)


def watts(findings: Findings) -> Part:
    """Both accounts, and the charge on its way."""
    best = findings.best
    drawn = (
        picture("accounts", partial(plots.accounts, best), 4.0),
        picture("stations", partial(plots.stations, best), 4.0),
    )
    return Part("Where the watts go", [], drawn)


def upgrades(findings: Findings) -> Part:
    """What to buy, and how sure that is."""
    ranking, drawn = findings.ranking, findings.drawn_ranking
    said = inner(target_table(ranking))
    if drawn is not None:
        said += [line for one in choices(drawn) for line in paragraph(one)]
    else:
        said += verdict_lines(ranking, findings.diagnosis)
    pictures = (
        picture("gains", partial(plots.gains, ranking, drawn), 1.5 + 0.3 * len(ranking.upgrades)),
        whole("money", plots.best_by_cost(ranking, room=2.6)),
    )
    folded = [("Best set for every budget", inner(best_table("", ranking.best_by_cost, ranking)))]
    if ranking.scenario_info.goal_speed is not None:
        folded.append(("What the goal hangs on", goal(ranking, findings.diagnosis)))
    if drawn is not None:
        folded.append(("How sure each gain and each set is", drawn_ranking_lines(drawn)[:-1]))
    return Part("Which upgrade", said, pictures, tuple(folded))


def knock(findings: Findings) -> Part:
    """As a band, never as safe."""
    best = findings.best
    said = inner(knock_lines(best))
    if best.knock is None:
        return Part("Knock and spark", said)
    drawn = picture("knock", partial(plots.knock_over_engine_speed, findings.scenario), 2.85)
    return Part("Knock and spark", said, (drawn,))


def cautions(findings: Findings) -> Part:
    """What to know before it is believed or driven."""
    best = findings.best
    said = inner(caution_lines(best)) + inner(limits_table(best.passed, best.scenario_info))
    said += inner(unrated_lines(best.unrated)) + inner(faster_than_seen(best))
    return Part("Cautions", said or bullet("None that the model has."))


def known(findings: Findings) -> Part:
    """The inputs by what their doubt is worth, and the model beside what was seen."""
    first, every = input_blocks(findings)
    folded = [("All inputs that are not known exactly", every)] if every else []
    seen = observed_lines(findings.best.scenario_info, findings.diagnosis)
    if findings.diagnosis is not None and seen:
        folded.insert(0, ("Held against what was observed", inner(seen)))
    return Part("How well the inputs are known", first, (), tuple(folded))


def inner(blocks: Blocks) -> Blocks:
    """What stands below the headings of some sections."""
    return [each for one in blocks for each in (one.blocks if isinstance(one, Section) else [one])]
