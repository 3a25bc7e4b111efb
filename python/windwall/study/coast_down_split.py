"""Drag area and rolling resistance, or where speeds span too little for that, the force alone."""

from __future__ import annotations

from math import hypot
from typing import TYPE_CHECKING, Any, NamedTuple

from windwall.results.coast_down import GRAVITY, Estimate
from windwall.study.coast_down_solve import RISE_SPEED, Road, Solution, Vehicle, solve
from windwall.study.coast_down_table import Run

if TYPE_CHECKING:
    import numpy as np

__all__ = ["FIRST", "HIDDEN_WIND", "USUAL_DRAG", "Known", "force_alone", "separate"]

FIRST = {"drag_area": 0.5, "rolling_resistance": 0.015, "headwind": 0.0, "grade": 0.0}
USUAL_DRAG = 0.6  # of the force; the force is then right on average over all shares
HIDDEN_WIND = 0.5  # m/s: so much a day called calm hides


class Known(NamedTuple):
    """What the road does not tell: value and standard deviation of each, SI."""

    mass: tuple[float, float]
    rotating_share: tuple[float, float]
    air_density: tuple[float, float]
    rolling_rise: float
    headwind: tuple[float, float] | None  # None where both ways tell it
    grade: tuple[float, float] | None

    @property
    def accelerated_mass(self) -> float:
        return self.mass[0] * (1 + self.rotating_share[0])

    @property
    def vehicle(self) -> Vehicle:
        mass, density = self.mass[0], self.air_density[0]
        return Vehicle(mass, self.accelerated_mass, density, self.rolling_rise)


def _nuisances(known: Known) -> tuple[dict[str, float], dict[str, tuple[float, float]]]:
    """What is fixed of wind and grade, and what is unknown within a standard deviation."""
    stated = {"headwind": known.headwind, "grade": known.grade}
    held = {name: one for name, one in stated.items() if one is not None}
    fixed = {name: value for name, (value, sigma) in held.items() if sigma == 0}
    return fixed, {name: one for name, one in held.items() if one[1] > 0}


def separate(runs: list[Run], known: Known, middle: float) -> dict[str, Any]:
    """Drag area and rolling resistance."""
    fixed, held = _nuisances(known)
    names = tuple(name for name in FIRST if name not in fixed)

    def road(unknown: np.ndarray) -> Road:
        return Road(**fixed, **dict(zip(names, unknown, strict=True)))

    priors = [(names.index(name), *one) for name, one in held.items()]
    found = solve(runs, known.vehicle, road, [FIRST[name] for name in names], priors)
    worth = _worth(known, middle)
    force = Estimate(
        float(worth @ found.unknowns[:2]),
        float(worth @ found.covariance[:2, :2] @ worth) ** 0.5,
    )
    covariance = found.covariance.copy()
    covariance[:2, :2] += _of_scale(known, *found.unknowns[:2])
    found = found._replace(covariance=covariance)
    return _told(found, names, fixed) | {"force": _scaled(known, force)}


def _worth(known: Known, speed: float) -> np.ndarray:
    """N at a speed, in still air on the level, for a unit of drag area and one of rolling."""
    import numpy as np

    rise = 1 + known.rolling_rise * (speed / RISE_SPEED) ** 2
    return np.array([known.air_density[0] * speed**2 / 2, known.mass[0] * GRAVITY * rise])


def _of_scale(known: Known, drag: float, rolling: float) -> np.ndarray:
    """Covariance from not knowing mass, turning wheels and air exactly, which scale the answer."""
    import numpy as np

    mass, share = _doubts_of_mass(known)
    density = known.air_density[1] / known.air_density[0]
    moves = ([drag * mass, 0.0], [drag * share, rolling * share], [drag * density, 0.0])
    return np.sum([np.outer(one, one) for one in moves], axis=0)


def _doubts_of_mass(known: Known) -> tuple[float, float]:
    """Relative, of the mass and of what turning wheels add."""
    share, sigma = known.rotating_share
    return known.mass[1] / known.mass[0], sigma / (1 + share)


def _scaled(known: Known, force: Estimate) -> Estimate:
    """A force with the doubts of the mass that was slowed down."""
    return Estimate(
        force.value, hypot(force.sigma, *(force.value * one for one in _doubts_of_mass(known)))
    )


def force_alone(runs: list[Run], known: Known, middle: float) -> dict[str, Any]:
    """The force at the middle of the speeds by a usual share of drag in it, give or take what none
    of it and all of it make of the force.
    """
    found, names, fixed = _by_share(runs, known, middle, USUAL_DRAG)
    ends = [_by_share(runs, known, middle, share)[0].unknowns[0] for share in (0.0, 1.0)]
    told = _told(found, names, fixed)
    force = told.pop("force")
    split = abs(float(ends[1] - ends[0])) / 12**0.5  # of an even chance between the two
    aside = () if len({run.way for run in runs}) == 2 else _aside(known, force.value, middle)
    force = _scaled(known, Estimate(force.value, hypot(force.sigma, split, *aside)))
    told |= {"headwind": Estimate(*(known.headwind or (0.0, HIDDEN_WIND)))}
    told |= {} if known.grade is None else {"grade": Estimate(*known.grade)}
    return told | {"force": force, "drag_area": None, "rolling_resistance": None}


def _aside(known: Known, force: float, speed: float) -> tuple[float, float]:
    """N that wind and grade may have pushed or held one way."""
    wind, grade = known.headwind or (0.0, 0.0), known.grade or (0.0, 0.0)
    return USUAL_DRAG * force * 2 * wind[1] / speed, known.mass[0] * GRAVITY * grade[1]


def _by_share(
    runs: list[Run], known: Known, middle: float, share: float
) -> tuple[Solution, tuple[str, ...], dict[str, float]]:
    """The force with a share of it drag. Wind and a stated grade are held: they would take the
    place of the share that is not known.
    """
    fixed = {"headwind": (known.headwind or (0.0, 0.0))[0]}
    fixed |= {} if known.grade is None else {"grade": known.grade[0]}
    names = ("force",) if "grade" in fixed else ("force", "grade")
    drag, rolling = _worth(known, middle)

    def road(unknown: np.ndarray) -> Road:
        numbers = fixed | dict(zip(names, unknown, strict=True))
        force = numbers.pop("force")
        return Road(share * force / drag, (1 - share) * force / rolling, **numbers)

    first = {"force": 2 * rolling * FIRST["rolling_resistance"], "grade": 0.0}
    found = solve(runs, known.vehicle, road, [first[name] for name in names], ())
    return found, names, fixed


def _told(found: Solution, names: tuple[str, ...], fixed: dict[str, float]) -> dict[str, Any]:
    """What every fit tells: each unknown with its standard deviation, and how the rows lie."""
    sigma = found.covariance.diagonal() ** 0.5
    estimates = {
        name: Estimate(float(value), float(spread))
        for name, value, spread in zip(names, found.unknowns, sigma, strict=True)
    }
    return estimates | {
        **{name: Estimate(value, 0.0) for name, value in fixed.items()},
        "names": names,
        "covariance": tuple(tuple(map(float, row)) for row in found.covariance),
        "scatter": float(found.scatter),
        "memory": float(found.memory),
        "start_speeds": tuple(map(float, found.start_speeds)),
    }
