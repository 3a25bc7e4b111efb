"""What the gauges of the table are in one vehicle: addresses of its own parts, errors in SI."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import NamedTuple

from windwall import _core
from windwall.errors import ScenarioError
from windwall.quantities.measures import Measure
from windwall.scenario.data import ScenarioData
from windwall.study.gauges import Gauge

__all__ = ["KINDS", "Sensor", "error", "has", "part_ids", "sensors"]

# What a word in an address stands for: the first part of one of these kinds.
KINDS = {
    "blower": ("positive_blower", "mapped_compressor"),
    "filter": ("filter",),
    "spray": ("evaporative_injection",),
    "bypass": ("bypass",),
    "cooler": ("charge_cooler",),
    "plenum": ("plenum",),
    "turns": ("belt_cvt", "gearbox", "final_drive"),
}


class Sensor(NamedTuple):
    """A gauge with the addresses that it reads in one vehicle."""

    gauge: Gauge
    addresses: tuple[str, ...]


def part_ids(scenario: ScenarioData) -> dict[str, str]:
    """The ids of the parts that words of an address stand for."""
    document = scenario.document()
    parts = [*document["charge_path"], *document["driveline"]]
    found: dict[str, str] = {}
    for word, kinds in KINDS.items():
        for kind in kinds:
            ids = [part["id"] for part in parts if part["kind"] == kind]
            if ids and word not in found:
                found[word] = ids[0]
    return found


def sensors(scenario: ScenarioData, gauges: Iterable[Gauge]) -> Iterator[Sensor]:
    """The gauges that this vehicle has a place for."""
    ids = part_ids(scenario)
    for one in gauges:
        try:
            addresses = tuple(reading.address.format(**ids) for reading in one.reads)
        except KeyError:
            continue
        if one.driven or all(has(scenario, address) for address in addresses):
            yield Sensor(one, addresses)


def has(scenario: ScenarioData, address: str) -> bool:
    """Whether a number stands at an input address."""
    try:
        return isinstance(scenario.get(address), float)
    except (ScenarioError, ValueError, KeyError):
        return False


def error(text: str, value: float, measure: Measure) -> float:
    """A sensor's standard deviation in SI: of the value where it is stated in %."""
    if text.endswith("%"):
        return float(text.removesuffix("%")) / 100 * abs(value)
    _, sigma = _core.read_quantity(f"0 ± {text}", measure.dimension, measure.unit, text)
    return float(sigma)
