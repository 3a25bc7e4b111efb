"""Questions of a scenario that take seconds: what is believed of it, what fits, what is missing."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from typing import TYPE_CHECKING, Any, Self

from windwall import study
from windwall.scenario.data import ScenarioData

if TYPE_CHECKING:
    from windwall.results.default_sensitivity import DefaultSensitivity
    from windwall.results.diagnosis import Diagnosis
    from windwall.results.faults import FaultsThatFit
    from windwall.results.flyweights import Flyweights
    from windwall.results.leans_on import LeansOn
    from windwall.results.measure import ToMeasure
    from windwall.results.posterior import Posterior
    from windwall.results.ranking import Ranking
    from windwall.study.calibrate_walkers import Walk
    from windwall.study.leans_on import Between
    from windwall.study.progress import Progress

__all__ = ["LongQuestions"]


class LongQuestions(ScenarioData):
    """What may be asked of a scenario and takes many solves. The examples know `car` and `ww` as
    those of `windwall.Scenario` do.
    """

    __slots__ = ()

    def flyweights(
        self, shift_speed: Any, shift_end_speed: Any = None, engagement_speed: Any = None
    ) -> Flyweights:
        """Weights and spring of the belt drive that hold the engine at these speeds, `"4200 rpm"`,
        at full throttle: where it begins to shift, where it has shifted, and where it grips.

        >>> small = ww.load("scenarios/village_microcar.json")
        >>> small.flyweights("4200 rpm")
        Traceback (most recent call last):
        windwall.errors.ScenarioError: driveline: no belt drive here states its flyweights
        """
        return study.flyweights.flyweights(self, shift_speed, shift_end_speed, engagement_speed)

    def diagnose(self, ranking: Ranking | None = None) -> Diagnosis:
        """The same, with what would explain each fact that contradicts the model, and what that
        would make of the first gains of a ranking, and how many such vehicles reach the goal with
        the sets that it judges: `ranking.summary(car.diagnose(ranking))`.

        >>> car.diagnose().compared[0].key
        'speed'
        """
        if ranking is None:
            return study.diagnosis.diagnose(self)
        return study.goal_chances.judge(self, ranking)

    def what_to_measure(self, budget: str | float | None = None, **how: Any) -> ToMeasure:
        """What to measure next: what each gauge would teach of the speed and of which set to buy.
        Further arguments: `also` (gauges of one's own), `draws`, `progress`, `threads`.

        >>> small = ww.load("scenarios/village_microcar.json")
        >>> small.what_to_measure(progress=False).rows[0].id
        'speed'
        """
        return study.measure.measure(self, budget, **how)

    def faults(
        self,
        facts: Iterable[dict[str, Any]] | None = None,
        before: Iterable[dict[str, Any]] = (),
    ) -> FaultsThatFit:
        """Which single fault fits what was read: `facts`, or what the file has under `observed`;
        `before`, what the same gauges read when nothing was wrong.

        >>> car.faults().alternatives[0].title
        'no fault needed'
        """
        return study.faults.faults(self, facts, before)

    def calibrate(
        self,
        facts: Iterable[Mapping[str, Any]] | None = None,
        *,
        progress: bool | Progress | None = None,
        walkers: Walk | None = None,
        threads: int = 0,
    ) -> Posterior:
        """What is believed of the vehicle once it was seen: by what the file has observed, or by
        facts of logs. Some thousands of quick solves; `walkers=Walk()` draws the full posterior
        with emcee, at ten times that. Raises `NoAnswer` where nothing can be learned from.

        >>> posterior = car.calibrate(progress=False)
        >>> before, after = posterior.before.inner, posterior.after.inner
        >>> after[1] - after[0] < before[1] - before[0]
        True
        """
        return study.calibrate.calibrate(self, facts, progress, walkers=walkers, threads=threads)

    def learned(self, posterior: Posterior) -> Self:
        """The scenario as it is believed afterwards: values moved, their ± tightened, and a note of
        what it was learned from.

        >>> known = car.learned(car.calibrate(progress=False))
        >>> known.get("body/mass") > 0, known == car
        (True, False)
        """
        return study.learned.learned(self, posterior)

    def default_sensitivities(self) -> list[DefaultSensitivity]:
        """What each value that was not stated is worth in speed, by solving again for each.

        >>> small = ww.load("scenarios/village_microcar.json")
        >>> small.default_sensitivities()[0].input.address
        'engine/breathing/fall_off'
        """
        return study.default_sensitivity.default_sensitivities(self)

    def leans_on(self, between: Between = None, **terms: Any) -> LeansOn:
        """What the speed leans on, and what the difference of two sets of upgrades does: two lists
        of ids, or a ranking for its two best. `rows` (512, a power of two) buys smaller errors;
        `progress`, `seed`, `threads`, `executor`, `journal`. Ctrl-C keeps what is done.

        >>> small = ww.load("scenarios/village_microcar.json")
        >>> small.leans_on(rows=16, progress=False).leanings[0].of
        'speed'
        """
        return study.leans_on.leans_on(self, between, **terms)
