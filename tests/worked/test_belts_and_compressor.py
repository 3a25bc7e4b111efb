"""Belt sheaves, clutch and compressor worked by hand."""

import numpy as np
import pytest

from windwall import physics

pytestmark = pytest.mark.worked

RPM = np.pi / 30
LENGTH = 0.96179608


def test_length_and_wraps_of_sheaves():
    assert physics.belt_length(0.035, 0.095, 0.27) == pytest.approx(LENGTH, abs=5e-9)
    wraps = [physics.belt_wrap(0.035, 0.095, 0.27), physics.belt_wrap(0.095, 0.035, 0.27)]
    np.testing.assert_allclose(np.degrees(wraps), [154.321, 205.679], atol=6e-4)


@pytest.mark.parametrize(
    ("driving", "driven"),
    [(0.050, 0.08297811), (0.065, 0.06924066), (0.075, 0.05895840), (0.080, 0.05342884)],
)
def test_the_other_radius_of_the_same_belt(driving, driven):
    length = physics.belt_length(0.035, 0.095, 0.27)
    assert physics.belt_driven_radius(driving, 0.27, length) == pytest.approx(driven, abs=6e-9)


def test_radii_change_as_their_wraps():
    """dr2/dr1 = -phi1/phi2 = -0.85536997 at r1 = 50 mm."""
    length = physics.belt_length(0.035, 0.095, 0.27)
    r1, step = 0.05, 1e-6
    r2 = physics.belt_driven_radius([r1 - step, r1, r1 + step], 0.27, length)
    slope = (r2[2] - r2[0]) / (2 * step)
    wraps = physics.belt_wrap(r1, r2[1], 0.27) / physics.belt_wrap(r2[1], r1, 0.27)
    assert slope == pytest.approx(-wraps, rel=1e-7)
    assert slope == pytest.approx(-0.85536997, rel=1e-6)


def test_slip_capacity():
    """mu 0.35, 1041.4881 N, 50 mm, 13 degrees: 37.4109 N m."""
    assert physics.clamp_torque(0.35, 1041.4881, 0.05, np.radians(13)) == pytest.approx(
        37.4109, abs=6e-5
    )


@pytest.mark.memory
def test_efficiency_of_a_belt_cvt():
    found = physics.belt_cvt_efficiency(np.array([30, 30, 15, 6.0]), 30.0, [1, 2.7, 1, 1])
    np.testing.assert_allclose(found, [0.862, 0.833, 0.822, 0.677], atol=6e-4)


def test_centrifugal_clutch():
    found = physics.centrifugal_clutch_torque(
        np.array([3500, 4500]) * RPM, 2500 * RPM, 0.12, 0.055, 0.045
    )
    np.testing.assert_allclose(found, [17.58764, 41.03781], atol=6e-6)


def test_corrected_flow_and_speed():
    """20 g/s and 60 000 rpm at 90 kPa and 308.15 K: 22.592 g/s and 59 018 rpm."""
    assert 1000 * physics.corrected_flow(0.020, 90e3, 308.15) == pytest.approx(22.592, abs=6e-4)
    assert physics.corrected_speed(60000.0, 308.15) == pytest.approx(59018, abs=0.6)


def test_impeller():
    """60 mm, sigma 0.9, eta 0.72, 298.15 K: 1.296, 1.748 and 2.556 at 60, 90 and 120 krpm."""
    speeds = np.array([60e3, 90e3, 120e3]) * RPM
    ratio = physics.impeller_pressure_ratio(0.060, speeds, 0.9, 0.72, 298.15)
    np.testing.assert_allclose(ratio, [1.296, 1.748, 2.556], atol=6e-4)
    rise = physics.impeller_work(0.060, speeds[:2], 0.9) / 1004.675
    np.testing.assert_allclose(25 + rise, [56.8, 96.6], atol=0.06)
