"""Where to start and where to shift: the gear that accelerates most, speed by speed."""

from __future__ import annotations

from typing import TYPE_CHECKING

from windwall.errors import NoAnswer
from windwall.results.gearing import Mark, Shift
from windwall.scenario.data import ScenarioData
from windwall.scenario.info import scenario_info
from windwall.study.solve import full_throttle_curve, top_speed
from windwall.study.standing_start import timed

if TYPE_CHECKING:
    import numpy as np

__all__ = ["POINTS", "SOME_ROAD", "launch_gear", "shifts"]

POINTS = 120  # of a gear
SOME_ROAD = "400 m"


def launch_gear(scenario: ScenarioData, mark: Mark | None) -> int | None:
    """The gear to start in, from 1: that of the least time to a mark, or else the one that the
    start accelerates most in.
    """
    gears = scenario_info(scenario).gears
    if mark is None or gears == 1:
        road = scenario.get("goal/run_up") or SOME_ROAD
        answer = top_speed(scenario.set({"goal/run_up": road}), brief=True)
        return answer.run_up.start_gear if answer.answered else None
    times = {gear: _started(scenario, mark, gear) for gear in range(1, gears + 1)}
    reached = {gear: time for gear, time in times.items() if time is not None}
    return min(reached, key=reached.__getitem__) if reached else None


def _started(scenario: ScenarioData, mark: Mark, gear: int) -> float | None:
    """Seconds to a mark from a start in a gear; None where that does not get there."""
    try:
        return timed(scenario, mark, launch_gear=gear).time
    except NoAnswer:
        return None


def shifts(scenario: ScenarioData) -> tuple[Shift, ...]:
    """From every gear into the next: where that pushes as hard, or at the limit of the engine."""
    gears = scenario_info(scenario).gears
    pulls = [_pull(scenario, gear) for gear in range(1, gears + 1)]
    found = (_shift(at + 1, *pulls[at : at + 2]) for at in range(gears - 1))
    return tuple(one for one in found if one is not None)


def _pull(scenario: ScenarioData, gear: int) -> dict[str, np.ndarray]:
    """Engine speed, road speed and thrust of one gear, where it has answers."""
    import numpy as np

    curve = full_throttle_curve(scenario, gear, POINTS)
    columns = dict(zip(curve.addresses, map(np.asarray, curve.columns), strict=True))
    names = {"engine_speed": "engine/speed", "road_speed": "road/speed", "thrust": "road/thrust"}
    there = np.isfinite(columns["road/thrust"])
    return {name: columns[address][there] for name, address in names.items()}


def _shift(gear: int, this: dict[str, np.ndarray], after: dict[str, np.ndarray]) -> Shift | None:
    import numpy as np

    speed, engine_speed = this["road_speed"], this["engine_speed"]
    if len(speed) == 0 or len(after["road_speed"]) == 0:
        return None
    pushed = np.interp(speed, after["road_speed"], after["thrust"], left=-np.inf)
    better = np.flatnonzero(pushed >= this["thrust"])
    # A gear may be beaten at its lowest speeds too; what counts is where it stays beaten.
    stays = [at for at in better if np.all(pushed[at:] >= this["thrust"][at:])]
    if not stays or stays[0] == 0:
        return Shift(gear, float(engine_speed[-1]), float(speed[-1]), True)
    at = stays[0]
    gap = (this["thrust"] - pushed)[at - 1 : at + 1]
    share = gap[0] / (gap[0] - gap[1]) if np.isfinite(gap[0]) else 1.0
    engine_there, road_there = (
        float(one[at - 1] + share * (one[at] - one[at - 1])) for one in (engine_speed, speed)
    )
    return Shift(gear, engine_there, road_there, False)
