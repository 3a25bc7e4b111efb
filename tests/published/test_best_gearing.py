"""The best gearing against closed forms: a vehicle is fastest where its engine gives its highest
power at the speed that this power can hold, the root of a cubic by NumPy.
"""

import json

import numpy as np
import pytest

import windwall as ww
from windwall import physics

pytestmark = pytest.mark.published

MASS, DRAG_AREA, ROLLING, RADIUS, EFFICIENCY = 300.0, 0.45, 0.015, 0.27, 0.9
PEAK, RATED = 15e3, 5000 * np.pi / 30  # W at rad/s
WITHOUT = {"drag_torque": "0 N m", "churning_torque": "0 N m", "inertia": "0 kg m2"}


def vehicle(ratio, run_up=None):
    """One gear and an engine whose power over speed is a parabola with its top at RATED."""
    shares = np.linspace(0.05, 1.6, 125)
    table = [[5000 * x, PEAK / RATED * (2 - x)] for x in shares.tolist()]
    return ww.loads(
        json.dumps(
            {
                "format": "windwall-scenario/2",
                "goal": {} if run_up is None else {"run_up": run_up},
                "day": {
                    "temperature": "20 degC",
                    "pressure": "101 kPa",
                    "relative_humidity": "0 %",
                },
                "body": {
                    "mass": f"{MASS} kg",
                    "drag_area": f"{DRAG_AREA} m2",
                    "rolling_resistance": ROLLING,
                },
                "charge_path": [
                    {"id": "box", "kind": "plenum", "volume": "3 L", "conductance": "0 W/K"}
                ],
                "engine": {
                    "kind": "torque_curve",
                    "displacement": "500 cm3",
                    "stroke": "70 mm",
                    "rev_limit": "8000 rpm",
                    "temperature": "20 degC",
                    "pressure": "101 kPa",
                    "table": {
                        "columns": {"engine_speed": "rpm", "torque": "N m"},
                        "rows": table,
                    },
                },
                "driveline": [
                    {"id": "axle", "kind": "final_drive", "ratio": ratio, "efficiency": EFFICIENCY}
                    | WITHOUT
                ],
                "tyres": {
                    "rolling_radius": f"{1000 * RADIUS} mm",
                    "growth": "0 %",
                    "slip_stiffness": 60,
                },
            }
        )
    )


def held_by(power):
    """m/s, the real root of c v^3 + a v = P."""
    density = float(physics.humid_air_density(0.0, 293.15, 101e3))
    cubic = [density * DRAG_AREA / 2, 0.0, MASS * 9.80665 * ROLLING, -power]
    (root,) = (one.real for one in np.roots(cubic) if abs(one.imag) < 1e-9)
    return root


def test_top_speed_is_highest_at_the_power_peak():
    best = ww.best_gearing(vehicle(4.5))
    fastest = held_by(EFFICIENCY * PEAK)
    # The tyres' slip, under 1 % here, is in the ratio and in the power.
    assert best.best.merit == pytest.approx(fastest, rel=3e-3)
    assert best.best.value == pytest.approx(RATED * RADIUS / fastest, rel=0.015)
    assert best.address == "driveline/axle/ratio"
    assert not best.whole


def test_flat_is_as_wide_as_the_parabola_says():
    """A ratio that is off by d costs d^2 of the power, and a third to a half of that in speed:
    dln v/dln P = (a + c v^2)/(a + 3 c v^2)."""
    best = ww.best_gearing(vehicle(4.5), reach=1.3)
    fastest = held_by(EFFICIENCY * PEAK)
    exponent = np.log(held_by(PEAK) / fastest) / np.log(1 / EFFICIENCY)
    off = (0.002 / exponent) ** 0.5
    low, high = best.flat
    assert (high - low) / best.best.value == pytest.approx(2 * off, rel=0.12)
