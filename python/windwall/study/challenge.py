"""What a ranking says if the model is wrong where an observation says so."""

from __future__ import annotations

from collections.abc import Callable

from windwall.errors import ScenarioError
from windwall.results.diagnosis import Diagnosis, Explained, Explanation, FirstGain
from windwall.results.ranking import JUDGED, MIDDLE, Ranking, UpgradeSet
from windwall.scenario.data import ScenarioData
from windwall.scenario.inputs import SLIPS, moved
from windwall.study.default_sensitivity import goal_speed
from windwall.study.diagnosis import diagnose

__all__ = ["Fitting", "Step", "challenge", "first_steps"]

# An upgrade with what it requires, and what it requires alone.
Step = tuple[UpgradeSet, UpgradeSet]
Fitting = Callable[[UpgradeSet], ScenarioData | None]


def challenge(scenario: ScenarioData, ranking: Ranking) -> Diagnosis:
    """The diagnosis, and for every input that would explain a contradiction the gains alone of the
    first upgrades and the speeds of the sets that are named, with that input moved; a handful of
    solves for each.
    """
    found = diagnose(scenario)
    if not found.explained or not ranking.answered:
        return found
    steps = first_steps(ranking)
    first = tuple(
        FirstGain(name, with_it.speed[MIDDLE] - before.speed[MIDDLE])
        for name, (with_it, before) in steps.items()
    )
    explained = tuple(
        Explained(one.compared, [_followed(each, scenario, ranking, steps) for each in one.inputs])
        for one in found.explained
    )
    return found._replace(explained=explained, first=first)


def first_steps(ranking: Ranking) -> dict[str, Step]:
    """The upgrades that gain most alone, the most first, each by its label."""
    by_members = ranking.by_members
    steps = {}
    for one in ranking.leaders:
        members = ranking.with_required(one.id)
        steps[one.label] = (by_members[members], by_members[members - {one.id}])
    return steps


def _followed(
    one: Explanation, scenario: ScenarioData, ranking: Ranking, steps: dict[str, Step]
) -> Explanation:
    fit = _fitting(one, scenario)
    speeds = {name: _speed(fit, ranking[name]) for name in JUDGED if ranking[name]}
    return one._replace(gains=tuple(_gain(fit, *step) for step in steps.values()), speeds=speeds)


def _fitting(one: Explanation, scenario: ScenarioData) -> Fitting:
    """How a set is fitted to the vehicle as explained. A belt that slips goes on slipping on
    another pulley, at least as far.
    """
    if one.input.sentence == SLIPS:
        return lambda fitted: _slipping(scenario.install(fitted), one)
    there = scenario if one.is_misread else moved(scenario, one.input, one.deviations)
    return lambda fitted: there.install(fitted) if there else None


def _slipping(fitted: ScenarioData, one: Explanation) -> ScenarioData:
    address = one.input.address
    return fitted.set({address: fitted.get(address) * one.value / one.input.value})


def _gain(fit: Fitting, with_it: UpgradeSet, before: UpgradeSet) -> float | None:
    """What a step adds to a vehicle; None where one of the two has no speed."""
    speeds = [_speed(fit, one) for one in (with_it, before)]
    return None if None in speeds else speeds[0] - speeds[1]


def _speed(fit: Fitting, fitted: UpgradeSet) -> float | None:
    try:
        there = fit(fitted)
        return goal_speed(there) if there else None
    except ScenarioError:
        return None
