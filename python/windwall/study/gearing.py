"""The best value of a ratio or a sprocket, found by trying: whole teeth all of them, a ratio on a
grid that is drawn closer around the best.
"""

from __future__ import annotations

from difflib import get_close_matches
from typing import Any

from windwall import _core
from windwall.errors import ScenarioError
from windwall.results.gearing import BestGearing, Longer, Mark, Shift, Tried
from windwall.scenario.arguments import wrong
from windwall.scenario.data import ScenarioData, a_scenario
from windwall.scenario.inputs import row
from windwall.study.gearing_search import Search, allowed, speeds, whole
from windwall.study.shifts import launch_gear, shifts
from windwall.study.standing_start import read_mark

__all__ = [
    "FINAL", "GEARS", "LONGEST", "REACH", "STEP", "STEPS", "best_gearing", "final_address",
    "longer_gearing",
]  # fmt: skip

# What is changed to gear a vehicle anew, by the kind of the last part that can be.
FINAL = {"chain": "teeth_rear", "final_drive": "ratio", "belt": "diameter_rear"}
# And what else of the driveline is a gearing.
GEARS = (
    "teeth_front", "teeth_rear", "ratio", "diameter_front", "diameter_rear", "low_ratio",
    "high_ratio",
)  # fmt: skip
REACH = 1.6  # times the value there is, either way
LONGEST = 1.25  # times as long, to where a gearing is looked for that reaches a speed
STEP, STEPS = 0.005, 41  # share by which a ratio that is no whole number is then changed


def best_gearing(
    scenario: ScenarioData, address: str | None = None, mark: Any = None, reach: float = REACH
) -> BestGearing:
    """The value of `address` (the last sprocket, ratio or pulley unless stated) for the highest
    speed, at the end of the goal's road where it names one, or for the least time to `mark`, a
    distance or a speed with its unit. Ctrl-C stops it; what was tried until then is in the answer.
    Raises `ScenarioError` where there is nothing to try or `address` is no gearing, and `NoAnswer`
    where nothing that was tried has an answer.

    >>> best = ww.best_gearing(car)
    >>> best.address, best.whole, 20 < best.best.value < 40
    ('driveline/final_chain/teeth_rear', True, True)
    """
    scenario = a_scenario(scenario, "best_gearing")
    if not reach >= 1:
        raise wrong(
            "reach", f"{reach:g} is below 1: the value there is has to be among those tried"
        )
    address = final_address(scenario) if address is None else _gearing(scenario, address)
    now = _number(scenario, address)
    counted = _counted(scenario, address)
    aim = None if mark is None else read_mark(mark)
    search = Search(scenario, address, aim)
    search.run(now, reach, counted)
    best = search.best()
    gear, changes, stopped = _driven(scenario.set({address: best.value}), aim, search.stopped)
    return BestGearing(
        system=scenario.system,
        address=address,
        measure=scenario.measure(address),
        whole=counted,
        mark=aim,
        run_up=scenario.get("goal/run_up"),
        now=next((one for one in search.tried if one.value == now), Tried(now, None)),
        best=best,
        tried=tuple(search.tried),
        launch_gear=gear,
        shifts=changes,
        wanted=search.wanted,
        stopped=stopped,
    )


def _driven(
    geared: ScenarioData, mark: Mark | None, stopped: bool
) -> tuple[int | None, tuple[Shift, ...], bool]:
    """How the gears are used with it; nothing of it where somebody stops that."""
    if stopped:
        return None, (), True
    try:
        return launch_gear(geared, mark), shifts(geared), False
    except KeyboardInterrupt:
        return None, (), True


def _gearing(scenario: ScenarioData, address: str) -> str:
    """An address that gears the vehicle; raises with those that do where it is none."""
    numbers = [one for one, _ in _core.numbers(scenario.core) if one.startswith("driveline/")]
    there = [one for one in numbers if one.rpartition("/")[2] in GEARS]
    if address in there:
        return address
    near = get_close_matches(address, there, 1)
    meant = f"; did you mean {near[0]}?" if near else ""
    said = ", ".join(there) or "this vehicle has none"
    raise wrong(address, f"only a number that gears the driveline can be tried: {said}{meant}")


def _counted(scenario: ScenarioData, address: str) -> bool:
    """Whether it takes whole numbers only, as teeth do."""
    found: str = row(scenario.document(), address).get("$ref", "")
    return found.endswith("whole_number")


def final_address(scenario: ScenarioData) -> str:
    """The last sprocket, ratio or pulley of the driveline."""
    for part in reversed(scenario.document()["driveline"]):
        if part["kind"] in FINAL:
            return f"driveline/{part['id']}/{FINAL[part['kind']]}"
    raise wrong("address", "the driveline ends in no chain, final_drive or belt: state what to try")


def longer_gearing(scenario: ScenarioData, speed: float) -> Longer | None:
    """The first value on the way to a longer gearing with which a speed in m/s is reached, without
    one where none is; None where nothing can be geared anew.
    """
    try:
        address = final_address(scenario)
        now = _number(scenario, address)
    except ScenarioError:
        return None
    steps = [now * (1 - STEP * at) for at in range(1, STEPS)]
    values = whole(now, LONGEST) if _counted(scenario, address) else steps
    nearest = allowed(scenario, address, (one for one in values if one < now))[::-1]
    tried = map(Tried, nearest, speeds(scenario, address)(nearest))
    found = next((one for one in tried if (one.merit or 0.0) >= speed), Tried(now, None))
    value = None if found.merit is None else found.value
    return Longer(address, scenario.measure(address), now, value, found.merit)


def _number(scenario: ScenarioData, address: str) -> float:
    found = scenario.get(address)
    if not isinstance(found, float) or not found > 0:
        raise wrong(address, "only a number above 0 that is there can be tried for gearing")
    return found
