"""Sliders over the inputs of a scenario, with the answer beside them."""

from __future__ import annotations

from collections.abc import Iterable
from typing import TYPE_CHECKING

from windwall.scenario.data import ScenarioData
from windwall.sliders.asked import Moved, moved, shown
from windwall.sliders.twin import Places

if TYPE_CHECKING:
    from windwall.sliders.explorer import Explorer

__all__ = ["SHOW", "explore"]

SHOW = ("manifold/boost", "manifold/temperature", "engine/power", "knock/margin", "knock/retard")


def explore(
    car: ScenarioData, inputs: Moved = None, show: Iterable[str] | None = None
) -> Explorer | Places:
    """Sliders in a notebook: the top speed, results and whatever is to be minded follow each move.

    `inputs` names what is moved, `{"body/mass": ("300 kg", "400 kg")}`, an address alone for a
    usual range, or nothing for blower drive, gearing, mass, drag area and the day. Ranges are texts
    with units or SI floats; the sliders show the units of the scenario. `show` names results by
    their address, read at the balance speed, such as `["manifold/boost", "knock/margin"]`.

    `.scenario` is the moved scenario, `.reset()` goes back to the file, `.save(path)` writes it.
    Without anywidget it is a table of a few places of each slider. Raises `ScenarioError` with
    all that is wrong with addresses and ranges.

    >>> import windwall as ww
    >>> car = ww.load("scenarios/airfield_cyclecar.json")
    >>> mass = ww.explore(car, {"body/mass": ("300 kg", "400 kg")})
    >>> mass.scenario == car
    True
    """
    sliders = moved(car, inputs)
    told = shown(car, _there(car) if show is None else show)
    try:
        import anywidget  # noqa: F401
    except ImportError:
        return Places(car, sliders, told)
    from windwall.sliders.explorer import Explorer

    return Explorer(car, sliders, told)


def _there(car: ScenarioData) -> list[str]:
    """Of the usual results, those that this vehicle has: a torque curve knows no knock."""
    return [one for one in SHOW if car.has_knock_anchor or not one.startswith("knock/")]
