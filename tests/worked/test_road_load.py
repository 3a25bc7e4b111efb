"""A light vehicle worked by hand: 300 kg, C_rr 0.015, CdA 0.45 m2, air 1.2 kg/m3."""

import numpy as np
import pytest

from windwall import physics

pytestmark = pytest.mark.worked

VEHICLE = {"mass": 300, "drag_area": 0.45, "rolling_resistance": 0.015, "density": 1.2}
ROLLING, DRAG = 44.129925, 0.27
MASS = 330


@pytest.mark.parametrize(
    ("headwind", "grade", "force"),
    [(0, 0, 287.129925), (3, 0, 338.159925), (0, 0.01, 316.546198)],
)
def test_force_at_30_metres_a_second(headwind, grade, force):
    found = physics.road_load(30, **VEHICLE, headwind=headwind, grade=grade)
    assert found == pytest.approx(force, abs=5e-7)


@pytest.mark.parametrize(
    ("power", "speed"),
    [
        (5e3, 24.401896),
        (15e3, 36.730016),
        (17e3, 38.413861),
        (20e3, 40.700536),
        (40e3, 51.883867),
        (60e3, 59.671286),
    ],
)
def test_top_speed(power, speed):
    assert physics.top_speed_for_power(power, ROLLING, DRAG) == pytest.approx(speed, abs=6e-7)


def test_top_speed_in_wind_and_uphill():
    ahead, behind = physics.top_speed_for_power(17e3, ROLLING, DRAG, [3.0, -3.0])
    assert ahead == pytest.approx(36.510443, abs=6e-7)
    assert behind == pytest.approx(40.367233, abs=6e-7)
    slope = np.arctan(0.01)
    constant = 300 * 9.80665 * (0.015 * np.cos(slope) + np.sin(slope))
    assert physics.top_speed_for_power(17e3, constant, DRAG) == pytest.approx(37.503081, abs=6e-7)


def test_two_directions_of_a_record():
    still = physics.top_speed_for_power(17e3, ROLLING, DRAG)
    both = physics.top_speed_for_power(17e3, ROLLING, DRAG, [3.0, -3.0])
    assert np.mean(both) == pytest.approx(38.439, abs=5e-4)
    assert still == pytest.approx(38.414, abs=5e-4)


def test_one_percent_of_power_is_a_third_of_speed():
    low, high = physics.top_speed_for_power([17e3 * 0.9999, 17e3 * 1.0001], ROLLING, DRAG)
    assert np.log(high / low) / np.log(1.0001 / 0.9999) == pytest.approx(0.357071, abs=2e-6)


def test_coast_down():
    speeds = physics.coast_down_speed(MASS, ROLLING, DRAG, 30, [10.0, 30.0])
    np.testing.assert_allclose(speeds, [22.993338, 14.675406], atol=6e-7)
    arguments = (MASS, ROLLING, DRAG, 30)
    assert physics.coast_down_time(*arguments, 10) == pytest.approx(48.198669, abs=6e-7)
    assert physics.coast_down_distance(*arguments, 10) == pytest.approx(852.760748, abs=6e-7)
    assert physics.coast_down_time(*arguments, 0) == pytest.approx(111.658083, abs=6e-7)
    assert physics.coast_down_distance(*arguments, 0) == pytest.approx(1144.486866, abs=6e-7)


@pytest.mark.parametrize(
    ("share", "distance", "time"),
    [
        (0.5, 54.4017, 4.048829),
        (0.9, 531.9260, 19.936534),
        (0.95, 793.4408, 27.021063),
        (0.98, 1154.3797, 36.400892),
        (0.99, 1432.6785, 43.498753),
    ],
)
def test_constant_power_without_rolling(share, distance, time):
    end = share * np.cbrt(17e3 / DRAG)
    found = physics.run_up_constant_power_distance(MASS, 17e3, 0.0, DRAG, end)
    assert found == pytest.approx(distance, abs=6e-5)
    # The formulas for drag alone, m/(3c) ln and the arc tangent, written out.
    assert found == pytest.approx(-MASS / (3 * DRAG) * np.log(1 - share**3), rel=1e-12)
    assert physics.run_up_constant_power_time(MASS, 17e3, 0.0, DRAG, end) == pytest.approx(
        time, abs=6e-7
    )


@pytest.mark.parametrize(
    ("share", "distance", "time"),
    [
        (0.9, 506.7197, 19.593786),
        (0.95, 758.2457, 26.650474),
        (0.99, 1374.1696, 43.092902),
    ],
)
def test_constant_power_with_rolling(share, distance, time):
    end = share * physics.top_speed_for_power(17e3, ROLLING, DRAG)
    arguments = (MASS, 17e3, ROLLING, DRAG, end)
    # The page's numbers stop at four decimals of a metre and six of a second.
    assert physics.run_up_constant_power_distance(*arguments) == pytest.approx(distance, abs=1e-4)
    assert physics.run_up_constant_power_time(*arguments) == pytest.approx(time, abs=2e-6)


def test_drag_area_from_a_coast_down_coefficient():
    """0.01869 lbf/mph2 is 0.416009 N s2/m2, at 1.17 kg/m3 a drag area of 0.711127 m2."""
    square = 0.01869 * 4.4482216152605 / 0.44704**2
    assert square == pytest.approx(0.416009213, abs=5e-9)
    assert physics.air_drag(0.711127, 1.17, 1.0) == pytest.approx(square, abs=5e-7)


def test_the_square_of_the_wind_in_newtons():
    with_wind = physics.road_load(25, **VEHICLE, headwind=[2.0, -2.0, 0.0])
    assert np.mean(with_wind[:2]) - with_wind[2] == pytest.approx(1.08, abs=1e-9)
