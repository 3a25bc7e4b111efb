"""What a page tells, asked before anything of it is written."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property

from windwall.quantities.uncertain_input import UncertainInput
from windwall.results.diagnosis import Diagnosis
from windwall.results.drawn import DrawnRanking, DrawnSpeed
from windwall.results.ranking import Ranking
from windwall.results.top_speed import TopSpeed
from windwall.scenario.data import ScenarioData
from windwall.scenario.inputs import uncertain_inputs
from windwall.study.default_sensitivity import sensitivity
from windwall.study.diagnosis import diagnose
from windwall.study.progress import Progress
from windwall.study.rank import money, rank
from windwall.study.rank_draws import draw_ranking
from windwall.study.solve import top_speed
from windwall.study.speed_draws import draw_speed

__all__ = ["Findings"]


@dataclass(frozen=True)
class Findings:
    """The answers about one scenario, each found once and when it is first wanted."""

    scenario: ScenarioData
    draws: int = 0  # of the ranking; none is made at 0
    progress: bool | Progress | None = None
    budget: float | str | None = None  # for the ranking, as `rank` takes it

    def __post_init__(self) -> None:
        money(self.scenario, self.budget)  # a wrong one is said before the long part

    @cached_property
    def best(self) -> TopSpeed:
        return top_speed(self.scenario)

    @cached_property
    def drawn(self) -> DrawnSpeed | None:
        if not self.best.answered:
            return None
        return draw_speed(self.scenario, progress=False)

    @cached_property
    def diagnosis(self) -> Diagnosis | None:
        seen = self.best.answered and self.scenario.observed
        return diagnose(self.scenario) if seen else None

    @cached_property
    def ranking(self) -> Ranking | None:
        if not self.best.answered or not self.scenario.upgrades:
            return None
        found = rank(self.scenario, self.budget, progress=self.progress)
        return found if found.answered and found.complete else None

    @cached_property
    def drawn_ranking(self) -> DrawnRanking | None:
        if not self.draws or self.ranking is None:
            return None
        return draw_ranking(self.scenario, self.ranking, self.draws, progress=self.progress)

    @cached_property
    def weighed(self) -> list[tuple[UncertainInput, float | None]]:
        """Every input that is not known exactly, with what that is worth in speed, m/s: what counts
        most first.
        """
        every = uncertain_inputs(self.scenario)
        here = self.best.goal_speed if self.best.answered else None
        found = [(one, sensitivity(self.scenario, one, here)) for one in every]
        return sorted(found, key=lambda one: -(one[1] or 0.0))
