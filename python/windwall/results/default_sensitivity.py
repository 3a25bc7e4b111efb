"""How much an answer leans on a value that nobody stated."""

from __future__ import annotations

from typing import NamedTuple

from windwall.quantities.uncertain_input import UncertainInput

__all__ = ["DefaultSensitivity"]


class DefaultSensitivity(NamedTuple):
    """A default, and the speed that one standard deviation of it is worth, m/s."""

    input: UncertainInput
    speed: float | None  # None where the vehicle has no top speed either way
