"""Which fault fits what was read."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any, NamedTuple

from windwall.quantities.measures import Measure
from windwall.results.views import Worded, frame

__all__ = ["NO_FAULT", "Alternative", "FactRead", "FaultsThatFit", "Shown", "Telling"]

NO_FAULT = "none"


class FactRead(NamedTuple):
    """One thing that was read, beside a sound vehicle. SI; knock is a word beside a margin."""

    address: str
    value: float | str
    sigma: float
    model: float
    model_sigma: float  # by what is not known of the vehicle
    measure: Measure
    source: str
    fitted: float | None = None  # by the likeliest alternative

    @property
    def off(self) -> float | None:
        """Standard deviations, of sensor and vehicle together, that the model lies above."""
        if isinstance(self.value, str):
            return None
        return (self.model - self.value) / (self.sigma**2 + self.model_sigma**2) ** 0.5


class Shown(NamedTuple):
    """What a gauge would show with a fault, beside a sound vehicle. SI."""

    title: str
    address: str
    sound: float
    faulty: float
    sigmas: float  # of the gauge
    measure: Measure


class Alternative(NamedTuple):
    """One fault, or none, and how well it fits."""

    id: str
    title: str
    prior: float
    chance: float
    severity: float | None  # SI, mean; None of no fault
    spread: float | None
    measure: Measure | None
    told: str  # a template for its severity
    evidence: float  # logarithm, of what was read
    misfit: float  # squares of what its best severity leaves, in standard deviations
    shows: tuple[Shown, ...] = ()

    @property
    def is_fault(self) -> bool:
        return self.id != NO_FAULT


class Telling(NamedTuple):
    """The one check that tells the first two apart."""

    says: str
    hours: float
    care: str
    apart: float  # standard deviations that it would lie between them
    of: str  # the fault that it finds, or the gauge that it is read on


@dataclass(frozen=True, repr=False)
class FaultsThatFit(Worded):
    """Single faults by their chance, the likeliest first. SI."""

    title: str
    system: str  # of units
    facts: tuple[FactRead, ...]
    alternatives: tuple[Alternative, ...]
    impossible: tuple[str, ...]  # faults of parts that the vehicle does not have
    telling: Telling | None
    before: int  # facts that were read when it was sound

    answered = True  # a vehicle without a speed raises `NoAnswer` before

    @property
    def chances(self) -> dict[str, float]:
        """Of each alternative, by its id."""
        return {one.id: one.chance for one in self.alternatives}

    @property
    def frame(self) -> Any:
        """One row for each alternative, a pandas DataFrame in SI."""
        return frame(self)
