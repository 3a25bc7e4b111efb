"""How many vehicles described like one reach its goal with the sets that a ranking judges."""

from __future__ import annotations

from windwall.results.diagnosis import Reached
from windwall.results.ranking import Ranking
from windwall.scenario.data import ScenarioData
from windwall.study.draws import FEWEST
from windwall.study.speed_draws import draw_speed


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
