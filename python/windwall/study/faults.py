"""Which single fault fits what was read: each by its one severity, and none of them beside."""

from __future__ import annotations

from collections.abc import Iterable
from functools import lru_cache
from math import isfinite
from typing import TYPE_CHECKING, Any, NamedTuple

from windwall.errors import Problem, ScenarioError
from windwall.results.faults import (
    NO_FAULT,
    Alternative,
    FactRead,
    FaultsThatFit,
)
from windwall.scenario.data import ScenarioData
from windwall.study.diagnosis import without_menu
from windwall.study.fault_check import telling
from windwall.study.fault_curves import Readings, curve, possible
from windwall.study.fault_facts import Read, as_read, observed
from windwall.study.fault_ground import Ground, described, once_read
from windwall.study.fault_odds import Curve, Fit, Seen, chances, fit, fit_without
from windwall.study.fault_shows import at_severity, shows
from windwall.study.fault_table import FAULTS, NO_FAULT_SHARE, Fault
from windwall.study.solve import top_speed
from windwall.study.worlds import answer_measure

if TYPE_CHECKING:
    from numpy import ndarray

__all__ = [
    "NO_NUMBER", "SOUND", "Model", "alternative", "check_read", "facts_beside", "faults", "fits_of",
    "seen_of", "solved", "weighed",
]  # fmt: skip

SOUND = "no fault needed"
NO_NUMBER = "fact {at}: this vehicle has no such number where it was read"


class Model(NamedTuple):
    """Everything solved that fits are made of, whatever was read."""

    readings: Readings
    ground: Ground
    curves: dict[Fault, Curve]


def faults(
    scenario: ScenarioData,
    facts: Iterable[dict[str, Any]] | None = None,
    before: Iterable[dict[str, Any]] = (),
) -> FaultsThatFit:
    """Posterior odds of each fault that the vehicle can have, and of none.

    `facts` are what the gauges read, those under `observed` of the file unless given; `before` what
    they read when nothing was wrong. Each is a dict of a result's `address`, its `value` and
    `sigma` in SI (or a word of knock), and a `situation` of `engine_speed`, `gear`, `road_speed`,
    `retard`; without them the end of a pull.
    """
    sound = top_speed(scenario, brief=True)
    if not sound.answered:
        raise sound.no_answer()
    read = as_read(observed(scenario) if facts is None else facts)
    once = [one for one in as_read(before) if not isinstance(one.value, str)]
    columns = tuple((one.situation, one.address) for one in read)
    model = solved(without_menu(scenario), columns, tuple(once))
    check_read(model, read)
    return weighed(model, read, once)


def check_read(model: Model, read: list[Read]) -> None:
    """Refuses what the model has no number for."""
    problems = [
        Problem(one.address, 0, 0, NO_NUMBER.format(at=at))
        for at, (one, number) in enumerate(zip(read, model.ground.middle, strict=False), 1)
        if not isfinite(number)
    ]
    if problems:
        raise ScenarioError(problems)


@lru_cache(maxsize=4)
def solved(
    scenario: ScenarioData,
    columns: tuple[tuple[tuple[Any, ...], str], ...],
    before: tuple[Read, ...],
) -> Model:
    """The vehicle when sound and with each fault, read where the facts were."""
    readings = Readings(scenario, columns)
    ground = once_read(readings, list(before)) if before else described(readings)
    curves = {
        fault: curve(readings, fault, ground.scenario, ground.middle)
        for fault in possible(scenario)
    }
    told = {fault: one for fault, one in curves.items() if len(one.severities) > 1}
    return Model(readings, ground, told)


def weighed(model: Model, read: list[Read], before: list[Read]) -> FaultsThatFit:
    """What was read against every alternative."""
    scenario = model.readings.scenario
    fits = fits_of(model, read)
    share = (1 - NO_FAULT_SHARE) / max(len(model.curves), 1)
    priors = [NO_FAULT_SHARE if fault is None else share for fault in fits]
    odds = chances([one.evidence for one in fits.values()], priors)
    rows = [
        alternative(model, fault, found, prior, chance)
        for (fault, found), prior, chance in zip(fits.items(), priors, odds, strict=True)
    ]
    ordered = tuple(sorted(rows, key=lambda one: -one.chance))
    missing = tuple(one.title for one in FAULTS if one not in model.curves)
    return FaultsThatFit(
        title=scenario.name,
        system=scenario.system,
        facts=tuple(facts_beside(model, read, ordered[0])),
        alternatives=ordered,
        impossible=missing,
        telling=telling(
            model.readings, model.ground, model.curves, ordered[:2], seen_of(model, read)
        ),
        before=len(before),
    )


def seen_of(model: Model, read: list[Read]) -> Seen:
    """What was read, as the odds take it."""
    import numpy as np

    words = {at: one.value for at, one in enumerate(read) if isinstance(one.value, str)}
    values = [np.nan if at in words else one.value for at, one in enumerate(read)]
    sigmas = [one.sigma for one in read]
    return Seen(np.array(values), np.array(sigmas), words, model.ground.gradient[: len(read)])


def fits_of(model: Model, read: list[Read]) -> dict[Fault | None, Fit]:
    """Of none and of each fault."""
    seen, middle = seen_of(model, read), model.ground.middle
    found: dict[Fault | None, Fit] = {None: fit_without(seen, middle)}
    return found | {fault: fit(seen, one) for fault, one in model.curves.items()}


def alternative(
    model: Model, fault: Fault | None, found: Fit, prior: float, chance: float
) -> Alternative:
    """One row of the answer."""
    if fault is None:
        none = (None, None, None, "")
        return Alternative(NO_FAULT, SOUND, prior, chance, *none, found.evidence, found.misfit)
    return Alternative(
        id=fault.id,
        title=fault.title,
        prior=prior,
        chance=chance,
        severity=found.severity,
        spread=found.spread,
        measure=fault.measure,
        told=fault.severity,
        evidence=found.evidence,
        misfit=found.misfit,
        shows=shows(model.readings, model.ground.middle, model.curves[fault], found.severity),
    )


def facts_beside(model: Model, read: list[Read], best: Alternative) -> Iterable[FactRead]:
    """Every fact, with the model's number when sound and by the likeliest alternative."""
    middle, gradient = model.ground.middle, model.ground.gradient
    by_id = {fault.id: one for fault, one in model.curves.items()}
    there: ndarray = at_severity(by_id[best.id], best.severity) if best.is_fault else middle
    for at, one in enumerate(read):
        spread = float((gradient[at] ** 2).sum() ** 0.5)
        yield FactRead(
            address=one.address,
            value=one.value,
            sigma=one.sigma,
            model=float(middle[at]),
            model_sigma=spread,
            measure=answer_measure(one.address),
            source=one.source,
            fitted=float(there[at]),
        )
