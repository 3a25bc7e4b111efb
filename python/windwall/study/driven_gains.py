"""Every upgrade alone, by a run that is driven with it and without."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from typing import Any

from windwall.errors import NoAnswer, ScenarioError
from windwall.results.driven_gains import DrivenGain, DrivenGains
from windwall.results.gearing import Mark
from windwall.scenario.data import ScenarioData, a_scenario
from windwall.study.standing_start import read_mark, shortfall, timed

__all__ = ["Measured", "by", "driven_gains", "required"]

Measured = tuple[float | None, str]  # a number, or why there is none


def driven_gains(scenario: ScenarioData, mark: Any = None, **outing: Any) -> DrivenGains:
    """What each upgrade of the menu saves of the time to `mark`, a distance or a speed with its
    unit; without a mark, what it adds to the speed of a driven run. Each is fitted with what it
    requires and held against that alone. Further arguments are keys of an outing.

    Sets of upgrades are ranked by the quick speed (`rank`), whose thousands no run would get
    through.

    >>> small = ww.loads(car.text())
    >>> gains = ww.driven_gains(small, "100 m")  # doctest: +SKIP
    """
    scenario = a_scenario(scenario, "driven_gains")
    aim = None if mark is None else read_mark(mark)
    measure = by(aim, outing)
    stock, _ = measure(scenario)
    gains = [_gain(scenario, id, measure) for id in scenario.upgrades]
    gains.sort(key=lambda one: _worth(one, aim))
    road = scenario.get("goal/run_up")
    return DrivenGains(scenario.name, scenario.system, aim, road, stock, tuple(gains))


def by(mark: Mark | None, outing: dict[str, Any]) -> Callable[[ScenarioData], Measured]:
    """What is read off a run."""

    def measure(scenario: ScenarioData) -> Measured:
        try:
            if mark is None:
                return shortfall(scenario, **outing).driven, ""
            return timed(scenario, mark, **outing).time, ""
        except NoAnswer as none:
            return None, none.sentence

    return measure


def _worth(one: DrivenGain, mark: Mark | None) -> float:
    """What sorts it: the best first, those without an answer last."""
    if one.change is None:
        return float("inf")
    return one.change if mark is not None else -one.change


def _gain(
    scenario: ScenarioData, id: str, measure: Callable[[ScenarioData], Measured]
) -> DrivenGain:
    members = [*required(scenario, id)]
    title = scenario.upgrades[id].title
    try:
        before, why = measure(scenario.install(*members) if members else scenario)
        fitted, refusal = measure(scenario.install(*members, id))
    except ScenarioError as wrong:
        return DrivenGain(id, title, None, None, str(wrong))
    return DrivenGain(id, title, before, fitted, refusal or why)


def required(scenario: ScenarioData, id: str) -> Iterator[str]:
    """What an upgrade requires, and what that requires, each once."""
    open_ends, found = [id], {id}
    while open_ends:
        for one in scenario.upgrades[open_ends.pop()]["requires"]:
            if one not in found:
                found.add(one)
                open_ends.append(one)
                yield one
