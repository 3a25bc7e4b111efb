"""Belts against SciPy and NumPy, a centrifugal clutch against a printed answer.

Clutch: Bhandari, Design of Machine Elements, Example 11.12, with the mass that the open Scilab
textbook companion of IIT Bombay, 2011 to 2016, prints as its result.
"""

import numpy as np
import pytest
from scipy import integrate

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


def test_twenty_kilowatts():
    """Bhandari, Example 11.12: 20 kW at 750 rpm, engaged at 500, four shoes, 0.3, drum 165 mm,
    centre of mass 140 mm. Printed: 2.680647 kg for each shoe.
    """
    found = physics.centrifugal_clutch_torque(
        750 * RPM, 500 * RPM, 2.680647, 0.165, 0.140, shoes=4.0, friction=0.3
    )
    assert found * 750 * RPM == pytest.approx(20e3, rel=1e-6)
