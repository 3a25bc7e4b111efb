"""Belts against SciPy, NumPy and a printed example, a clutch against a printed answer.

Belt: Mott, Machine Elements in Mechanical Design, 4th edition, Example Problem 7-1: sheaves of
12.4 and 21.1 in, first 24 in apart, then as far as a belt of 100 in lets them.

Clutch: Bhandari, Design of Machine Elements, Example 11.12, with the mass that the open Scilab
textbook companion of IIT Bombay, 2011 to 2016, prints as its result.
"""

import numpy as np
import pytest
from scipy import differentiate, integrate

from windwall import physics

pytestmark = pytest.mark.published

RPM = np.pi / 30


def test_tension_follows_the_equation_of_the_belt():
    """Euler and Eytelwein's equation dT/dphi = mu T / sin(beta), integrated by SciPy."""
    beta = np.radians(17)
    solved = integrate.solve_ivp(
        lambda _, tension: 0.3 * tension / np.sin(beta), (0, 2.7), [1.0], rtol=1e-10, atol=1e-12
    )
    assert physics.belt_tension_ratio(0.3, 2.7, beta) == pytest.approx(solved.y[0, -1], rel=1e-7)


def test_length_is_the_length_of_the_outline():
    """By NumPy: the convex hull of two circles, measured."""
    turn = np.linspace(0, 2 * np.pi, 40001)
    for r1, r2, distance in ((0.035, 0.095, 0.27), (0.08, 0.05, 0.2)):
        # Support function of the hull; its integral is the outline (Cauchy).
        support = np.maximum(r1, r2 + distance * np.cos(turn))
        outline = integrate.trapezoid(support, turn)
        assert physics.belt_length(r1, r2, distance) == pytest.approx(outline, rel=1e-7)


def test_a_printed_drive():
    """Mott prints 101.4 in for 24 in, and 23.30 in and a wrap of 158 degrees for 100 in. His length
    is the usual short formula, so the last digit may differ.
    """
    small, large = 12.4 / 2, 21.1 / 2
    assert physics.belt_length(small, large, 24.0) == pytest.approx(101.4, abs=0.05)
    assert physics.belt_length(small, large, 23.30) == pytest.approx(100.0, abs=0.05)
    assert np.degrees(physics.belt_wrap(small, large, 23.30)) == pytest.approx(158, abs=0.5)
    assert physics.belt_driven_radius(small, 23.30, 100.0) == pytest.approx(large, abs=0.02)
    assert physics.belt_driving_radius(large / small, 23.30, 100.0) == pytest.approx(
        small, abs=0.02
    )


def test_wraps_and_radii_share_their_work():
    """At one length of belt, by SciPy: the slope of one radius over the other is that of the wraps,
    so forces along both shafts that balance do no work together.
    """
    length = physics.belt_length(6.2, 10.55, 23.30)
    for driving in (4.0, 8.0, 11.0):
        slope = differentiate.derivative(
            lambda r: physics.belt_driven_radius(r, 23.30, length), driving, initial_step=0.1
        ).df
        driven = physics.belt_driven_radius(driving, 23.30, length)
        ratio = physics.belt_wrap_ratio(driving, driven, 23.30)
        assert -slope == pytest.approx(ratio, rel=1e-6)


def test_twenty_kilowatts():
    """Bhandari, Example 11.12: 20 kW at 750 rpm, engaged at 500, four shoes, 0.3, drum 165 mm,
    centre of mass 140 mm. Printed: 2.680647 kg for each shoe.
    """
    found = physics.centrifugal_clutch_torque(
        750 * RPM, 500 * RPM, 2.680647, 0.165, 0.140, shoes=4.0, friction=0.3
    )
    assert found * 750 * RPM == pytest.approx(20e3, rel=1e-6)
