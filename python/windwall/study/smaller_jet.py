"""Whether a smaller jet would be faster, asked of a spray that takes far more than is usual."""

from __future__ import annotations

from collections.abc import Iterator

from windwall.results.smaller_jet import SmallerJet, Tried
from windwall.results.top_speed import TopSpeed
from windwall.scenario.data import ScenarioData
from windwall.study.solve import top_speed

__all__ = ["MOST_USUAL", "SHARES", "SPRAY", "smaller_jets"]

SPRAY = "evaporative_injection"
MOST_USUAL = 0.25  # of the fuel by mass, at full load; common practice, no source
SHARES = (0.25, 0.5, 0.75)  # of the flow of the jet that is fitted


def smaller_jets(scenario: ScenarioData, found: TopSpeed) -> tuple[SmallerJet, ...]:
    """The sprays of an answer that take more than is usual, each beside smaller jets in its place;
    every jet is solved, and nothing is said of one without an answer.
    """
    return tuple(_sprays(scenario, found)) if found.answered else ()


def _sprays(scenario: ScenarioData, found: TopSpeed) -> Iterator[SmallerJet]:
    for part in scenario.document()["charge_path"]:
        if part["kind"] != SPRAY:
            continue
        flow = found.point.charge_path[part["id"]].liquid_flow
        of_fuel = flow / found.point.engine.fuel_flow
        if of_fuel > MOST_USUAL:
            address = f"charge_path/{part['id']}/rated_flow"
            fitted = _of_a_jet(found, 1.0, scenario.get(address))
            tried = tuple(_tried(scenario, address))
            yield SmallerJet(part["id"], scenario.system, of_fuel, fitted, tried)


def _tried(scenario: ScenarioData, address: str) -> Iterator[Tried]:
    """The smaller jets."""
    rated = scenario.get(address)
    for share in SHARES:
        answer = top_speed(scenario.set({address: rated * share}), brief=True)
        if answer.answered:
            yield _of_a_jet(answer, share, rated)


def _of_a_jet(answer: TopSpeed, share: float, rated: float) -> Tried:
    knock = answer.point.knock
    spark = (None, None) if knock is None else (knock.retard, knock.margin)
    return Tried(share, rated * share, answer.goal_speed, *spark)
