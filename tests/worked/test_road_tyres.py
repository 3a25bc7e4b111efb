"""Tyres and grip worked by hand."""

import numpy as np
import pytest

from windwall import physics

pytestmark = pytest.mark.worked


@pytest.mark.parametrize(
    ("size", "millimetres"),
    [("205/55R16", 631.9), ("145/80R12", 536.8), ("120/70-17", 599.8), ("80/90-14", 499.6)],
)
def test_diameter(size, millimetres):
    assert physics.tyre_code(size)["diameter"] == pytest.approx(millimetres / 1e3, rel=1e-12)


def test_diameter_of_a_car_of_1990():
    assert physics.tyre_diameter(0.155, 0.80, 13 * 0.0254) == pytest.approx(0.5782, rel=1e-12)


def test_rolling_radius():
    radius = physics.rolling_radius("205/55R16")
    assert radius * 1e3 == pytest.approx(306.156, abs=5e-4)
    assert 1000 / (2 * np.pi * radius) == pytest.approx(519.85, abs=5e-3)


@pytest.mark.parametrize(
    ("grip", "share", "height", "axle", "acceleration"),
    [
        (0.7, 0.5, 0.7 / 2.6, "rear", 4.230853),
        (0.7, 0.5, 0.7 / 2.6, "front", 2.889029),
        (0.7, 0.5, 0.7 / 2.6, "all", 6.867),
        (0.6, 1.15 / 2.75, 0.85 / 2.75, "rear", 3.021830),
        (0.6, 1.6 / 2.75, 0.85 / 2.75, "front", 2.888834),
    ],
)
def test_grip(grip, share, height, axle, acceleration):
    found = physics.traction_limit(9.81, grip, share, height, axle)
    assert found == pytest.approx(acceleration, abs=6e-7)


def test_grip_of_a_light_rear_engined_car():
    assert physics.traction_limit(1.0, 0.9, 0.6, 0.45 / 1.6) == pytest.approx(0.723013, abs=6e-7)
    # With grip to spare the front lifts first.
    assert physics.traction_limit(1.0, 9.0, 0.6, 0.45 / 1.6) == pytest.approx(1.4222, abs=5e-5)


def test_slip_at_the_limit_speed_of_a_weak_car():
    thrust = 17e3 / 38.4
    assert physics.tyre_slip(thrust, 150 * 9.80665, 20) == pytest.approx(0.01505, abs=5e-5)


def test_more_grip_or_weight_on_the_wheels_is_never_less_thrust():
    grip = np.linspace(0.1, 1.5, 50)
    for axle in ("rear", "front", "all"):
        assert (np.diff(physics.traction_limit(3e3, grip, 0.5, 0.3, axle)) >= 0).all()
        assert (np.diff(physics.traction_limit(3e3 * grip, 0.9, 0.5, 0.3, axle)) > 0).all()


def test_weight_transfer_helps_the_rear_and_costs_the_front():
    height = np.linspace(0, 0.5, 20)
    assert (np.diff(physics.traction_limit(3e3, 0.9, 0.5, height, "rear")) > 0).all()
    assert (np.diff(physics.traction_limit(3e3, 0.9, 0.5, height, "front")) < 0).all()
