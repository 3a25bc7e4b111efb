"""The model's own coast-down against SciPy's ODE solver, in wind and on a slope."""

import json

import numpy as np
import pytest

import windwall as ww
from published.coasting import rolled
from python.samples import CURVE
from windwall import physics

pytestmark = pytest.mark.published

CAR = ww.loads(
    json.dumps(
        CURVE
        | {
            "day": {"temperature": "20 degC", "pressure": "98.21 kPa", "relative_humidity": "0 %"},
            "body": {
                "mass": "300 kg",
                "drag_area": "0.45 m2",
                "rolling_resistance": 0.015,
                "rotating_share": "10 %",
            },
        }
    )
)
DENSITY = 1.1671  # kg/m3 of dry air at 98.21 kPa and 20 degC, as 40 CFR 1066.301 rounds to 1.17


@pytest.mark.parametrize("wind, grade", [(0, 0), (3, 0), (-3, 0), (8, 0.01), (-2, -0.005)])
def test_time_and_distance(wind, grade):
    run = CAR.coast_down("108 km/h", "18 km/h", ww.si(float(wind)), float(grade), points=31)
    time, distance, speed = rolled(30, 5, rows=400, wind=wind, grade=grade, density=DENSITY)
    order = speed[::-1], np.column_stack([time, distance])[::-1]
    expected = [np.interp(run.speed, order[0], column) for column in order[1].T]
    np.testing.assert_allclose(run.time, expected[0], atol=2e-4 * time[-1])
    assert run.time.iloc[-1] == pytest.approx(time[-1], rel=1e-4)
    assert run.distance.iloc[-1] == pytest.approx(distance[-1], rel=1e-4)


def test_still_air_in_closed_form():
    run = CAR.coast_down("108 km/h", "18 km/h")
    density = run.attrs["conditions"]["air_density"]
    assert density == pytest.approx(DENSITY, rel=1e-4)
    held = (330, 300 * 9.80665 * 0.015, density * 0.45 / 2, 30)
    np.testing.assert_allclose(run.time, physics.coast_down_time(*held, run.speed), rtol=1e-12)
    distances = physics.coast_down_distance(*held, run.speed)
    np.testing.assert_allclose(run.distance, distances, rtol=1e-12)


def forces(wind):
    """N at the middle of small steps of speed, as two times on a road give them."""
    run = CAR.coast_down("108 km/h", "18 km/h", ww.si(wind), points=2001)
    return -330 * np.diff(run.speed) / np.diff(run.time)


def test_two_ways_leave_the_square_of_the_wind():
    """The mean force of both ways is that of still air and c w^2, at every speed; half of their
    difference is 2 c w v."""
    wind, square = 2.0, DENSITY * 0.45 / 2
    there, back, still = forces(wind), forces(-wind), forces(0.0)
    np.testing.assert_allclose((there + back) / 2 - still, square * wind**2, rtol=2e-4)
    middle = np.linspace(30, 5, 2001)[:-1] - 25 / 4000
    np.testing.assert_allclose((there - back) / 2, 2 * square * wind * middle, rtol=2e-4)


def test_its_own_table_gives_the_vehicle_back():
    run = CAR.coast_down("108 km/h", "18 km/h")
    density = ww.si(run.attrs["conditions"]["air_density"])
    fit = ww.coast_down_fit(
        run, "300 kg", density, rotating_share="10 %", headwind="0 m/s", grade=0
    )
    assert fit.drag_area.value == pytest.approx(0.45, rel=1e-6)
    assert fit.rolling_resistance.value == pytest.approx(0.015, rel=1e-6)
    fitted = CAR.set(fit.changes())
    assert fitted.get("body/drag_area") == pytest.approx(0.45, rel=1e-6)
