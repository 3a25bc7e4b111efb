"""What an answer leans on, and the day, as plain documents for JSON and as pandas objects."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from windwall.results.day import Corrected, Forecast, OnADay
from windwall.results.leans_on import Leaning, LeansOn
from windwall.results.views import document, frame

if TYPE_CHECKING:
    import pandas

__all__ = [
    "DAY_UNITS", "corrected_document", "forecast_document", "forecast_frame", "leans_document",
    "leans_frame",
]  # fmt: skip

DAY_UNITS = {
    "speed": "m/s",
    "observed": "m/s",
    "expected": "m/s",
    "power/value": "W",
    "torque/value": "N m",
    "engine_speed": "rad/s",
    "retard": "rad",
    "weather/temperature": "K",
    "weather/pressure": "Pa",
    "weather/dry_pressure": "Pa",
    "weather/headwind": "m/s",
}


@document.register(LeansOn)
def leans_document(found: LeansOn) -> dict[str, Any]:
    """The answer to `windwall leans`."""
    return {
        "title": found.title,
        "answered": found.answered,
        "sentence": found.sentence,
        "sentences": found.sentences,
        "pair": [list(one) for one in found.pair],
        "rows": found.rows,
        "rows_planned": found.plan.rows,
        "speeds_planned": found.plan.speeds,
        "leanings": [_leaning(one) for one in found.leanings],
        "units": {"mean": "m/s", "sigma": "m/s", "step": "m/s"}
        | dict.fromkeys(("first", "first_error", "total", "total_error"), "1"),
    }


def _leaning(one: Leaning) -> dict[str, Any]:
    return one._asdict() | {"leans": [each._asdict() for each in one.leans]}


@frame.register(LeansOn)
def leans_frame(found: LeansOn) -> pandas.DataFrame:
    """One row for each number of each answer; the last of each is all others together."""
    import pandas as pd

    rows = [{"of": of.of} | one._asdict() for of in found.leanings for one in of.leans]
    made = pd.DataFrame(rows)
    made.attrs["units"] = {"step": "m/s"}
    return made


@document.register(Corrected)
def corrected_document(found: Corrected) -> dict[str, Any]:
    """The answer to `windwall day` for one day."""
    return {
        "title": found.title,
        "answered": found.answered,
        "sentence": found.sentence,
        "sentences": found.sentences,
        "first": _day(found.before),
        "second": _day(found.after),
        "speed_ratio": found.speed_ratio,
        "power_ratio": found.power_ratio,
        "observed": found.observed,
        "expected": found.expected,
        "factors": [one._asdict() | {"power_ratio": one.power_ratio} for one in found.factors],
        "units": DAY_UNITS,
    }


def _day(day: OnADay) -> dict[str, Any]:
    made = day._asdict() | {"weather": day.weather._asdict()}
    peaks = {key: made[key] and made[key]._asdict() for key in ("power", "torque")}
    return made | peaks


@document.register(Forecast)
def forecast_document(found: Forecast) -> dict[str, Any]:
    """The answer to `windwall day` for several."""
    return {
        "title": found.title,
        "answered": found.answered,
        "sentence": found.sentence,
        "temperatures": list(found.temperatures),
        "pressures": list(found.pressures),
        "speed": found.speed.tolist(),
        "power": found.power.tolist(),
        "units": {"temperatures": "K", "pressures": "Pa", "speed": "m/s", "power": "W"},
    }


@frame.register(Forecast)
def forecast_frame(found: Forecast) -> pandas.DataFrame:
    """A row for each temperature, a column for each pressure."""
    import pandas as pd

    made = pd.DataFrame(
        found.speed,
        index=pd.Index(found.temperatures, name="temperature"),
        columns=pd.Index(found.pressures, name="pressure"),
    )
    made.attrs["units"] = {"speed": "m/s", "temperature": "K", "pressure": "Pa"}
    return made
