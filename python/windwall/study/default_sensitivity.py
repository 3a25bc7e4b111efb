"""The defaults that an answer leans on, by how much of its speed each is in doubt for."""

from __future__ import annotations

from windwall.quantities.uncertain_input import UncertainInput
from windwall.results.default_sensitivity import DefaultSensitivity
from windwall.scenario.data import ScenarioData
from windwall.scenario.inputs import moved, uncertain_inputs
from windwall.study.solve import top_speed

__all__ = ["default_sensitivities", "goal_speed", "sensitivity"]


def default_sensitivities(scenario: ScenarioData) -> list[DefaultSensitivity]:
    """Every default with a standard deviation, the one that matters most first."""
    defaults = [one for one in uncertain_inputs(scenario) if not one.given]
    here = goal_speed(scenario)
    found = [DefaultSensitivity(one, sensitivity(scenario, one, here)) for one in defaults]
    return sorted(found, key=lambda one: -(one.speed or 0))


def sensitivity(scenario: ScenarioData, one: UncertainInput, here: float | None) -> float | None:
    """Largest change of speed, from the one as it is, within one standard deviation either way, by
    solving again.
    """
    if here is None:
        return None
    speeds = [goal_speed(moved(scenario, one, way)) for way in (-1, 1)]
    return max((abs(speed - here) for speed in speeds if speed is not None), default=None)


def goal_speed(scenario: ScenarioData | None) -> float | None:
    """The speed that goals go by, m/s."""
    answer = top_speed(scenario, brief=True) if scenario else None
    return answer.goal_speed if answer and answer.answered else None
