"""Cars of 1974 (Motor Trend) and of 1972 to 1982 (Auto MPG) as vehicles of two printed numbers.

Assumptions, one set for both tables, fixed before the first run and not tuned to either:

* power is net and that of the day, which has air of 1.20 kg/m3; over engine speed it goes as
  P/P_m = x + x^2 - x^3 with x the speed over that of P_m, up to x = 1.05;
* 4800 rpm at P_m. Gears, inertia and launch are stated by x, so that this number decides nothing;
* four gears in even steps. First ends at 14 m/s, top has P_m at the speed that P_m can hold. They
  stand for three and a converter as well as for five;
* 88 % of the torque reaches the wheels in every gear; a change of gear takes 0.4 s;
* gears change where the next one pushes harder, or at the limit;
* the clutch is let in at x = 0.5, whoever or whatever lets it in;
* weight is that of the car; driver and instruments are 90 kg;
* drag area 0.45 x 1.9 m2, rolling resistance 0.015, turning wheels 4 % of the mass, the engine 1 %
  of it in top gear; tyres of 0.30 m rolling radius with a grip of 0.85;
* rear wheels drive, with half of the weight standing and a fifth of the thrust's height shifted;
* the clock starts with the car: no roll-out.
"""

import csv
import json
from functools import cache
from pathlib import Path

import numpy as np

import windwall as ww
from windwall import physics

DATA = Path(__file__).parent / "data"
HORSEPOWER = 745.69987  # W
POUND = 0.45359237  # kg
GRAVITY = 9.80665  # m/s2
QUARTER_MILE = 402.336  # m
SIXTY = 26.8224  # m/s
NET_SINCE = 1972  # whose power is printed as it is in the car

DENSITY = 1.20  # kg/m3
RATED_RPM = 4800
END = 1.05  # x at the limit
FIRST_GEAR_ENDS = 14.0  # m/s
GEARS = 4
EFFICIENCY = 0.88
LAUNCH = 0.5  # x
DRIVER = 90.0  # kg
DRAG_AREA = 0.45 * 1.9  # m2
ROLLING = 0.015
RADIUS = 0.30  # m
ENGINE_SHARE = 0.01  # of the mass, in top gear


def rows(name):
    """The rows of one table, as numbers."""
    lines = (DATA / name).read_text("utf-8").splitlines()
    kept = csv.DictReader(line for line in lines if line[0] != "#")
    return [{key: float(text) for key, text in row.items()} for row in kept]


def quarter_miles():
    return rows("quarter_miles_1974.csv")


def sixties():
    return [row for row in rows("sixty_mph_1970s.csv") if row["year"] >= NET_SINCE]


def torque_table(power):
    """rpm and N m of P/P_m = x + x^2 - x^3."""
    rated = power / (RATED_RPM * np.pi / 30)
    shares = np.linspace(0.10, END, 20)
    return [[RATED_RPM * x, rated * (1 + x - x * x)] for x in shares.tolist()]


def gearing(power, mass):
    """The overall ratio of every gear."""
    square = DENSITY * DRAG_AREA / 2
    fastest = physics.top_speed_for_power(EFFICIENCY * power, ROLLING * mass * GRAVITY, square)
    wheel = RATED_RPM * np.pi / 30 * RADIUS  # m/s, of wheels that turn with the engine at P_m
    return np.geomspace(END * wheel / FIRST_GEAR_ENDS, wheel / float(fastest), GEARS)


@cache
def car(horsepower, weight_lb):
    """The vehicle of a printed power and weight, with its two runs."""
    power, mass = horsepower * HORSEPOWER, weight_lb * POUND + DRIVER
    return ww.loads(json.dumps(document(power, mass, gearing(power, mass))))


def document(power, mass, ratios):
    top = float(ratios[-1])
    return {
        "format": "windwall-scenario/2",
        "title": "A car of the 1970s by its power and weight",
        "day": {"temperature": "20 degC", "pressure": "101 kPa", "relative_humidity": "0 %"},
        "body": {
            "mass": f"{mass:.6f} kg",
            "drag_area": f"{DRAG_AREA} m2",
            "rolling_resistance": ROLLING,
            "rotating_share": "4 %",
        },
        "charge_path": [
            {"id": "plenum", "kind": "plenum", "volume": "3 L", "conductance": "0 W/K"}
        ],
        "engine": {
            "kind": "torque_curve",
            "displacement": "3000 cm3",  # with its stroke: on no answer that is read here
            "stroke": "80 mm",
            "rev_limit": f"{END * RATED_RPM} rpm",
            "table": {
                "columns": {"engine_speed": "rpm", "torque": "N m"},
                "rows": torque_table(power),
            },
            "temperature": "20 degC",
            "pressure": "101 kPa",
            "inertia": f"{ENGINE_SHARE * mass * (RADIUS / top) ** 2:.9f} kg m2",
        },
        "driveline": driveline(ratios, top),
        "tyres": {
            "rolling_radius": f"{1000 * RADIUS} mm",
            "growth": "0 %",
            "grip": 0.85,
            "driven_axle": "rear",
            "weight_on_driven_axle": "50 %",
            "height_over_wheelbase": 0.2,
        },
        "outings": [
            {"id": "quarter_mile", "legs": [full_throttle(for_distance=f"{QUARTER_MILE} m")]},
            {"id": "sixty", "legs": [full_throttle(to_speed=f"{SIXTY} m/s")]},
        ],
    }


def full_throttle(**until):
    return {"kind": "full_throttle"} | until


def driveline(ratios, top):
    """A gearbox with a direct top gear and the axle that the whole loss is put to."""
    launch = f"{LAUNCH * RATED_RPM} rpm"
    box = {"efficiency": 1.0, "shift_time": "0.4 s"}
    without = {"drag_torque": "0 N m", "churning_torque": "0 N m", "inertia": "0 kg m2"}
    return [
        {"id": "clutch", "kind": "clutch", "launch_speed": launch, "inertia": "0 kg m2"},
        {"id": "gearbox", "kind": "gearbox", "ratios": (ratios / top).tolist()} | box | without,
        {"id": "axle", "kind": "final_drive", "ratio": top, "efficiency": EFFICIENCY} | without,
    ]
