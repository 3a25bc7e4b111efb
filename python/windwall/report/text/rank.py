"""The answer to "which upgrade buys the most speed"."""

from __future__ import annotations

from collections.abc import Iterator

from windwall.errors import NoAnswer
from windwall.quantities.measures import SPEED
from windwall.report.text.common import driven_lines, head, pairs
from windwall.report.text.drawn import drawn_ranking_lines
from windwall.report.text.limits import limits_table
from windwall.report.text.observed import observed_lines
from windwall.report.text.rank_doubts import goal, opinions, verdict_lines
from windwall.report.text.rank_sets import best_table, new_limits, outside, target_table, unfinished
from windwall.report.text.rank_upgrades import partners_table, upgrades_table
from windwall.report.text.safety_notes import safety_notes
from windwall.report.text.stock_engine import stock_engine_lines
from windwall.report.text_layout import Blocks, bullet, paragraph, section
from windwall.report.wording.ranking import WHICH, meant
from windwall.report.wording.scenario import conditions, road_length
from windwall.report.wording.sets import budget, passed_over, set_text, spark, speed_number
from windwall.results.diagnosis import Diagnosis
from windwall.results.drawn import DrawnRanking
from windwall.results.ranking import MIDDLE, Ranking
from windwall.results.standing_start import Shortfall
from windwall.results.views import content

__all__ = [
    "BY_DRIVEN", "NOTHING", "READY", "menu", "no_answer", "question", "rank_text", "speed_meant",
    "start", "stopped",
]  # fmt: skip

BY_DRIVEN = (
    " All of this is ranked by the quick speed; by a driven run another upgrade or another set may "
    "come first: `windwall rank FILE --by driven_speed`."
)
READY = (
    '{"id": "fairing", "title": "Fairing", "cost": "130 EUR",',
    ' "scale": {"body/drag_area": 0.9}}',
)
NOTHING = [
    *paragraph(
        "There is nothing to rank: the file lists no upgrades. One that may go into it, with a "
        "cost and a factor of yours:"
    ),
    f'    "upgrades": [{READY[0]}',
    f"                 {READY[1]}]",
    *paragraph(
        'All that an upgrade may change: docs/scenario_files.md, "Upgrades"; windwall new asks for '
        "some."
    ),
]


@content.register(Ranking)
def rank_text(
    ranking: Ranking,
    diagnosis: Diagnosis | None = None,
    drawn: DrawnRanking | None = None,
    driven: Shortfall | NoAnswer | None = None,
) -> Blocks:
    """Everything worth reading about a ranking."""
    info = ranking.scenario_info
    lines = head(info, question(ranking))
    if not ranking.answered:
        return [*lines, *no_answer(ranking), *safety_notes()]
    lines += stock_engine_lines(info)
    lines += observed_lines(info, diagnosis, "car.diagnose(answer)")
    lines += stopped(ranking)
    lines += ["", *pairs(start(ranking)), *paragraph(meant(ranking))]
    lines += verdict_lines(ranking, diagnosis)
    cheaper = ranking.best_by_cost if ranking.complete else ()
    lines += paragraph(passed_over(ranking, cheaper))
    lines += limits_table(ranking.base.passed, info)
    lines += menu(ranking) if ranking.upgrades else section("The menu is empty", NOTHING)
    lines += section("The goal", goal(ranking, diagnosis)) if ranking.complete else []
    lines += opinions(ranking)
    lines += drawn_ranking_lines(drawn)
    lines += driven_lines(driven, BY_DRIVEN if ranking.upgrades else "")
    sentences = [ranking.sentence, *ranking.sentences]
    lines += section("How sure", [line for one in sentences if one for line in bullet(one)])
    return [*lines, *safety_notes()]


def menu(ranking: Ranking) -> Blocks:
    """Every upgrade and every set worth knowing."""
    return [
        *target_table(ranking),
        *(outside(ranking) if ranking.complete else []),
        *upgrades_table(ranking),
        *partners_table(ranking),
        *new_limits(ranking),
        *unfinished(ranking),
        *best_table("Best set for every budget", ranking.best_by_cost, ranking),
        *best_table("Best set for every number of hours", ranking.best_by_hours, ranking),
    ]


def no_answer(ranking: Ranking) -> Blocks:
    """Why there is nothing to rank against."""
    reasons = [one.reason for one in ranking.sets[:1] if not one.upgrades]
    lines = [line for one in [ranking.sentence, *reasons] for line in paragraph(one)]
    return section("No answer", lines)


def stopped(ranking: Ranking) -> Blocks:
    """That a ranking is not whole, before anything is read off it."""
    if ranking.complete:
        return []
    return section(
        "STOPPED EARLY", paragraph(f"{ranking.sentence} What follows is of those alone.")
    )


def question(ranking: Ranking) -> str:
    within = budget(ranking)
    limit = f"budget {within}" if within else "no budget"
    return (
        f"which upgrades buy the most speed, {speed_meant(ranking)}; "
        f"{conditions(ranking.scenario_info)}; {limit}."
    )


def speed_meant(ranking: Ranking) -> str:
    road = road_length(ranking.scenario_info)
    return f"reached {road} from rest" if road else "where full throttle stops accelerating"


def start(ranking: Ranking) -> Iterator[tuple[str, str]]:
    """Where the vehicle stands, how far the goal is, and where the recommended set takes it."""
    system = ranking.scenario_info.system
    base, best = ranking.base, ranking.target
    yield "as it is", f"{set_text(base, system)}{spark(base, system)}"
    goal = ranking.scenario_info.goal_speed
    if goal is not None:
        short = SPEED.value(goal - base.speed[MIDDLE], system)
        unit = SPEED.shown(system)
        verdict = f"{short:.1f} {unit} short as it is" if short > 0 else "reached as it is"
        yield "goal", f"{speed_number(goal, system)} {unit}: {verdict}"
    if best is not None and best.upgrades:
        yield WHICH["target"], f"{set_text(best, system)}{spark(best, system)}"
