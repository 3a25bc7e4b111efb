"""Two days' runs brought together, and a speed for every weather."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any, NamedTuple

from windwall.results.views import Discussed, Worded, frame

__all__ = ["Corrected", "Factor", "Forecast", "OnADay", "Peak", "Weather"]


class Weather(NamedTuple):
    """The air of a day, SI."""

    temperature: float
    pressure: float  # a barometer's at the place
    relative_humidity: float
    headwind: float
    dry_pressure: float  # less that of the vapour


class Peak(NamedTuple):
    """The most at full throttle, SI, and the engine speed of it."""

    value: float
    engine_speed: float


class OnADay(NamedTuple):
    """What the model has on one day. SI; None where there is no answer."""

    weather: Weather
    status: str  # how the top speed ended
    speed: float | None
    held_by: str | None
    power: Peak | None
    torque: Peak | None
    knock_margin: float | None  # octane numbers, where the pull ends; in the middle of its band
    retard: float | None  # rad, later than the spark of best torque


class Factor(NamedTuple):
    """A published factor: power of its reference day over the power of the day."""

    name: str  # j1349, iso1585 or din70020
    before: float
    after: float
    valid: bool | None  # on both days; None where no limit is known

    @property
    def power_ratio(self) -> float:
        """Power on the second day over that on the first, by this factor."""
        return self.before / self.after


@dataclass(frozen=True, repr=False)
class Corrected(Discussed):
    """What was seen on one day, brought to another by the model."""

    title: str
    system: str  # of units
    before: OnADay
    after: OnADay
    observed: float | None  # m/s, seen on the first day
    factors: tuple[Factor, ...]
    blown: bool  # a blower breathes the day's air, which no factor knows of
    late_spark: bool  # the spark gives way to knock on one of the days

    @property
    def answered(self) -> bool:
        return self.before.speed is not None and self.after.speed is not None

    @property
    def speed_ratio(self) -> float | None:
        """Speed on the second day over that on the first, by the model."""
        if self.before.speed is None or self.after.speed is None:
            return None
        return self.after.speed / self.before.speed

    @property
    def power_ratio(self) -> float | None:
        """The same of the most power."""
        if self.before.power is None or self.after.power is None:
            return None
        return self.after.power.value / self.before.power.value

    @property
    def expected(self) -> float | None:
        """m/s that what was seen would have been on the second day: by the model's ratio."""
        if self.observed is None or self.speed_ratio is None:
            return None
        return self.observed * self.speed_ratio


@dataclass(frozen=True, repr=False)
class Forecast(Worded):
    """The speed for every pair of a temperature and a pressure, SI; NaN where there is none."""

    title: str
    system: str
    temperatures: tuple[float, ...]
    pressures: tuple[float, ...]
    speed: Any  # (temperatures, pressures), m/s
    power: Any  # the same, W at the flywheel where the pull balances
    dataset: Any  # all of it and how late the spark is, as an xarray Dataset

    @property
    def answered(self) -> bool:
        return bool((self.speed == self.speed).any())

    @property
    def table(self) -> Any:
        """Speeds, a pandas DataFrame in SI: a row for each temperature, a column a pressure."""
        return frame(self)
