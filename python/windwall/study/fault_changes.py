"""What each fault does to a vehicle: inputs that exist, moved by one severity."""

from __future__ import annotations

from collections.abc import Callable
from functools import lru_cache
from typing import NamedTuple

import numpy as np

from windwall import _core
from windwall.scenario.data import ScenarioData
from windwall.study.readings import part_ids
from windwall.study.solve import full_throttle_curve

__all__ = [
    "BAY_RISE", "COLUMNS", "HOTTEST_BAY", "INTAKE_SHARE", "LATEST", "LEAK", "ROWS", "SLIPS",
    "Change", "Faulty", "belt_slip", "brake", "bypass_open", "changed", "filter_blocked",
    "given_sparks", "hot_intake", "late_spark", "leak", "lean", "nozzle_blocked", "scaled", "slip",
    "with_later_spark",
]  # fmt: skip

LEAK = "leak_fault"  # the id of a hole that only a fault brings
HOTTEST_BAY = 80.0  # K above the day at standstill, the end of what the row allows
INTAKE_SHARE, BAY_RISE = "under_hood/intake_share", "under_hood/rise"
COLUMNS = {"engine_speed": "rad/s", "retard": "rad"}
ROWS = 16  # of a table of sparks
LATEST = np.radians(40)  # the end of what the column of a table allows
# The input by which each kind of part loses speed to the road.
SLIPS = {"gearbox": "ratios", "belt_cvt": "slip", "final_drive": "ratio"}


class Faulty(NamedTuple):
    """A vehicle with a fault, and by how much its spark is later than anybody thinks, rad."""

    scenario: ScenarioData
    later: float = 0.0


Change = Callable[[ScenarioData, float], Faulty]


def leak(scenario: ScenarioData, area: float) -> Faulty:
    """A hole of some m2 straight behind the blower."""
    document = scenario.without_menu()
    path = document["charge_path"]
    at = [part["id"] for part in path].index(part_ids(scenario)["blower"])
    if area > 0:
        path.insert(at + 1, {"id": LEAK, "kind": "leak", "area": f"{area * 1e6!r} mm2"})
    return Faulty(scenario.restated(document))


def belt_slip(scenario: ScenarioData, share: float) -> Faulty:
    """The blower turns slower than its pulleys say."""
    return scaled(scenario, f"charge_path/{part_ids(scenario)['blower']}/drive_ratio", 1 - share)


def bypass_open(scenario: ScenarioData, share: float) -> Faulty:
    """The valve stands open by a share of its travel, whatever should work it."""
    bypass = f"charge_path/{part_ids(scenario)['bypass']}"
    if share == 0:
        return Faulty(scenario)
    return changed(scenario, {f"{bypass}/opened_by": "hand", f"{bypass}/hand_opening": share})


def filter_blocked(scenario: ScenarioData, more: float) -> Faulty:
    """Its drop is larger by so many times itself."""
    return scaled(scenario, f"charge_path/{part_ids(scenario)['filter']}/drop", 1 + more)


def nozzle_blocked(scenario: ScenarioData, share: float) -> Faulty:
    """So much of the spray does not come."""
    return scaled(scenario, f"charge_path/{part_ids(scenario)['spray']}/rated_flow", 1 - share)


def hot_intake(scenario: ScenarioData, share: float) -> Faulty:
    """A share of the air that should be fresh comes from under the bodywork, hotter by as much of
    the way to what a bay may come to.
    """
    fresh, rise = 1 - scenario.get(INTAKE_SHARE), scenario.get(BAY_RISE)
    hotter = rise + share * (HOTTEST_BAY - rise)
    return changed(scenario, {INTAKE_SHARE: 1 - fresh * (1 - share), BAY_RISE: hotter})


def late_spark(scenario: ScenarioData, later: float) -> Faulty:
    """The spark comes later than the mark says: than was driven, where that is stated, and else
    than the model would put it at each engine speed.
    """
    return Faulty(scenario, later)


def lean(scenario: ScenarioData, more: float) -> Faulty:
    """More air for the fuel than is thought."""
    address = "engine/lambda"
    return changed(scenario, {address: scenario.get(address) + more})


def brake(scenario: ScenarioData, more: float) -> Faulty:
    """A brake drags with a force in proportion to the weight, as the tyres do."""
    address = "body/rolling_resistance"
    return changed(scenario, {address: scenario.get(address) + more})


def slip(scenario: ScenarioData, share: float) -> Faulty:
    """The engine turns faster than its gear says, and the power that it gains is lost: behind a
    clutch by the ratios and by their efficiency, in a belt drive by the slip of its belt.
    """
    part = part_ids(scenario)["turns"]
    at = f"driveline/{part}"
    kind = next(one["kind"] for one in scenario.document()["driveline"] if one["id"] == part)
    key = f"{at}/{SLIPS[kind]}"
    if kind == "belt_cvt":
        return changed(scenario, {key: scenario.get(key) + share})
    was = scenario.get(key)
    ratios = was / (1 - share) if kind == "final_drive" else [one / (1 - share) for one in was]
    efficiency = f"{at}/efficiency"
    return changed(scenario, {key: ratios, efficiency: scenario.get(efficiency) * (1 - share)})


def scaled(scenario: ScenarioData, address: str, factor: float) -> Faulty:
    """One input times a factor."""
    return changed(scenario, {address: scenario.get(address) * factor})


def changed(scenario: ScenarioData, changes: dict[str, object]) -> Faulty:
    """The vehicle with other inputs."""
    return Faulty(scenario.set(changes))


def with_later_spark(scenario: ScenarioData, later: float) -> ScenarioData:
    """The same with every spark later by so many rad, as far as the row of a table allows."""
    if later == 0:
        return scenario
    speeds, retards = given_sparks(scenario)
    late = np.minimum(retards + later, LATEST)
    rows = [[float(one) for one in row] for row in zip(speeds, late, strict=True)]
    document = scenario.without_menu()
    spark = document["engine"].get("spark", {})
    spark |= {"policy": "as_given", "table": {"columns": COLUMNS, "rows": rows}}
    spark.pop("retard", None)
    document["engine"] |= {"spark": spark}
    return scenario.restated(document)


@lru_cache(maxsize=4)
def given_sparks(scenario: ScenarioData) -> tuple[np.ndarray, np.ndarray]:
    """Engine speeds and the retard at each: as stated, or as the model chooses it."""
    curve = full_throttle_curve(scenario, _core.gears(scenario.core), ROWS)
    columns = dict(zip(curve.addresses, map(np.asarray, curve.columns), strict=True))
    solved = np.isfinite(columns["knock/retard"])
    speeds, firsts = np.unique(columns["engine/speed"][solved], return_index=True)
    return speeds, columns["knock/retard"][solved][firsts]
