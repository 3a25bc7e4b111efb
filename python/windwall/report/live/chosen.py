"""Which inputs a vehicle gets a slider for, and how far it moves."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from typing import Any

from windwall.report.live.slider import Slider, slider
from windwall.scenario import inputs
from windwall.scenario.data import ScenarioData
from windwall.scenario.titles import titles

__all__ = [
    "GEARING", "LABELS", "LEVELS", "OTHER", "RATIO", "RATIOS", "SHARES", "TEETH", "WHAT", "Span",
    "gearing", "is_whole", "labels", "named", "number", "shares", "sliders", "span", "usual",
]  # fmt: skip

# Each as far as a workshop, a seat or a season takes it: shares of what the file states.
SHARES = {"drive_ratio": (0.7, 1.4), "mass": (0.75, 1.25), "drag_area": (0.5, 1.3)}
GEARING = (0.7, 1.4)
OTHER = (0.8, 1.25)
# Levels in the units of their rows.
LEVELS = {
    "day/temperature": (-10.0, 45.0),
    "day/pressure": (80.0, 105.0),
    "day/altitude": (0.0, 2000.0),
    "day/relative_humidity": (0.0, 100.0),
    "day/headwind": (-10.0, 10.0),
}
LABELS = {
    "body/mass": "Mass ready to run",
    "body/drag_area": "Drag area",
    "day/temperature": "Air temperature",
    "day/pressure": "Barometer",
    "day/altitude": "Altitude",
    "day/relative_humidity": "Humidity",
    "day/headwind": "Headwind",
}
WHAT = {"teeth_rear": "Rear teeth", "teeth_front": "Front teeth"}
TEETH, RATIO, RATIOS = "teeth_rear", "ratio", "ratios"
Span = tuple[Any, Any] | None


def sliders(
    scenario: ScenarioData, addresses: Iterable[str] | Mapping[str, Span] | None = None
) -> list[Slider]:
    """One for each address that can be moved: those of the vehicle itself unless some are named,
    with the span that a mapping gives it, in texts with units or in SI.
    """
    chosen = list(usual(scenario)) if addresses is None else list(addresses)
    spans = addresses if isinstance(addresses, Mapping) else {}
    names = labels(chosen)
    made = (
        slider(
            scenario,
            address,
            names[address],
            span(scenario, address, spans.get(address)),
            is_whole(scenario, address),
        )
        for address in chosen
    )
    return [one for one in made if one]


def labels(addresses: list[str]) -> dict[str, str]:
    """What each slider is called."""
    return {address: LABELS.get(address) or title for address, title in named(addresses)}


def named(addresses: list[str]) -> Iterator[tuple[str, str]]:
    """Addresses with what and where: `Rear teeth, final chain`."""
    for address, title in titles(addresses).items():
        *above, key = address.split("/")
        if above[-1:] == [RATIOS]:
            yield address, f"Ratio of gear {key}"
            continue
        where, _, what = title.partition(": ")
        yield address, f"{WHAT.get(key, what.capitalize())}, {where}"


def usual(scenario: ScenarioData) -> Iterator[str]:
    """Blower drive, gearing, mass, drag area, the day."""
    document = scenario.document()
    for part in document["charge_path"]:
        if isinstance(part.get("drive_ratio"), int | float):
            yield f"charge_path/{part['id']}/drive_ratio"
    yield from gearing(document)
    yield "body/mass"
    yield "body/drag_area"
    for address in LEVELS:
        if scenario.get(address) is not None:
            yield address


def gearing(document: dict[str, Any]) -> Iterator[str]:
    """The one number that gears the whole drive: the last sprocket or ratio before the wheels, or
    top gear where nothing follows the gearbox.
    """
    for part in reversed(document["driveline"]):
        address = f"driveline/{part['id']}/"
        if TEETH in part:
            yield address + TEETH
        elif RATIO in part:
            yield address + RATIO
        elif RATIOS in part:
            yield f"{address}{RATIOS}/{len(part[RATIOS])}"
        else:
            continue
        return


def span(scenario: ScenarioData, address: str, stated: Span) -> tuple[float, float]:
    """How far it moves, in shown units; always past what the file states."""
    measure, system = scenario.measure(address), scenario.system
    if stated is not None:
        low, high = (number(scenario, address, end) for end in stated)
    elif address in LEVELS:
        low, high = (number(scenario, address, f"{end} {measure.unit}") for end in LEVELS[address])
    else:
        low, high = shares(scenario, address)
    return measure.value(min(low, high), system), measure.value(max(low, high), system)


def number(scenario: ScenarioData, address: str, stated: Any) -> float:
    """SI, of a text as files have it."""
    value: float = scenario.set({address: stated}).get(address)
    return value


def shares(scenario: ScenarioData, address: str) -> tuple[float, float]:
    """Ends of a span about what the file states, SI."""
    key = address.rsplit("/", 1)[-1]
    of_gearing = key in (TEETH, RATIO) or f"/{RATIOS}/" in address
    value = scenario.get(address)
    low, high = GEARING if of_gearing else SHARES.get(key, OTHER)
    width = abs(value) or 1.0
    return value - (1 - low) * width, value + (high - 1) * width


def is_whole(scenario: ScenarioData, address: str) -> bool:
    """Whether it is counted, as teeth are."""
    kind: str = inputs.row(scenario.document(), address).get("$ref", "")
    return kind.endswith("/whole_number")
