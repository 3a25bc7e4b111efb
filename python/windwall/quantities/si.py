"""Where numbers come in: texts with units, SI floats, and quantities of other libraries."""

from __future__ import annotations

import numbers
import re
from typing import Any

from windwall.errors import whole_letters

__all__ = ["SI", "accepted", "from_foreign", "is_foreign", "si"]


class SI(float):
    """A number whose writer has said that it is in SI units."""

    def __repr__(self) -> str:
        return f"si({float(self)!r})"


def si(number: float) -> SI:
    """Says that a plain number is meant in SI units: `engine_speed=si(440)` is 440 rad/s.

    >>> ww.si(440)
    si(440.0)
    """
    return SI(number)


def _foreign_unit(udunits: str) -> str:
    """`kg m2` as most unit libraries spell it: `kg*m**2`."""
    if udunits == "1":
        return "dimensionless"
    powers = re.sub(r"(?<=[A-Za-z])(-?\d+)", r"**\1", udunits)
    return powers.replace(" ", "*")


def is_foreign(value: Any) -> bool:
    """Whether this is a quantity of a general unit library."""
    return callable(getattr(value, "to", None)) and (
        hasattr(value, "magnitude") or hasattr(value, "value")
    )


def from_foreign(value: Any, udunits: str) -> float:
    """The number in this unit of a quantity that can be asked for it."""
    try:
        converted = value.to(_foreign_unit(udunits))
    except Exception as refused:
        raise ValueError(f"{value} is not in units of {udunits}: {refused}") from refused
    number = converted.magnitude if hasattr(converted, "magnitude") else converted.value
    return float(number)


def accepted(value: Any, udunits: str) -> str | float:
    """A text as it is, and everything that is a number as a float in SI."""
    if isinstance(value, str):
        return whole_letters(value)
    if is_foreign(value):
        return from_foreign(value, udunits)
    if isinstance(value, numbers.Real) and not isinstance(value, bool):
        return float(value)
    raise TypeError(
        f"expected a text with a unit, a number in SI units or a quantity, not {value!r}"
    )
