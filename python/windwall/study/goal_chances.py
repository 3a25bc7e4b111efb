"""What a ranking is held against: the diagnosis, and how many such vehicles reach the goal."""

from __future__ import annotations

from windwall.results.diagnosis import Diagnosis, Reached
from windwall.results.gearing import Longer
from windwall.results.ranking import Ranking
from windwall.scenario.data import ScenarioData
from windwall.study.challenge import challenge
from windwall.study.draws import FEWEST
from windwall.study.gearing import longer_gearing
from windwall.study.speed_draws import draw_speed

__all__ = ["goal_chances", "judge"]


def judge(scenario: ScenarioData, ranking: Ranking) -> Diagnosis:
    """What was observed beside the model, what its explanations make of the first gains and of the
    judged sets, how many vehicles described like this one reach the goal with those, and which
    gearing would where the rev limit is in the way.
    """
    reached = goal_chances(scenario, ranking) if ranking.answered else ()
    longer = _longer(scenario, ranking) if ranking.answered else None
    return challenge(scenario, ranking)._replace(reached=reached, longer=longer)


def _longer(scenario: ScenarioData, ranking: Ranking) -> Longer | None:
    """The gearing with which the fastest set reaches the goal, where nothing else is missing."""
    lacking = ranking.missing
    if lacking is None or not ranking.complete or any(one is not None for one in lacking.values()):
        return None
    goal = ranking.scenario_info.goal_speed or 0.0
    return longer_gearing(scenario.install(ranking.fastest), goal)


def goal_chances(scenario: ScenarioData, ranking: Ranking, threads: int = 0) -> tuple[Reached, ...]:
    """Of every judged set, in the same worlds; none without a goal of speed."""
    if ranking.scenario_info.goal_speed is None or not ranking.complete:
        return ()
    found = []
    for key, one in ranking.judged.items():
        drawn = draw_speed(scenario.install(one), FEWEST, progress=False, threads=threads)
        chance, middle = drawn.chance_of_goal, drawn.middle
        if chance is not None and middle is not None:
            found.append(Reached(key, chance, drawn.asked, middle))
    return tuple(found)
