"""Which single input, moved within its +/-, would bring the model onto what was observed."""

from __future__ import annotations

from functools import lru_cache
from typing import TYPE_CHECKING, NamedTuple

from windwall.inputs import Loose, loose, moved
from windwall.observed import FAR_OFF, Compared, Fact

if TYPE_CHECKING:
    from windwall.outcome import Outcome
    from windwall.scenario import Scenario

FARTHEST = 2.0  # standard deviations that an input may be moved
NAMED = 3
HOPEFUL = 4.0  # by a straight line, which is not believed beyond choosing candidates
REFINED = 6  # candidates that are solved to the end
STEPS = 20
CLOSE = 0.05  # of the standard deviations that separate model and observation


class Explanation(NamedTuple):
    """An input and how many of its standard deviations it has to be moved."""

    input: Loose
    deviations: float

    @property
    def value(self) -> float:
        """What it would have to be, SI."""
        return self.input.value + self.deviations * self.input.sigma


class Explained(NamedTuple):
    """A fact that the model is far from, and up to three inputs of which each would explain it."""

    compared: Compared
    inputs: list[Explanation]


class Moved:
    """Answers of a scenario with one input moved, each solved once whatever it is read for."""

    def __init__(self, scenario: Scenario) -> None:
        self.scenario = scenario
        self._answers: dict[tuple, Outcome | None] = {}

    def gap(self, fact: Fact, one: Loose, deviations: float) -> float | None:
        """Model less observation with an input that far off; None beyond its range."""
        asked = (fact.situation, one.address, deviations)
        if asked not in self._answers:
            self._answers[asked] = fact.ask(moved(self.scenario, one, deviations))
        model = fact.model(self._answers[asked])
        return None if model is None else fact.above(model)


@lru_cache(maxsize=16)
def explained(scenario: Scenario) -> tuple[Explained, ...]:
    """Every fact further off than two standard deviations."""
    far = [one for one in scenario.against_observed() if one.far]
    candidates = loose(scenario) if far else []
    answers = Moved(scenario)
    return tuple(Explained(one, explanations(answers, one, candidates)) for one in far)


def explanations(answers: Moved, compared: Compared, candidates: list[Loose]) -> list[Explanation]:
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


def estimate(answers: Moved, fact: Fact, one: Loose, here: float) -> float | None:
    """Deviations by a straight line through one step. It only says where to look."""
    for step in (1.0, -1.0):
        there = answers.gap(fact, one, step)
        if there is not None:
            return step * here / (here - there) if there != here else None
    return None


def meet(
    answers: Moved, fact: Fact, one: Loose, here: float, guess: float, close: float
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
