"""Stages of a driveline worked by hand."""

import numpy as np
import pytest

from windwall import physics

pytestmark = pytest.mark.worked


def test_a_stage():
    """20 and 5 N m into 2.5:1 with 0.5 N m of drag and 0.98: 0.9555 and 0.882 of the power."""
    torque = physics.stage_torque([20.0, 5.0], 300.0, 2.5, 0.98, 0.5)
    np.testing.assert_allclose(torque, [47.775, 11.025], rtol=1e-12)
    loss = physics.stage_loss([20.0, 5.0], 300.0, 2.5, 0.98, 0.5)
    np.testing.assert_allclose(1 - loss / (300 * np.array([20, 5])), [0.9555, 0.882], rtol=1e-12)


def test_overrun():
    """The wheels bring 5.5 N m / 0.98 where the engine takes 5."""
    assert physics.stage_torque(-5.0, 300.0, 2.5, 0.98, 0.5) == pytest.approx(-2.5 * 5.5 / 0.98)


def test_churning():
    """0.3 N m at 5000 rpm is 0.18 N m at 3000."""
    speed = 3000 * np.pi / 30
    assert physics.stage_torque(10.0, speed, 1.0, 1.0, 0.2, 0.3) == pytest.approx(10 - 0.38)


def test_stages_in_series_multiply():
    torque = 100.0
    for ratio, efficiency in ((3.2, 0.90), (1.0, 0.97), (2.5, 0.975), (1.9, 0.98)):
        torque = physics.stage_torque(torque, 300.0, ratio, efficiency)
    assert torque / (100 * 3.2 * 2.5 * 1.9) == pytest.approx(0.8341515, rel=1e-9)


def test_power_is_kept_in_the_account():
    rng = np.random.default_rng(2)
    torque = rng.uniform(-50, 200, 1000)
    speed = rng.uniform(0, 900, 1000)
    out = physics.stage_torque(torque, speed, 2.5, 0.95, 0.5, 0.4) * speed / 2.5
    loss = physics.stage_loss(torque, speed, 2.5, 0.95, 0.5, 0.4)
    np.testing.assert_allclose(torque * speed, out + loss, atol=1e-9)
    assert loss.min() >= 0


def test_part_load_costs_most():
    torque = np.array([2.0, 5.0, 10.0, 20.0, 50.0])
    efficiency = 1 - physics.stage_loss(torque, 300.0, 2.5, 0.98, 0.5) / (torque * 300)
    assert (np.diff(efficiency) > 0).all()
    assert efficiency[-1] < 0.98


def test_gearing():
    """0.8 x 1.0 x 38/15 x 1.9, 8000 rpm and 0.27 m: 211.4701 km/h, with 3 % slip 205.1260."""
    ratio = 0.8 * 38 / 15 * 1.9
    speed = 3.6 * physics.overall_ratio_speed(8000 * np.pi / 30, ratio, 0.27, [0.0, 0.03])
    np.testing.assert_allclose(speed, [211.4701, 205.1260], atol=6e-5)


@pytest.mark.parametrize(
    ("teeth", "percent"), [(11, 4.05), (13, 2.91), (15, 2.19), (17, 1.70), (21, 1.12)]
)
def test_ripple_of_a_small_sprocket(teeth, percent):
    assert 100 * physics.chain_speed_ripple(teeth) == pytest.approx(percent, abs=6e-3)


@pytest.mark.parametrize(
    ("engine_speed", "ratio", "diameter", "speed"),
    [
        (7150, 19.75, 26, 28.0026),
        (7150, 60 / 13 * 4.28, 26, 27.997),
        (6500, 2.47, 28, 219.2100),
        (6000, 5.5, 20, 64.909),
        (3600, 52 / 10, 22, 45.3114),
    ],
)
def test_speeds_in_mph_and_inches(engine_speed, ratio, diameter, speed):
    """The last one is printed as 45.76 in a guide that took 69.80 for 69.08 in around."""
    found = physics.overall_ratio_speed(engine_speed * np.pi / 30, ratio, diameter / 2 * 0.0254)
    assert found / 0.44704 == pytest.approx(speed, abs=6e-4)
