"""Weights and spring of a belt drive for wanted engine speeds: the balance of forces inverted."""

from __future__ import annotations

from typing import Any

from windwall import _core
from windwall.results.flyweights import Flyweights
from windwall.scenario.arguments import stated
from windwall.scenario.data import ScenarioData
from windwall.scenario.info import scenario_info

__all__ = ["flyweights"]


def flyweights(
    scenario: ScenarioData,
    shift_speed: Any,
    shift_end_speed: Any = None,
    engagement_speed: Any = None,
) -> Flyweights:
    """Engine speeds as texts with units (`"4200 rpm"`) or `si(x)`, at full throttle in the highest
    gear. Raises `ScenarioError` where no belt drive states its flyweights.
    """
    wanted = stated(
        shift_speed=shift_speed,
        shift_end_speed=shift_end_speed,
        engagement_speed=engagement_speed,
    )
    return Flyweights(_core.fit_flyweights(scenario.core, wanted), scenario_info(scenario))
