"""Which single input, moved within its +/-, would bring the model onto what was observed."""

from __future__ import annotations

from functools import lru_cache
from typing import Any

from windwall.quantities.uncertain_input import UncertainInput
from windwall.results.diagnosis import (
    CHALLENGED,
    MISREAD,
    READINGS,
    Compared,
    Diagnosis,
    Explained,
    Explanation,
    Fact,
    Spoiled,
)
from windwall.results.scenario_info import RatedFigure
from windwall.scenario.data import ScenarioData
from windwall.scenario.info import rated_figures
from windwall.scenario.inputs import SLIPS, belt_slips, moved, uncertain_inputs
from windwall.study.compare import ask, compare

__all__ = [
    "CLOSE", "FARTHEST", "HOPEFUL", "REFINED", "STEPS", "Moved", "believed", "breaks", "diagnose",
    "estimate", "explanations", "farthest", "meet", "misread", "spoils", "without_menu",
]  # fmt: skip

FARTHEST = 3.0  # standard deviations that an input may be moved
HOPEFUL = 5.0  # by a straight line, which is not believed beyond choosing candidates
REFINED = 6  # candidates that are solved to the end
STEPS = 20
CLOSE = 0.05  # of the standard deviations that separate model and observation


class Moved:
    """Answers of a scenario with one input moved, each solved once whatever it is read for."""

    def __init__(self, scenario: ScenarioData) -> None:
        self.scenario = scenario
        self._moved: dict[tuple[Any, ...], ScenarioData | None] = {}
        self._answers: dict[tuple[Any, ...], Any] = {}

    def to(self, one: UncertainInput, deviations: float) -> ScenarioData | None:
        """The scenario with an input that far off; None beyond its range."""
        asked = (one.address, deviations)
        if asked not in self._moved:
            self._moved[asked] = moved(self.scenario, one, deviations)
        return self._moved[asked]

    def gap(self, fact: Fact, one: UncertainInput, deviations: float) -> float | None:
        """Model less observation with an input that far off; None beyond its range."""
        asked = (fact.situation, one.address, deviations)
        if asked not in self._answers:
            self._answers[asked] = ask(fact.situation, self.to(one, deviations))
        model = fact.model(self._answers[asked])
        return None if model is None else fact.above(model)

    def rated(self, one: UncertainInput, deviations: float) -> tuple[RatedFigure, ...]:
        """What the stock engine has of its rated figures with an input of its own that far off."""
        there = self.to(one, deviations) if one.address.startswith("engine/") else None
        return rated_figures(there) if there else ()

    def breaks_rated(self, one: UncertainInput, deviations: float) -> bool:
        """Whether a rated figure that is met is missed then by more than it is known to."""
        was = [each.unreconciled for each in rated_figures(self.scenario)]
        then = [each.unreconciled for each in self.rated(one, deviations)]
        return any(now and not before for now, before in zip(then, was, strict=False))


@lru_cache(maxsize=16)
def diagnose(scenario: ScenarioData) -> Diagnosis:
    """Holds the model against what was observed, and explains what contradicts it."""
    compared = compare(scenario)
    challenged = [one for one in compared if one.challenged]
    candidates = uncertain_inputs(scenario) + belt_slips(scenario) if challenged else []
    answers = Moved(without_menu(scenario) if challenged else scenario)
    explained = (
        Explained(one, explanations(answers, one, candidates, compared) + misread(scenario, one))
        for one in challenged
    )
    return Diagnosis(compared, tuple(one.least_first() for one in explained))


def misread(scenario: ScenarioData, compared: Compared) -> list[Explanation]:
    """That the model is right and what was seen was read wrong, within reach of its +/-."""
    fact = compared.fact
    if not fact.sigma:
        return []
    entry = scenario.observed.index(fact.entry) + 1
    address = f"{READINGS}/{entry}/{fact.key}"
    read = UncertainInput(address, MISREAD, fact.observed, fact.sigma, True, fact.measure)
    deviations = fact.above(compared.model) / fact.sigma
    return [Explanation(read, deviations)] if abs(deviations) <= FARTHEST else []


def without_menu(scenario: ScenarioData) -> ScenarioData:
    """The same vehicle and day; every change of a scenario looks at its whole menu again."""
    return scenario.restated(scenario.without_menu())


def explanations(
    answers: Moved,
    compared: Compared,
    candidates: list[UncertainInput],
    others: tuple[Compared, ...] = (),
) -> list[Explanation]:
    """The inputs that have to be moved least, each found by solving again and again; none that
    breaks another fact which agrees.
    """
    here = compared.fact.above(compared.model)
    hopeful = ((estimate(answers, compared.fact, one, here), one) for one in candidates)
    nearest = sorted(
        (found for found in hopeful if found[0] is not None and believed(*found)),
        key=lambda found: abs(found[0]),
    )
    belts = [found for found in nearest[REFINED:] if found[1].sentence == SLIPS]
    close = CLOSE * compared.spread
    return [
        Explanation(
            one, met, rated=answers.rated(one, met), spoils=spoils(answers, others, one, met)
        )
        for guess, one in nearest[:REFINED] + belts
        if (met := meet(answers, compared.fact, one, here, guess, close)) is not None
        and not any(breaks(answers, other, one, met) for other in others)
        and not answers.breaks_rated(one, met)
    ]


def believed(guess: float, one: UncertainInput) -> bool:
    """Whether it is worth solving: a straight line says not too far, and a belt only slips."""
    return abs(guess) <= HOPEFUL and (guess < 0 or one.sentence != SLIPS)


def breaks(answers: Moved, other: Compared, one: UncertainInput, deviations: float) -> bool:
    """Whether a fact that agrees would be far off, or in another gear, with an input moved."""
    gap = answers.gap(other.fact, one, deviations)
    if other.challenged or gap is None:
        return False
    if other.off is None:
        return other.key == "gear" and other.model == other.observed and gap != 0
    return other.far_by(gap)


def spoils(
    answers: Moved, others: tuple[Compared, ...], one: UncertainInput, deviations: float
) -> tuple[Spoiled, ...]:
    """The facts that agree and would be challenged, though not far off, with an input moved."""
    gaps = (
        (other, answers.gap(other.fact, one, deviations))
        for other in others
        if other.off is not None and not other.challenged and other.spread
    )
    found = (Spoiled(other.fact, gap / other.spread) for other, gap in gaps if gap is not None)
    return tuple(each for each in found if abs(each.off) > CHALLENGED)


def estimate(answers: Moved, fact: Fact, one: UncertainInput, here: float) -> float | None:
    """Deviations by a straight line through one step. It only says where to look."""
    for step in (1.0, -1.0):
        there = answers.gap(fact, one, step)
        if there is not None:
            return step * here / (here - there) if there != here else None
    return None


def farthest(
    answers: Moved, fact: Fact, one: UncertainInput, way: int
) -> tuple[float, float | None]:
    """As far as an input may be moved before it leaves its range, and the gap there."""
    for reach in (FARTHEST, 2 / 3 * FARTHEST, FARTHEST / 3):
        gap = answers.gap(fact, one, way * reach)
        if gap is not None:
            break
    return way * reach, gap


def meet(
    answers: Moved, fact: Fact, one: UncertainInput, here: float, guess: float, close: float
) -> float | None:
    """Where the model meets the observation within reach; None where it does not."""
    near, near_gap = 0.0, here
    far, far_gap = farthest(answers, fact, one, 1 if guess > 0 else -1)
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
