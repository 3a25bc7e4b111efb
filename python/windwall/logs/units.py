"""Units as loggers write them, and what is one of them in SI."""

from __future__ import annotations

import re
from functools import cache

from windwall import _core
from windwall.quantities.measures import PRESSURE_DIFFERENCE, Measure
from windwall.results.drive import moment_row

__all__ = [
    "BEHIND", "FOREIGN", "NO_UNIT", "SHOWN", "SPELT", "known", "line", "measured", "named", "spelt",
]  # fmt: skip

# What is often written for a unit that the files of this project write otherwise.
SPELT = {
    "°c": "degC", "deg c": "degC", "degc": "degC", "grad c": "degC", "celsius": "degC",
    "°f": "degF", "deg f": "degF", "degf": "degF", "°k": "K", "kelvin": "K", "c": "degC",
    "kph": "km/h", "kmh": "km/h", "km/h": "km/h", "kmph": "km/h", "km/hr": "km/h", "mph": "mph",
    "1/min": "rpm", "min-1": "rpm", "min^-1": "rpm", "u/min": "rpm", "r/min": "rpm",
    "rpm": "rpm", "rev/min": "rpm", "tr/min": "rpm", "sec": "s", "secs": "s", "seconds": "s",
    "second": "s", "sek": "s", "msec": "ms", "millis": "ms", "minutes": "min", "hpa": "hPa",
    "mbar": "mbar", "kpa": "kPa", "kpa abs": "kPa", "kpa(abs)": "kPa", "kpa a": "kPa",
    "kpa gauge": "kPa", "kpa g": "kPa", "nm": "N m", "n·m": "N m", "n*m": "N m", "percent": "%",
    "pct": "%", "m/s2": "m/s2", "m/s²": "m/s2", "m/s^2": "m/s2", "°": "deg", "degrees": "deg",
    "psi": "psi", "psia": "psia", "psig": "psig", "bar": "bar", "kw": "kW", "hp": "hp", "ps": "PS",
}  # fmt: skip
NO_UNIT = {"", "-", "--", "1", "none", "n/a", "unit", "units", "[-]", "()"}
# Units of columns that mean nothing to a vehicle model, so that a row of units is known as one.
FOREIGN = {"v", "mv", "a", "hz", "lambda", "afr", "bit", "counts", "g", "deg/s", "hex", "count"}
SHOWN = re.compile(r"^[\[(<{]?\s*(.*?)\s*[\])>}]?$")
# `Speed [km/h]`, `Speed (km/h)`, `Speed in km/h`, `Speed / km/h`, `Speed, km/h`, `Speed_kmh`.
BEHIND = (
    re.compile(r"^(?P<name>.*?)\s*[\[(<{]\s*(?P<unit>[^\[\](){}<>]*)\s*[\])>}]\s*$"),
    re.compile(r"^(?P<name>.+?)\s+in\s+(?P<unit>\S+)$"),
    re.compile(r"^(?P<name>.+?)\s+/\s+(?P<unit>\S+)$"),
    re.compile(r"^(?P<name>.+?)\s*,\s*(?P<unit>\S+)$"),
    re.compile(r"^(?P<name>.+)[_ ](?P<unit>[^_ ]+)$"),
)


def spelt(unit: str) -> str:
    """A unit as files of this project write it, as far as it is known by another spelling."""
    shown = SHOWN.match(unit.strip())
    bare = (shown[1] if shown else unit).replace("\u2103", "°C")
    if bare == "C":
        return "degC"
    return SPELT.get(bare.lower(), bare)


@cache
def measured() -> tuple[Measure, ...]:
    """Every kind of quantity that a column may hold."""
    addresses = (
        "manifold/pressure", "manifold/boost", "manifold/temperature", "manifold/air_flow",
        "engine/speed", "engine/torque", "engine/power", "road/speed", "road/thrust", "distance",
        "time", "acceleration", "pedal", "knock/retard", "fuel_used",
    )  # fmt: skip
    measures = (Measure.of_row(moment_row(one)) for one in addresses)
    return tuple(dict.fromkeys((*measures, PRESSURE_DIFFERENCE)))


def line(unit: str, measure: Measure) -> tuple[float, float]:
    """Factor and offset with which a number of this unit becomes one in SI. Raises ValueError."""
    name = spelt(unit)
    if name in NO_UNIT and measure.si == "1":
        return 1.0, 0.0
    example = f"1 {measure.unit}"
    zero, one = (
        _core.read_quantity(f"{number} {name}", measure.dimension, measure.unit, example)[0]
        for number in (0, 1)
    )
    return one - zero, zero


@cache
def known(unit: str) -> bool:
    """Whether this is a unit of anything."""
    if unit.strip().lower() in FOREIGN | {"psi", "bar"}:
        return True
    return any(_reads(unit, measure) for measure in measured())


def _reads(unit: str, measure: Measure) -> bool:
    try:
        line(unit, measure)
    except ValueError:
        return False
    return bool(spelt(unit)) and spelt(unit) not in NO_UNIT


def named(heading: str) -> tuple[str, str]:
    """The name and the unit of a heading that holds both; no unit where it holds none."""
    text = " ".join(heading.split())
    for at, pattern in enumerate(BEHIND):
        found = pattern.match(text)
        if found and (known(found["unit"]) or (at == 0 and found["unit"].strip() in NO_UNIT)):
            return found["name"].strip(" _:;,"), found["unit"].strip()
    return text, ""
