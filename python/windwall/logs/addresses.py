"""What a column may be of: results of a moment, and the day. Everything else is told what it is."""

from __future__ import annotations

from difflib import get_close_matches

from windwall import _core
from windwall.errors import Problem
from windwall.quantities.measures import Measure
from windwall.results.drive import moment_row
from windwall.scenario.data import ScenarioData

__all__ = [
    "OF_A_MOMENT", "OF_THE_DAY", "SETTINGS", "known_addresses", "measure_of", "problem",
    "result_addresses", "wrong_address",
]  # fmt: skip

OF_A_MOMENT = ("distance", "acceleration", "pedal", "fuel_used", "liquid_used")
OF_THE_DAY = ("day/temperature", "day/pressure", "day/relative_humidity", "day/headwind")
SETTINGS = {
    "pedal",
    "road/gear",
}  # what a driver chose, which may stand still for as long as it will


def known_addresses(scenario: ScenarioData) -> tuple[str, ...]:
    """Every result that a column may hold of this vehicle, and the conditions of its day."""
    return (*OF_A_MOMENT, *result_addresses(scenario), *OF_THE_DAY)


def result_addresses(scenario: ScenarioData) -> list[str]:
    """What a moment at full throttle tells of this vehicle."""
    curve = _core.full_throttle_curve(scenario.core, None, 2)
    return [one for one in curve["addresses"] if "/" in one]


def measure_of(scenario: ScenarioData, address: str) -> Measure:
    """What numbers of an address measure."""
    if address in OF_THE_DAY:
        return scenario.measure(address)
    return Measure.of_row(moment_row(address))


def wrong_address(scenario: ScenarioData, address: str, known: tuple[str, ...]) -> str:
    """Why an address is none that a column may have; empty where it is one."""
    if address in known:
        return ""
    if _is_input(scenario, address):
        return f'"{address}" is an input; a column holds a result, such as manifold/temperature'
    close = get_close_matches(address, known, 1, 0.6)
    meant = f'; did you mean "{close[0]}"?' if close else ", such as engine/speed or manifold/boost"
    return f'there is no result "{address}" of this vehicle{meant}'


def _is_input(scenario: ScenarioData, address: str) -> bool:
    try:
        scenario.measure(address)
    except (ValueError, KeyError):
        return False
    return True


def problem(line: int, column: int, address: str, message: str) -> Problem:
    """A problem of a mapping, with its place in the file."""
    return Problem(address, line, column, message)
