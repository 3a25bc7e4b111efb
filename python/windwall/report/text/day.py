"""Two days side by side, and a table of weather."""

from __future__ import annotations

from windwall.quantities.measures import (
    ANGLE,
    ENGINE_SPEED,
    KILOWATTS,
    PRESSURE,
    SHARE,
    SPEED,
    TEMPERATURE,
    TORQUE,
    Measure,
    wind,
)
from windwall.report.text_layout import Blocks, Title, bullet, headline, paragraph, section, table
from windwall.report.wording.day import NAMES, change
from windwall.results.day import Corrected, Forecast, OnADay, Peak
from windwall.results.knock import held_late
from windwall.results.views import content

__all__ = ["DAYS", "NONE", "NOTE", "corrected_text", "forecast_text"]

NONE = "-"
DAYS = ("", "first", "second")
NOTE = (
    "Head, oil and blower case are as after a long pull on each of these days; the rest of the "
    "vehicle is the same."
)


@content.register(Corrected)
def corrected_text(found: Corrected) -> Blocks:
    """Everything worth reading about it."""
    lines = [Title(found.title), *paragraph("Asked: what another day makes of it.", "")]
    lines += ["", *headline(found.sentence)]
    lines += section("What to know", [line for one in found.sentences for line in bullet(one)])
    lines += section("The two days", table(_rows(found), head=DAYS))
    lines += section("Published factors", table(_factors(found), head=(*DAYS, "power")))
    return lines


def _rows(found: Corrected) -> list[tuple[str, str, str]]:
    days, system = (found.before, found.after), found.system

    def row(name: str, measure: Measure | None, get: object) -> tuple[str, str, str]:
        unit = "" if measure is None else f", {measure.shown(system)}"
        return name + unit, *(_shown(get(day), measure, system) for day in days)  # type: ignore

    return [
        row("air", TEMPERATURE, lambda day: day.weather.temperature),
        row("barometer", PRESSURE, lambda day: day.weather.pressure),
        row("humidity", SHARE, lambda day: day.weather.relative_humidity),
        row("headwind", wind(system), lambda day: day.weather.headwind),
        row("speed", SPEED, lambda day: day.speed),
        row("held by", None, lambda day: day.held_by),
        row("most power", KILOWATTS, lambda day: _value(day.power)),
        row("  at", ENGINE_SPEED, lambda day: _at(day.power)),
        row("most torque", TORQUE, lambda day: _value(day.torque)),
        row("  at", ENGINE_SPEED, lambda day: _at(day.torque)),
        ("knock margin, octane numbers", *(_margin(day) for day in days)),
        row("spark late by", ANGLE, lambda day: _late(day.retard)),
    ]


def _late(retard: float | None) -> float | None:
    return None if retard is None else held_late(retard)


def _value(peak: Peak | None) -> float | None:
    return None if peak is None else peak.value


def _at(peak: Peak | None) -> float | None:
    return None if peak is None else peak.engine_speed


def _margin(day: OnADay) -> str:
    return NONE if day.knock_margin is None else f"{day.knock_margin:+z.1f}"


def _shown(value: float | str | None, measure: Measure | None, system: str) -> str:
    if value is None:
        return NONE
    return str(value) if measure is None else measure.number(value, system, 4)  # type: ignore


def _factors(found: Corrected) -> list[tuple[str, ...]]:
    rows: list[tuple[str, ...]] = []
    for one in found.factors:
        numbers = (f"{value:.4f}" for value in (one.before, one.after))
        rows.append((NAMES[one.name], *numbers, change(one.power_ratio)))
    if found.power_ratio is not None:
        rows.append(("the model", "", "", change(found.power_ratio)))
    return rows


@content.register(Forecast)
def forecast_text(found: Forecast) -> Blocks:
    """The table of speeds."""
    system = found.system
    head = ("", *(PRESSURE.text(one, system, 4) for one in found.pressures))
    rows = [
        (TEMPERATURE.short(one, system), *(_speed(speed, system) for speed in speeds))
        for one, speeds in zip(found.temperatures, found.speed, strict=True)
    ]
    lines = [Title(found.title), *paragraph("Asked: how fast in which weather.", "")]
    lines += ["", *headline(found.sentence)]
    lines += section(f"Speed, {SPEED.shown(system)}", table(rows, head=head))
    return [*lines, "", *paragraph(NOTE)]


def _speed(value: float, system: str) -> str:
    return NONE if value != value else f"{SPEED.value(value, system):.1f}"
