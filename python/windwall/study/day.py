"""The day: what was seen in one weather, brought to another by the model itself."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from typing import Any

import numpy as np

from windwall import physics
from windwall.quantities.measures import SPEED
from windwall.results.curve import Curve
from windwall.results.day import Corrected, Factor, Forecast, OnADay, Peak, Weather
from windwall.scenario.arguments import exact, wrong
from windwall.scenario.data import ScenarioData
from windwall.study.progress import Progress
from windwall.study.solve import full_throttle_curve, top_speed
from windwall.study.sweep import sweep

__all__ = [
    "ALTITUDE", "HEADWIND", "HUMIDITY", "ISO_LIMITS", "KEYS", "NOTICED", "PRESSURE", "TEMPERATURE",
    "Day", "corrected", "factors", "forecast", "on_day", "weather",
]  # fmt: skip

TEMPERATURE, PRESSURE, ALTITUDE = (f"day/{key}" for key in ("temperature", "pressure", "altitude"))
HUMIDITY, HEADWIND = "day/relative_humidity", "day/headwind"
KEYS = (
    "temperature",
    "pressure",
    "altitude",
    "sea_level_pressure",
    "relative_humidity",
    "headwind",
)
ISO_LIMITS = (0.93, 1.07)  # of the factor, as the standard has them
NOTICED = 1e-3  # rad of retard
Day = Mapping[str, Any] | None


def corrected(
    scenario: ScenarioData, to_day: Day, from_day: Day = None, speed: Any = None
) -> Corrected:
    """What another day does to speed, power and torque. A day is what differs from that of the
    file, as the file would state it: `{"temperature": "12 degC", "pressure": "102 kPa"}`. `speed`
    was seen on the first day, which is that of the file unless stated.
    """
    vehicles = on_day(scenario, from_day), on_day(scenario, to_day)
    before, after = map(_solved, vehicles)
    seen = None if speed is None else exact("speed", speed, SPEED, "110 km/h")
    return Corrected(
        title=scenario.name,
        system=scenario.system,
        before=before,
        after=after,
        observed=seen,
        factors=factors(before.weather, after.weather),
        blown=any("drive_ratio" in part for part in scenario.document()["charge_path"]),
        late_spark=any((one.retard or 0.0) > NOTICED for one in (before, after)),
    )


def on_day(scenario: ScenarioData, day: Day) -> ScenarioData:
    """The scenario on a day. A pressure that is stated stands instead of the file's altitude."""
    day = dict(day or {})
    unknown = [key for key in day if key not in KEYS]
    if unknown:
        raise wrong(f"day/{unknown[0]}", f"a day has no {unknown[0]}; it has {', '.join(KEYS)}")
    instead = {"pressure": ALTITUDE, "altitude": PRESSURE}
    gone = {instead[key]: None for key in day if key in instead}
    if len(gone) == 1 and scenario.get(next(iter(gone))) is None:
        gone = {}
    return scenario.set(gone | {f"day/{key}": value for key, value in day.items()})


def weather(scenario: ScenarioData) -> Weather:
    """The air of a scenario's day."""
    temperature, humidity = scenario.get(TEMPERATURE), scenario.get(HUMIDITY)
    pressure = scenario.get(PRESSURE)
    if pressure is None:
        pressure = physics.station_pressure(
            scenario.get(ALTITUDE), scenario.get("day/sea_level_pressure")
        )
    vapour = humidity * float(physics.saturation_pressure(temperature))
    return Weather(
        temperature, float(pressure), humidity, scenario.get(HEADWIND), float(pressure) - vapour
    )


def factors(before: Weather, after: Weather) -> tuple[Factor, ...]:
    """The published factors of both days. Where a standard states within which limits its factor
    holds, both have to lie there.
    """
    j1349, iso, din = (
        tuple(float(factor(getattr(one, key), one.temperature)) for one in (before, after))
        for factor, key in (
            (physics.j1349_factor, "dry_pressure"),
            (physics.iso1585_factor, "dry_pressure"),
            (physics.din70020_factor, "pressure"),
        )
    )
    low, high = ISO_LIMITS
    valid = all(low <= one <= high for one in iso)
    return (
        Factor("j1349", j1349[0], j1349[1], None),
        Factor("iso1585", iso[0], iso[1], valid),
        Factor("din70020", din[0], din[1], None),
    )


def forecast(
    scenario: ScenarioData,
    temperatures: Iterable[Any],
    pressures: Iterable[Any],
    day: Day = None,
    progress: bool | Progress | None = None,
    threads: int = 0,
) -> Forecast:
    """The speed for every temperature and every pressure, texts with units; the rest of the day
    is that of the file unless `day` says otherwise.
    """
    temperatures, pressures = list(temperatures), list(pressures)
    first = {"temperature": temperatures[0], "pressure": pressures[0]}
    vehicle = on_day(scenario, {**(day or {}), **first})
    axes = {TEMPERATURE: temperatures, PRESSURE: pressures}
    read = ["engine/power", *(["knock/retard"] if vehicle.has_knock_anchor else [])]
    found = sweep(vehicle, axes, read, progress, threads)
    return Forecast(
        title=scenario.name,
        system=scenario.system,
        temperatures=tuple(found["temperature"].values.tolist()),
        pressures=tuple(found["pressure"].values.tolist()),
        speed=found["speed"].values,
        power=found["power"].values,
        dataset=found,
    )


def _solved(vehicle: ScenarioData) -> OnADay:
    best, air = top_speed(vehicle, brief=True), weather(vehicle)
    if not best.answered:
        return OnADay(air, best.status, None, None, None, None, None, None)
    curve, knock = full_throttle_curve(vehicle), best.point.get("knock")
    known = knock is not None
    return OnADay(
        weather=air,
        status=best.status,
        speed=best.goal_speed,
        held_by=best.limited_by,
        power=_peak(curve, "engine/power"),
        torque=_peak(curve, "engine/torque"),
        knock_margin=knock.margin if known else None,
        retard=knock.retard if known else None,
    )


def _peak(curve: Curve, address: str) -> Peak | None:
    columns = dict(zip(curve.addresses, curve.columns, strict=True))
    values = np.asarray(columns[address], float)
    if not np.isfinite(values).any():
        return None
    at = int(np.nanargmax(values))
    return Peak(float(values[at]), float(columns["engine/speed"][at]))
