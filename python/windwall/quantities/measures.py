"""Numbers for people, in the units that the scenario asks for."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any, NamedTuple

from windwall import _core

__all__ = [
    "ANGLE", "AREA", "BOOST", "DENSITY", "ENERGY", "ENGINE_SPEED", "FLOW", "FORCE", "FUEL", "HOURS",
    "KILOWATTS", "LENGTH", "MASS", "MILES", "POWER", "PRESSURE", "PRESSURE_DIFFERENCE", "ROUNDING",
    "SHARE", "SPEED", "TEMPERATURE", "TEMPERATURE_DIFFERENCE", "TIME", "TORQUE", "WIND", "Measure",
    "wind",
]  # fmt: skip

ROUNDING = 1e-12


class Measure(NamedTuple):
    """What a number measures, and the unit it is shown in unless another system is asked for."""

    dimension: str
    unit: str

    @classmethod
    def of_row(cls, row: Mapping[str, Any]) -> Measure:
        """What a row of the core measures."""
        return cls(row["dimension"], row["unit"])

    def text(self, si: float, system: str, digits: int = 3) -> str:
        """The number with its unit."""
        text = _core.readable(si, self.dimension, self.unit, system, digits)
        # 273.15 K is no whole binary number, so the ice point is not quite 0 degC.
        nothing = abs(self.value(si, system)) < ROUNDING * abs(si)
        return f"0 {self.shown(system)}" if nothing else text

    def short(self, si: float, system: str, digits: int = 4) -> str:
        """The number with its unit, without zeros that say nothing: `33 degC`."""
        number, _, unit = self.text(si, system, digits).partition(" ")
        if "." in number and "e" not in number:
            number = number.rstrip("0").rstrip(".")
        return f"{number} {unit}".rstrip()

    def number(self, si: float, system: str, digits: int = 3) -> str:
        """The number alone, for a column that names its unit once."""
        return _core.readable_number(self.value(si, system), digits)

    def change(self, si: float, system: str, decimals: int = 1) -> str:
        """A difference, with its sign."""
        return f"{self.value(si, system):+z.{decimals}f}"

    def value(self, si: float, system: str) -> float:
        return _core.in_unit(si, self.dimension, self.unit, system)

    def values(self, si: Any, system: str) -> Any:
        """A whole array or column at once, as plots need it."""
        zero = self.value(0.0, system)
        return zero + (self.value(1.0, system) - zero) * si

    @property
    def spread(self) -> Measure:
        """What a difference of two such numbers measures."""
        return TEMPERATURE_DIFFERENCE if self.dimension == TEMPERATURE.dimension else self

    @property
    def si(self) -> str:
        """The SI unit that the number is held in."""
        return _core.si_unit(self.dimension)

    def shown(self, system: str) -> str:
        """The unit that a system shows."""
        return _core.unit_shown(self.dimension, self.unit, system)


SPEED = Measure("speed", "km/h")
WIND = Measure("speed", "m/s")
MILES = Measure("speed", "mph")
ENGINE_SPEED = Measure("rotational speed", "rpm")
POWER = Measure("power", "W")
KILOWATTS = Measure("power", "kW")
MASS = Measure("mass", "kg")
DENSITY = Measure("density", "kg/m3")
FORCE = Measure("force", "N")
TORQUE = Measure("torque", "N m")
LENGTH = Measure("length", "m")
TIME = Measure("time", "s")
AREA = Measure("area", "m2")
TEMPERATURE = Measure("temperature", "degC")
TEMPERATURE_DIFFERENCE = Measure("temperature difference", "K")
PRESSURE = Measure("pressure above vacuum", "kPa")
PRESSURE_DIFFERENCE = Measure("pressure difference", "kPa")
BOOST = Measure("pressure above the local air", "kPa")
FLOW = Measure("mass flow", "g/s")
FUEL = Measure("mass flow", "kg/h")
ANGLE = Measure("angle", "deg")
SHARE = Measure("plain number", "%")
ENERGY = Measure("energy", "kJ")
HOURS = Measure("time of work", "h")


def wind(system: str) -> Measure:
    """What a weather report states a wind in."""
    return MILES if system == "us" else WIND
