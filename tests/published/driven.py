"""A light vehicle whose every number is stated, so that its runs can be worked by hand: 300 kg,
C_rr 0.015, 0.45 m2, air of the day, no drag in the driveline and an engine of a drawn torque.
"""

import json

import numpy as np

import windwall as ww
from windwall import _core, physics
from windwall.results.gearing import Mark
from windwall.study.standing_start import timed

MASS, ROLLING, DRAG_AREA, RADIUS = 300.0, 0.015, 0.45, 0.27
GRAVITY = 9.80665
SLIP_STIFFNESS = 60.0  # all wheels drive: slip is thrust over 60 times the weight
SHARE = 0.03  # turning wheels, of the mass
RPM = np.pi / 30
DENSITY = float(physics.humid_air_density(0.0, 293.15, 101e3))
CONSTANT = MASS * GRAVITY * ROLLING
SQUARE = DENSITY * DRAG_AREA / 2
WITHOUT = {"drag_torque": "0 N m", "churning_torque": "0 N m", "inertia": "0 kg m2"}


def vehicle(ratios, table, efficiency=1.0, inertia=0.0, shift_time=0.4, **body):
    """Torque in N m over rpm, overall ratios from first to top."""
    rows = [[float(speed), float(torque)] for speed, torque in table]
    return ww.loads(
        json.dumps(
            {
                "format": "windwall-scenario/2",
                "day": {
                    "temperature": "20 degC",
                    "pressure": "101 kPa",
                    "relative_humidity": "0 %",
                },
                "body": {
                    "mass": f"{MASS} kg",
                    "drag_area": f"{DRAG_AREA} m2",
                    "rolling_resistance": ROLLING,
                    "rotating_share": f"{100 * SHARE} %",
                }
                | body,
                "charge_path": [
                    {"id": "box", "kind": "plenum", "volume": "3 L", "conductance": "0 W/K"}
                ],
                "engine": {
                    "kind": "torque_curve",
                    "displacement": "500 cm3",
                    "stroke": "70 mm",
                    "rev_limit": "12000 rpm",
                    "temperature": "20 degC",
                    "pressure": "101 kPa",
                    "inertia": f"{inertia} kg m2",
                    "table": {
                        "columns": {"engine_speed": "rpm", "torque": "N m"},
                        "rows": rows,
                    },
                },
                "driveline": [
                    {
                        "id": "clutch",
                        "kind": "clutch",
                        "launch_speed": "1000 rpm",
                        "inertia": "0 kg m2",
                    },
                    {
                        "id": "box_of_gears",
                        "kind": "gearbox",
                        "ratios": [float(one) for one in ratios],
                        "efficiency": efficiency,
                        "direct_efficiency": efficiency,
                        "shift_time": f"{shift_time} s",
                    }
                    | WITHOUT,
                ],
                "tyres": {
                    "rolling_radius": f"{1000 * RADIUS} mm",
                    "growth": "0 %",
                    "slip_stiffness": SLIP_STIFFNESS,
                    "grip": 2,
                    "driven_axle": "all",
                },
            }
        )
    )


def drive(car, *legs, **outing):
    """Columns of a drive of these legs by address, and what it did at each moment."""
    document = car.document() | {"outings": [{"id": "run", "legs": list(legs)} | outing]}
    made = _core.drive(ww.loads(json.dumps(document)).core, "run")
    return dict(zip(made["addresses"], made["columns"], strict=True)) | {"phase": made["phase"]}


def quarter_mile(car):
    """The end of a standing quarter mile."""
    return timed(car, Mark(distance=402.336))


def slip(thrust):
    """Share of the wheels' speed that is lost."""
    return thrust / (SLIP_STIFFNESS * MASS * GRAVITY)
