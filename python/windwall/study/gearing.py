"""The best value of a ratio or a sprocket, found by trying: whole teeth all of them, a ratio on a
grid that is drawn closer around the best.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from typing import Any

from windwall import _core
from windwall.errors import NoAnswer, ScenarioError
from windwall.results.gearing import BestGearing, Longer, Mark, Tried
from windwall.scenario.arguments import wrong
from windwall.scenario.data import ScenarioData, a_scenario
from windwall.scenario.inputs import row
from windwall.study.shifts import launch_gear, shifts
from windwall.study.standing_start import read_mark, timed

__all__ = [
    "CLOSER", "FINAL", "GRID", "LONGEST", "REACH", "STEP", "STEPS", "Merits", "best_gearing",
    "final_address", "longer_gearing",
]  # fmt: skip

# What is changed to gear a vehicle anew, by the kind of the last part that can be.
FINAL = {"chain": "teeth_rear", "final_drive": "ratio", "belt": "diameter_rear"}
REACH = 1.6  # times the value there is, either way
GRID = 25
LONGEST = 1.25  # times as long, to where a gearing is looked for that reaches a speed
STEP, STEPS = 0.005, 41  # share by which a ratio that is no whole number is then changed
CLOSER = 2  # times that a grid is drawn around the best

Merits = Callable[[list[float]], list[float | None]]


def best_gearing(
    scenario: ScenarioData, address: str | None = None, mark: Any = None, reach: float = REACH
) -> BestGearing:
    """The value of `address` (the last sprocket, ratio or pulley unless stated) for the highest
    speed, at the end of the goal's road where it names one, or for the least time to `mark`, a
    distance or a speed with its unit. Raises `ScenarioError` where there is nothing to try and
    `NoAnswer` where nothing that was tried has an answer.

    >>> best = ww.best_gearing(car)
    >>> best.address, best.whole, 20 < best.best.value < 40
    ('driveline/final_chain/teeth_rear', True, True)
    """
    scenario = a_scenario(scenario, "best_gearing")
    if not reach >= 1:
        raise wrong(
            "reach", f"{reach:g} is below 1: the value there is has to be among those tried"
        )
    address = final_address(scenario) if address is None else address
    now = _number(scenario, address)
    whole = row(scenario.document(), address).get("$ref", "").endswith("whole_number")
    aim = None if mark is None else read_mark(mark)
    merits = _speeds(scenario, address) if aim is None else _times(scenario, address, aim)
    tried = _searched(scenario, address, now, whole, reach, merits, highest=aim is None)
    best = _best(tried, highest=aim is None)
    geared = scenario.set({address: best.value})
    return BestGearing(
        system=scenario.system,
        address=address,
        measure=scenario.measure(address),
        whole=whole,
        mark=aim,
        run_up=scenario.get("goal/run_up"),
        now=next(one for one in tried if one.value == now),
        best=best,
        tried=tuple(tried),
        launch_gear=launch_gear(geared, aim),
        shifts=shifts(geared),
    )


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
    whole = row(scenario.document(), address).get("$ref", "").endswith("whole_number")
    values = _whole(now, LONGEST) if whole else [now * (1 - STEP * at) for at in range(1, STEPS)]
    nearest = sorted(_allowed(scenario, address, (one for one in values if one < now)))[::-1]
    tried = _tried(_speeds(scenario, address), nearest)
    found = next((one for one in tried if (one.merit or 0.0) >= speed), Tried(now, None))
    value = None if found.merit is None else found.value
    return Longer(address, scenario.measure(address), now, value, found.merit)


def _number(scenario: ScenarioData, address: str) -> float:
    found = scenario.get(address)
    if not isinstance(found, float) or not found > 0:
        raise wrong(address, "only a number above 0 that is there can be tried for gearing")
    return found


def _speeds(scenario: ScenarioData, address: str) -> Merits:
    def speeds(values: list[float]) -> list[float | None]:
        found = _core.sweep(scenario.core, [address], [values], [], 0, None)["speed"]
        return [float(one) if one == one else None for one in found]

    return speeds


def _times(scenario: ScenarioData, address: str, mark: Mark) -> Merits:
    def times(values: list[float]) -> list[float | None]:
        return [_time(scenario.set({address: value}), mark) for value in values]

    return times


def _time(scenario: ScenarioData, mark: Mark) -> float | None:
    try:
        return timed(scenario, mark).time
    except NoAnswer:
        return None


def _searched(
    scenario: ScenarioData,
    address: str,
    now: float,
    whole: bool,
    reach: float,
    merits: Merits,
    highest: bool,
) -> list[Tried]:
    """Everything that was tried, by value; the value there is among it."""
    values = _whole(now, reach) if whole else _between(now / reach, now * reach)
    tried = _tried(merits, _allowed(scenario, address, {*values, now}))
    for _ in range(0 if whole else CLOSER):
        at = tried.index(_best(tried, highest))
        beside = tried[max(at - 1, 0)], tried[min(at + 1, len(tried) - 1)]
        closer = {*_between(beside[0].value, beside[1].value)} - {one.value for one in tried}
        tried = sorted([*tried, *_tried(merits, sorted(closer))])
    return tried


def _whole(now: float, reach: float) -> list[float]:
    return [float(one) for one in range(round(now / reach), round(now * reach) + 1)]


def _between(low: float, high: float) -> list[float]:
    return [low * (high / low) ** (step / (GRID - 1)) for step in range(GRID)]


def _allowed(scenario: ScenarioData, address: str, values: Iterable[float]) -> list[float]:
    """Those that the row takes, by size."""
    return [value for value in sorted(values) if _takes(scenario, address, value)]


def _takes(scenario: ScenarioData, address: str, value: float) -> bool:
    try:
        _core.axis(scenario.core, address, [value])
    except ScenarioError:
        return False
    return True


def _tried(merits: Merits, values: list[float]) -> list[Tried]:
    return [Tried(*one) for one in zip(values, merits(values), strict=True)]


def _best(tried: list[Tried], highest: bool) -> Tried:
    answered = [one for one in tried if one.merit is not None]
    if not answered:
        raise NoAnswer("No gearing that was tried has an answer.", "no_answer")
    return (max if highest else min)(answered, key=lambda one: one.merit or 0.0)
