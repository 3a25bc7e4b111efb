"""Blown engines of the published tables: what stands for a blower whose boost alone is printed.

Assumptions, fixed before the first comparison:

* the engine without its blower is made as in rated_engines; the words are those of the row;
* no maker prints speed and size of his blower together, so the drive is solved for: the manifold
  has the printed boost at the speed compared. A maximum is taken to hold at every speed compared;
* a Roots, vane or spiral blower is a positive blower; where no displacement is printed it moves 0.7
  of the engine's swept volume a turn. Vanes compress inside by 1.15, the others not at all;
* a turbocharger is a centrifugal compressor of usual efficiency which the crank drives: the model
  has no turbine, and the work at the crank stands for the pumping against one. Its impeller is made
  for the boost and the air of the power compared, 1.1 g/s for a kilowatt, and larger where it would
  turn more than 34 times as fast as the crank (the first comparison met the end of that range);
* a charge cooler, where there is one, has 1.2 transfer units at that flow and three times as much
  cooling air at 120 km/h; all engines stand in that wind;
* the tank has petrol of 98 research octane numbers and no alcohol. Knock costs what the model
  says; the same engine is also asked where nothing ever knocks, which parts the two;
* the day is that of SAE J1349, boost counts from it, and a throttle of 90 mm stands first.
"""

import json
from functools import cache

import numpy as np

import windwall as ww
from published.engine_ratings import engine_ratings
from published.rated_engines import FIGURES, document, printed

WIND = "120 km/h"
PUMP = {"research_octane": 98, "motor_octane": 88, "ethanol": "0 %"}
NEVER_KNOCKS = {
    "fuel/research_octane": 130,
    "fuel/motor_octane": 120,
    "engine/knock_anchor/octane_number": 40,
}
INSIDE = {"vane": 1.15}
RPM = np.pi / 30
AIR_FOR_A_KILOWATT = 1.1e-3  # kg/s
WARM = 298.15  # K
HEAT = 1005.0  # J/(kg K)
DAY = 99e3  # Pa
FASTEST = 34  # turns of a turbocharger for one of the crank


def swept(row):
    """Of all cylinders, m3."""
    return (
        np.pi / 4e9 * float(row["bore_mm"]) ** 2 * float(row["stroke_mm"]) * int(row["cylinders"])
    )


def positive_blower(row):
    """Driven half as fast as what the engine draws unblown."""
    size = 1e-6 * float(row.get("blower_cc") or 0) or 0.7 * swept(row)
    return {
        "id": "blower",
        "kind": "positive_blower",
        "displacement": f"{1e6 * size:.6g} cm3",
        "drive_ratio": 0.25 * swept(row) / size,
        "built_in_ratio": INSIDE.get(row.get("blower"), 1.0),
    }


def turbocharger(boost, flow, speed):
    """A centrifugal compressor whose design point is the boost in Pa at the flow in kg/s; its drive
    is too slow for that at the engine speed in rpm."""
    head = HEAT * WARM * ((1 + boost / DAY) ** (0.4 / 1.4) - 1)
    tip_speed = np.sqrt(head / (0.72 * 0.9))
    diameter = max(
        np.sqrt(4 / np.pi * flow / (0.12 * DAY / (287 * WARM) * tip_speed)),
        2 * tip_speed / (FASTEST * speed * RPM),
    )
    return {
        "id": "blower",
        "kind": "mapped_compressor",
        "impeller_diameter": f"{1e3 * diameter:.6g} mm",
        "drive_ratio": 0.8 * 2 * tip_speed / diameter / (speed * RPM),
    }


def cooler(flow):
    return {
        "id": "cooler",
        "kind": "charge_cooler",
        "conductance": f"{1.2 * HEAT * flow:.6g} W/K",
        "at_charge_flow": f"{1e3 * flow:.6g} g/s",
        "at_cooling_flow": f"{3e3 * flow:.6g} g/s",
        "face_area": f"{1e4 * 3 * flow / (0.3 * 33.3 * 1.18):.6g} cm2",
    }


def charge_path(row, boost, cooled, kilowatts, speed):
    """Parts in the order of the air, for a power at a speed in rpm; boost in Pa, nought for an
    engine without a blower."""
    flow = AIR_FOR_A_KILOWATT * kilowatts
    parts = [{"id": "plate", "kind": "throttle", "bore": "90 mm"}]
    if boost > 0:
        turbo = "turbocharger" in (row.get("blower"), row.get("induction"))
        parts.append(turbocharger(boost, flow, speed) if turbo else positive_blower(row))
    return [*parts, cooler(flow)] if cooled else parts


def held(car, speed):
    return car.operating_point(engine_speed=f"{speed} rpm", road_speed=WIND)


def drive(car, boost, speed):
    """The drive that gives this boost, in Pa, to a car that never knocks."""

    def boost_of(ratio):
        return held(car.set({"charge_path/blower/drive_ratio": ratio}), speed).manifold.boost

    low = high = car.get("charge_path/blower/drive_ratio")
    while boost_of(high) < boost:
        low, high = high, 1.1 * high
    for _ in range(10):
        middle = (low + high) / 2
        low, high = (middle, high) if boost_of(middle) < boost else (low, middle)
    return {"charge_path/blower/drive_ratio": (low + high) / 2}


def powers(made, boost, speed):
    """W at the flywheel: on the petrol of the pump, and where nothing ever knocks."""
    pump = ww.loads(json.dumps(made | {"fuel": PUMP}))
    free = pump.set(NEVER_KNOCKS)
    driven = drive(free, boost, speed) if boost > 0 else {}
    return tuple(power(car.set(driven), speed) for car in (pump, free))


def power(car, speed):
    """W, or nan where nothing holds the knock margin."""
    point = held(car, speed)
    return point.engine.power if point.answered else np.nan


def blown():
    """The blown rows that print what is needed."""
    needed = ("bore_mm", "compression_ratio", "boost_kpa", "charge_cooler", "power_kw")
    return [
        row
        for row in engine_ratings()
        if row["induction"] != "atmospheric" and all(row[key] for key in needed)
    ]


def ratios(row):
    """By figure: the model over what was printed, on the pump's petrol and without knock."""
    boost = 1e3 * float(row["boost_kpa"])
    found = {}
    for key, value in printed(row).items():
        speed = float(row[FIGURES[key][1]])
        theirs = value if key == "power" else 1e-3 * value * speed * RPM
        path = charge_path(row, boost, row["charge_cooler"] == "yes", theirs, speed)
        watts = powers(document(row) | {"charge_path": path}, boost, speed)
        found[key] = tuple(one / 1e3 / theirs for one in watts)
    return found


@cache
def all_ratios():
    return {row["id"]: ratios(row) for row in blown()}
