"""What is asked of a scenario: arguments taken in, and the question put into words."""

from __future__ import annotations

from functools import cache
from typing import TYPE_CHECKING, Any

from windwall import _core
from windwall.errors import Problem, ScenarioError
from windwall.outcome import Asked
from windwall.quantities import SI, accepted

if TYPE_CHECKING:
    from windwall.scenario import Scenario

KNOCK_ANCHOR = "engine/knock_anchor/octane_number"
LISTENED_FOR = 5.0  # octane numbers, one standard deviation; see docs/physics/knock.md


@cache
def _rows() -> dict[str, dict[str, Any]]:
    return _core.question_rows()["rows"]


def stated(**arguments: Any) -> dict[str, str | float]:
    """Arguments as the core reads them; a bare number only where there is no unit to forget."""
    return {
        key: _stated(key, value, _rows()[key])
        for key, value in arguments.items()
        if value is not None
    }


def _stated(key: str, value: Any, row: dict[str, Any]) -> str | float:
    taken = accepted(value, row["si"])
    plain = isinstance(value, (int, float)) and not isinstance(value, SI)
    if plain and row["si"] != "1":
        shown = f"{value:g}"
        message = (
            f'{shown} what? Write "{shown} {row["unit"]}", or si({shown}) for {shown} {row["si"]}'
        )
        raise ScenarioError([Problem(key, 0, 0, message)])
    return taken


def asked(scenario: Scenario) -> Asked:
    """What an answer has to repeat of the scenario it belongs to."""
    return Asked(
        title=scenario.title or scenario.source,
        system=scenario.system,
        conditions=conditions(scenario),
        knock_sigma=knock_sigma(scenario),
        scenario=scenario,
        goal_speed=scenario.get("goal/speed"),
        run_up=scenario.get("goal/run_up"),
        mass=scenario.get("body/mass"),
        observed=scenario.observed,
        gears=_core.gears(scenario._core),
    )


def knock_sigma(scenario: Scenario) -> float:
    """How well the margin is known. Nobody knows where an engine knocks exactly, so a knock anchor
    that is stated without its ± is taken as any other that was listened for.
    """
    return (scenario.sigma(KNOCK_ANCHOR) if has_anchor(scenario) else 0) or LISTENED_FOR


def has_anchor(scenario: Scenario) -> bool:
    """Whether the engine knows anything of knock; a torque curve does not."""
    try:
        scenario.sigma(KNOCK_ANCHOR)
    except (ScenarioError, ValueError, KeyError):
        return False
    return True


def conditions(scenario: Scenario) -> str:
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
