"""Which single input, moved within its +/-, would bring the model onto what was observed."""

from __future__ import annotations

from functools import lru_cache

from windwall.quantities.uncertain_input import UncertainInput
from windwall.results.diagnosis import (
    FAR_OFF,
    Compared,
    Diagnosis,
    Explained,
    Explanation,
    Fact,
)
from windwall.results.outcome import Outcome
from windwall.scenario.data import ScenarioData
from windwall.scenario.inputs import moved, uncertain_inputs
from windwall.study.compare import ask, compare

FARTHEST = 2.0  # standard deviations that an input may be moved
NAMED = 3
HOPEFUL = 4.0  # by a straight line, which is not believed beyond choosing candidates
REFINED = 6  # candidates that are solved to the end
STEPS = 20
CLOSE = 0.05  # of the standard deviations that separate model and observation


class Moved:
    """Answers of a scenario with one input moved, each solved once whatever it is read for."""

    def __init__(self, scenario: ScenarioData) -> None:
        self.scenario = scenario
        self._answers: dict[tuple, Outcome | None] = {}

    def gap(self, fact: Fact, one: UncertainInput, deviations: float) -> float | None:
        """Model less observation with an input that far off; None beyond its range."""
        asked = (fact.situation, one.address, deviations)
        if asked not in self._answers:
            self._answers[asked] = ask(fact, moved(self.scenario, one, deviations))
        model = fact.model(self._answers[asked])
        return None if model is None else fact.above(model)


@lru_cache(maxsize=16)
def diagnose(scenario: ScenarioData) -> Diagnosis:
    """Holds the model against what was observed, and explains what is far off."""
    compared = compare(scenario)
    far = [one for one in compared if one.far]
    candidates = uncertain_inputs(scenario) if far else []
    answers = Moved(scenario)
    explained = (Explained(one, explanations(answers, one, candidates)) for one in far)
    return Diagnosis(compared, tuple(explained))


def explanations(
    answers: Moved, compared: Compared, candidates: list[UncertainInput]
) -> list[Explanation]:
    """The inputs that have to be moved least, each found by solving again and again."""
    here = compared.fact.above(compared.model)
    hopeful = ((estimate(answers, compared.fact, one, here), one) for one in candidates)
    nearest = sorted(
        (found for found in hopeful if found[0] is not None and abs(found[0]) <= HOPEFUL),
        key=lambda found: abs(found[0]),
    )
    close = CLOSE * abs(here / (compared.off or FAR_OFF))
    found = [
        Explanation(one, met)
        for guess, one in nearest[:REFINED]
        if (met := meet(answers, compared.fact, one, here, guess, close)) is not None
    ]
    return sorted(found, key=lambda explanation: abs(explanation.deviations))[:NAMED]


def estimate(answers: Moved, fact: Fact, one: UncertainInput, here: float) -> float | None:
    """Deviations by a straight line through one step. It only says where to look."""
    for step in (1.0, -1.0):
        there = answers.gap(fact, one, step)
        if there is not None:
            return step * here / (here - there) if there != here else None
    return None


def meet(
    answers: Moved, fact: Fact, one: UncertainInput, here: float, guess: float, close: float
) -> float | None:
    """Where the model meets the observation within reach; None where it does not."""
    near, near_gap, far = 0.0, here, FARTHEST if guess > 0 else -FARTHEST
    far_gap = answers.gap(fact, one, far)
    if far_gap is None or far_gap * here > 0:
        return None
    for step in range(STEPS):
        # False position, and halving now and then where that is slow.
        share = near_gap / (near_gap - far_gap) if step % 3 < 2 else 0.5
        middle = near + share * (far - near)
        there = answers.gap(fact, one, middle)
        if there is None or abs(there) <= close:
            return middle if there is not None else None
        if there * here > 0:
            near, near_gap = middle, there
        else:
            far, far_gap = middle, there
    return far
