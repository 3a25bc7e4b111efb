"""An input and how well it is known."""

from __future__ import annotations

from typing import NamedTuple

from windwall.quantities.measures import Measure

__all__ = ["UncertainInput"]


class UncertainInput(NamedTuple):
    """An input that is not known exactly: a value with its +/-, or a default with its own. SI."""

    address: str
    sentence: str
    value: float
    sigma: float
    given: bool
    measure: Measure
