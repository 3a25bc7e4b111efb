"""What an answer repeats of its scenario."""

from __future__ import annotations

from windwall import _core
from windwall.results.ranking import Chosen
from windwall.results.scenario_info import RatedFigure, ScenarioInfo
from windwall.scenario.data import ScenarioData
from windwall.scenario.installing import Fitted, for_core

__all__ = [
    "ACCESSORIES", "CONDITIONS", "PLATE", "RADIUS", "accessories_stated", "chosen",
    "plate_speed", "radius_known_to", "rated_figures", "scenario_info",
]  # fmt: skip

CONDITIONS = (
    "day/temperature",
    "day/pressure",
    "day/altitude",
    "day/relative_humidity",
    "day/headwind",
    "goal/grade",
)

ACCESSORIES = ("engine/accessories/torque", "engine/accessories/fan_torque")
PLATE = ("engine/rated/torque_speed", "engine/rated/power_speed")
RADIUS = ("tyres/rolling_radius", "tyres/rolling_factor")  # the measured one goes first


def chosen(scenario: ScenarioData, *what: Fitted) -> tuple[Chosen, ...]:
    """Which value each choice would take if these were fitted: as stated, else the fastest."""
    info = scenario_info(scenario)
    return tuple(Chosen(one, info) for one in scenario.core.chosen(*for_core(what)))


def scenario_info(scenario: ScenarioData) -> ScenarioInfo:
    """What an answer has to repeat of the scenario it belongs to."""
    return ScenarioInfo(
        title=scenario.name,
        system=scenario.system,
        conditions={address: scenario.get(address) for address in CONDITIONS},
        knock_sigma=scenario.knock_sigma,
        goal_speed=scenario.get("goal/speed"),
        run_up=scenario.get("goal/run_up"),
        mass=scenario.get("body/mass"),
        observed=scenario.observed,
        gears=_core.gears(scenario.core),
        spark_is_chosen=scenario.spark_is_chosen,
        rated=rated_figures(scenario),
        accessories_stated=accessories_stated(scenario),
        plate_speed=plate_speed(scenario),
        radius_known_to=radius_known_to(scenario),
    )


def accessories_stated(scenario: ScenarioData) -> bool:
    """Whether the file says what dynamo, pump and fan take, or a measured torque holds it."""
    return not scenario.has_knock_anchor or any(map(scenario.given, ACCESSORIES))


def radius_known_to(scenario: ScenarioData) -> float:
    """By what share the rolling radius, and with it the speed at the rev limit, may be another."""
    address = next(one for one in RADIUS if scenario.get(one) is not None)
    return scenario.known_to(address) / scenario.get(address)


def plate_speed(scenario: ScenarioData) -> float | None:
    """The highest engine speed of a rated figure; None where nothing is rated."""
    if not scenario.rated_fit:
        return None
    return max(filter(None, map(scenario.get, PLATE)), default=None)


def rated_figures(scenario: ScenarioData) -> tuple[RatedFigure, ...]:
    """The figures of the stock engine; none where nothing is rated or the engine was changed."""
    fit = scenario.rated_fit or {"figures": []}
    return tuple(
        RatedFigure(**{key: one[key] for key in RatedFigure._fields}) for one in fit["figures"]
    )
