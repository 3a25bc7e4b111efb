"""The questions that the core answers at once."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any

from windwall import _core
from windwall.results.curve import Curve
from windwall.results.operating_point import OperatingPoint
from windwall.results.part_load import BeyondGears, PartLoad
from windwall.results.top_speed import TopSpeed
from windwall.scenario.arguments import stated
from windwall.scenario.data import ScenarioData
from windwall.scenario.info import scenario_info

__all__ = [
    "full_throttle_curve", "hold_speed", "hold_speed_curve", "idle", "idle_curve",
    "operating_point", "top_speed",
]  # fmt: skip


def top_speed(scenario: ScenarioData, brief: bool = False) -> TopSpeed:
    """How fast it gets. Brief: the speed and the point there alone, for asking again and again."""
    return TopSpeed(_core.top_speed(scenario.core, brief=brief), scenario_info(scenario))


def operating_point(
    scenario: ScenarioData, engine_speed: Any, opening: Any = 1.0, road_speed: Any = None
) -> OperatingPoint:
    """The engine held at a speed: texts with units (`"4200 rpm"`) or `si(x)`."""
    arguments = stated(engine_speed=engine_speed, opening=opening, road_speed=road_speed)
    return OperatingPoint(_core.operating_point(scenario.core, arguments), scenario_info(scenario))


def full_throttle_curve(scenario: ScenarioData, gear: int | None = None, points: int = 40) -> Curve:
    """Full throttle over engine speed, in one gear or in all."""
    return Curve(**_core.full_throttle_curve(scenario.core, gear, points))


def hold_speed(scenario: ScenarioData, speed: Any, gear: int | None = None) -> PartLoad:
    """The pedal that holds a road speed, in a gear or in the highest that can."""
    asked = stated(road_speed=speed)["road_speed"]
    info = scenario_info(scenario)
    held = PartLoad(_core.hold_speed(scenario.core, asked, gear), info)
    if gear is None and held.worst_residual[0] == "gears":
        nearest = _nearest_gear(scenario, held["road_speed"], info.gears)
        return BeyondGears(held.numbers | {"gear": nearest}, info)
    return held


def _nearest_gear(scenario: ScenarioData, road_speed: float, gears: int) -> int:
    """The longest where the engine would turn too fast in all, else the shortest."""
    curve = full_throttle_curve(scenario, gears, 2)
    speeds = curve.columns[curve.addresses.index("road/speed")]
    return gears if road_speed > speeds[0] else 1


def hold_speed_curve(scenario: ScenarioData, speeds: Iterable[Any], gear: int | None) -> Curve:
    """The same over road speeds."""
    asked = [stated(road_speed=one)["road_speed"] for one in speeds]
    return Curve(**_core.hold_speed_curve(scenario.core, asked, gear))


def idle(scenario: ScenarioData, engine_speed: Any = None) -> PartLoad:
    """The engine alone, at the speed it idles at or at another."""
    asked = stated(engine_speed=engine_speed).get("engine_speed")
    return PartLoad(_core.idle(scenario.core, asked), scenario_info(scenario))


def idle_curve(scenario: ScenarioData, engine_speeds: Iterable[Any]) -> Curve:
    """The same over engine speeds."""
    asked = [stated(engine_speed=one)["engine_speed"] for one in engine_speeds]
    return Curve(**_core.idle_curve(scenario.core, asked))
