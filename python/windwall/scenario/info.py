"""What an answer repeats of its scenario."""

from __future__ import annotations

from windwall import _core
from windwall.results.scenario_info import ScenarioInfo
from windwall.scenario.data import ScenarioData


def scenario_info(scenario: ScenarioData) -> ScenarioInfo:
    """What an answer has to repeat of the scenario it belongs to."""
    return ScenarioInfo(
        title=scenario.title or scenario.source,
        system=scenario.system,
        conditions=conditions(scenario),
        knock_sigma=scenario.knock_sigma,
        goal_speed=scenario.get("goal/speed"),
        run_up=scenario.get("goal/run_up"),
        mass=scenario.get("body/mass"),
        observed=scenario.observed,
        gears=_core.gears(scenario.core),
    )


def conditions(scenario: ScenarioData) -> str:
    """The air and the road, in words."""
    pressure = "day/pressure" if scenario.get("day/pressure") is not None else "day/altitude"
    place = scenario.readable(pressure)
    words = [
        scenario.readable("day/temperature"),
        place if pressure == "day/pressure" else f"altitude {place}",
        f"humidity {scenario.readable('day/relative_humidity')}",
        f"headwind {scenario.readable('day/headwind')}",
    ]
    grade = scenario.get("goal/grade")
    words.append("level road" if grade == 0 else f"grade {scenario.readable('goal/grade')}")
    return ", ".join(words)
