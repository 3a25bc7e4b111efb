"""Dynamometer factors: SAE J1349 (1990), ISO 1585, DIN 70020, and rules of thumb."""

import numpy as np
import pytest

from windwall import physics

pytestmark = pytest.mark.published

ZERO = 273.15


def test_reference_days():
    """SAE J1349 and ISO 1585: 99 kPa dry, 25 degC; DIN 70020: 1013 mbar, 20 degC."""
    assert physics.j1349_factor(99e3, ZERO + 25) == pytest.approx(1, abs=1e-12)
    assert physics.iso1585_factor(99e3, ZERO + 25) == pytest.approx(1, abs=1e-12)
    assert physics.din70020_factor(101.3e3, ZERO + 20) == pytest.approx(1, abs=1e-12)


def test_mechanical_efficiency_behind_j1349():
    """The form of 1990 is 85 % mechanical efficiency at constant friction.

    CF = X/0.85 - 0.15/0.85 with X of the indicated power; the constants are printed as 1.18, 0.18.
    """
    for pressure, celsius in [(97e3, 12), (92e3, 35), (84e3, 28)]:
        X = 99e3 / pressure * np.sqrt((celsius + 273) / 298)
        expected = X / 0.85 - 0.15 / 0.85
        ours = physics.j1349_factor(pressure, ZERO + celsius)
        assert ours == pytest.approx(expected, rel=1e-3)


def test_imperial_form():
    """The same standard as quoted second-hand in inHg and degF: 29.23 inHg, 77 degF; 0.1 %."""
    inches, fahrenheit = 28.2, 95.0
    expected = 1.18 * 29.23 / inches * np.sqrt((fahrenheit + 460) / 537) - 0.18
    ours = physics.j1349_factor(inches * 3386.389, ZERO + (fahrenheit - 32) / 1.8)
    assert ours == pytest.approx(expected, rel=1e-3)


@pytest.mark.memory
def test_three_per_cent_a_thousand_feet():
    """Pilots' rule of thumb: 3 % of power lost for a thousand feet of height.

    A rule of one digit: between 2.5 and 4 % up to 6000 ft.
    """
    feet = np.array([2000.0, 4000.0, 6000.0])
    altitude = feet * 0.3048
    pressure = physics.standard_atmosphere_pressure(altitude)
    T = physics.standard_atmosphere_temperature(altitude)
    sea_level = physics.j1349_factor(101325.0, 288.15)
    loss = 1 - sea_level / physics.j1349_factor(pressure, T)
    assert ((loss / feet * 1000 > 0.025) & (loss / feet * 1000 < 0.04)).all()


@pytest.mark.memory
def test_power_at_altitude_of_gagg_and_farrar():
    """SAE 340096 (1934): P/P0 = s - (1 - s)/7.55 with s the density ratio; no formula in common.

    From memory. Friction is a constant share in both; 3 % of sea-level power up to 3000 m.
    """
    altitude = np.linspace(0, 3000, 7)
    s = physics.standard_atmosphere_density(altitude) / physics.standard_atmosphere_density(0)
    pressure = physics.standard_atmosphere_pressure(altitude)
    T = physics.standard_atmosphere_temperature(altitude)
    power = physics.j1349_factor(101325.0, 288.15) / physics.j1349_factor(pressure, T)
    assert power == pytest.approx(s - (1 - s) / 7.55, abs=0.03)


def test_din_reads_higher_than_sae():
    """Bosch Automotive Handbook (1996): references of 1013 and 990 mbar, 20 and 25 degC.

    On one dry day the DIN factor is 3 % above the others: the two reference days' ratio.
    """
    ratio = physics.din70020_factor(99e3, ZERO + 25) / physics.iso1585_factor(99e3, ZERO + 25)
    assert ratio == pytest.approx(1013 / 990 * np.sqrt(298 / 293), rel=1e-9)
    assert 1.025 < ratio < 1.04
