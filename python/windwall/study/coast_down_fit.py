"""Drag area and rolling resistance from coasting down: the speed itself is fitted over time.

Nothing is differentiated. With the wind w and the slope of those who drive there, A, B and C of
m dv/dt = -(A + B v + C v^2) are known for each way, and so is v(t) in closed form. Unknown are
drag area, rolling resistance, wind, slope and the speed that each run began with.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from windwall.quantities.measures import DENSITY, MASS, SHARE, WIND, Measure
from windwall.results.coast_down import SEPARABLE, CoastDownFit
from windwall.scenario.arguments import uncertain, wrong
from windwall.study.coast_down_split import HIDDEN_WIND, Known, force_alone, separate
from windwall.study.coast_down_table import Run, runs_of

__all__ = ["HIDDEN_GRADE", "ROUNDING", "coast_down_fit", "fitted"]

# One way alone tells neither wind nor slope: so much is taken to be hidden in a road called level.
HIDDEN_GRADE = 0.001
ROUNDING = 1e-6


def coast_down_fit(
    table: Any,
    mass: Any,
    air_density: Any,
    rotating_share: Any = "3 ± 1 %",
    headwind: Any = None,
    grade: Any = None,
    rolling_rise: Any = 0.0,
    units: Mapping[str, str] | None = None,
    system: str = "metric",
) -> CoastDownFit:
    """Drag area and rolling resistance from a table of time and speed.

    `table` is a DataFrame, a dict of columns or the path of a CSV file, with the columns `time` and
    `speed`, perhaps `run` (a name) and `way` (`there` or `back`); `units` names those of time and
    speed where the table does not. Wind and grade (of those who drive there) follow from two ways
    unless stated; one way takes both as nothing, give or take what a level road hides. `mass` is
    that ready to run, `rotating_share` what turning wheels add to it. Method: integral form of the
    coast-down, after G. D. Thompson, The Vehicle Road Load Problem, EPA.

    >>> rolled = car.coast_down("90 km/h", "20 km/h", points=60)
    >>> fit = ww.coast_down_fit(rolled, "348 kg", "1.112 kg/m3")
    >>> abs(fit.drag_area.value / car.get("body/drag_area") - 1) < 0.05
    True
    """
    runs = runs_of(table, units)
    both_ways = len({run.way for run in runs}) == 2
    known = Known(
        uncertain("mass", mass, MASS, "348 kg"),
        uncertain("rotating_share", rotating_share, SHARE, "3 %"),
        uncertain("air_density", air_density, DENSITY, "1.20 kg/m3"),
        uncertain("rolling_rise", rolling_rise, SHARE, "5 %")[0],
        _nuisance("headwind", headwind, WIND, both_ways, HIDDEN_WIND),
        _nuisance("grade", grade, SHARE, both_ways, HIDDEN_GRADE),
    )
    _check(known)
    return fitted(runs, known, both_ways, system)


def _nuisance(
    key: str, stated: Any, measure: Measure, both_ways: bool, hidden: float
) -> tuple[float, float] | None:
    if stated is not None:
        return uncertain(key, stated, measure, "0 ± 1 " + measure.unit)
    return None if both_ways else (0.0, hidden)


def _check(known: Known) -> None:
    for key in ("mass", "air_density"):
        if not getattr(known, key)[0] > 0:
            raise wrong(key, f"{getattr(known, key)[0]:g} is not above 0")


def fitted(runs: list[Run], known: Known, both_ways: bool, system: str) -> CoastDownFit:
    """The fit of runs; where their speeds span too little, of the force alone."""
    rows = [speed for run in runs for speed in run.speed]
    lowest, highest = float(min(rows)), float(max(rows))
    middle = (lowest + highest) / 2
    separable = highest >= SEPARABLE * lowest * (1 - ROUNDING)
    found = separate(runs, known, middle) if separable else force_alone(runs, known, middle)
    return CoastDownFit(
        **found,
        system=system,
        middle_speed=middle,
        speeds=(lowest, highest),
        mass=known.mass[0],
        accelerated_mass=known.accelerated_mass,
        air_density=known.air_density[0],
        rolling_rise=known.rolling_rise,
        runs=tuple(run.name for run in runs),
        both_ways=both_ways,
    )
