"""Road speeds that come without a unit: in m/s as every bare number, though most people count them
in km/h or mph. What was hardly meant so is refused; what nothing bears out is told.
"""

from __future__ import annotations

import sys
import warnings
from collections.abc import Iterable
from numbers import Real
from typing import Any

from windwall import _core
from windwall.errors import Problem, ScenarioError
from windwall.quantities.measures import SPEED, Measure
from windwall.quantities.si import SI

__all__ = ["FAR", "FASTEST", "READ_AS", "REFUSED", "far_speeds"]

FAR = 2.0  # times the speed that bears it out, beyond which a bare number was not meant in m/s
FASTEST = 70.0  # m/s, likewise where nothing does; chosen by the project
REFUSED = (
    "{said} what? As m/s it is {reading}{beyond}; "
    'write "{said} {unit}", or si({said}) for {said} m/s'
)
READ_AS = (
    "{address}: {said} is read as {said} m/s, which is {reading}; "
    'write "{said} {unit}" or si({said}) to say which is meant'
)


def far_speeds(scenario: Any, address: str, values: Iterable[Any]) -> list[Problem]:
    """What is wrong with bare numbers that would be speeds far beyond the one that stands there,
    or, where none does, beyond what the vehicle reaches; a UserWarning of those that are taken
    with nothing to bear them out. What says its unit, and `si(x)`, may be any.
    """
    bare = [one for one in values if _is_bare(one)]
    if not bare:
        return []
    try:
        now, measure = scenario.get(address), scenario.measure(address)
    except ScenarioError:  # it is of what was observed, and no number of the vehicle
        return []
    if measure != SPEED:
        return []
    most, beyond = _bound(scenario, now)
    far = [one for one in bare if abs(float(one)) > most]
    if not now and not far:
        message = READ_AS.format(address=address, **_words(bare[-1], measure, scenario.system))
        warnings.warn(message, UserWarning, stacklevel=_outside())
    words = [_words(one, measure, scenario.system) for one in far]
    return [Problem(address, 0, 0, REFUSED.format(beyond=beyond, **one)) for one in words]


def _is_bare(value: Any) -> bool:
    return isinstance(value, Real) and not isinstance(value, (bool, SI))


def _outside() -> int:
    """How many frames up from `far_speeds` the one is who gave the number."""
    frame, level = sys._getframe(1), 1
    while frame.f_back and frame.f_globals.get("__name__", "").startswith("windwall."):
        frame, level = frame.f_back, level + 1
    return level


def _words(value: Any, measure: Measure, system: str) -> dict[str, str]:
    reading = measure.short(float(value), system)
    return {"said": f"{float(value):g}", "reading": reading, "unit": measure.shown(system)}


def _bound(scenario: Any, now: float | None) -> tuple[float, str]:
    """The largest that is taken, m/s, and what it is seen by, in words."""
    if now:
        return FAR * abs(now), f", far beyond the {SPEED.short(now, scenario.system)} here"
    reached = _core.top_speed(scenario.core, brief=True)["speed"]
    if not reached:
        return FASTEST, ""
    words = SPEED.short(reached, scenario.system)
    return FAR * reached, f", far beyond the {words} that this vehicle reaches"
