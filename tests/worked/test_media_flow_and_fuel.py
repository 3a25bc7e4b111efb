"""Openings and fuels: values computed once from the stated equations by other code."""

import math

import numpy as np
import pytest

from windwall import physics

pytestmark = pytest.mark.worked


def printed(ratio, g):
    """The textbook form, choked below the critical ratio."""
    if ratio <= (2 / (g + 1)) ** (g / (g - 1)):
        return math.sqrt(g) * (2 / (g + 1)) ** ((g + 1) / (2 * (g - 1)))
    return math.sqrt(2 * g / (g - 1) * (ratio ** (2 / g) - ratio ** ((g + 1) / g)))


@pytest.mark.parametrize(
    "ratio, psi",
    [(0.3, 0.684731), (0.7, 0.63832), (0.8, 0.56066), (0.9, 0.42258), (0.95, 0.30764)],
)
def test_flow_function(ratio, psi):
    assert physics.flow_function(ratio, 1.4) == pytest.approx(psi, abs=6e-6)
    assert physics.flow_function(ratio, 1.4) == pytest.approx(printed(ratio, 1.4), rel=1e-12)


def test_critical_ratio():
    assert physics.critical_ratio(1.4) == pytest.approx(0.528282, abs=5e-7)


@pytest.mark.parametrize("ratio, flow", [(0.4, 23.716), (0.9, 14.636), (0.99, 4.872)])
def test_flow_of_a_square_centimetre(ratio, flow):
    """g/s at 101 325 Pa and 298.15 K, R 287.05."""
    ours = physics.orifice_flow(1e-4, 101325, 298.15, ratio * 101325, 287.05, 1.4)
    assert ours * 1e3 == pytest.approx(flow, abs=6e-4)


@pytest.mark.parametrize("g", [1.3, 1.4])
def test_cubic_near_ratio_one(g):
    """An odd cubic in 1 - ratio with the value and the slope of the printed form at 0.9995."""
    edge, width = 0.9995, 0.0005
    value = printed(edge, g)
    slope = -(printed(edge + 1e-7, g) - printed(edge - 1e-7, g)) / 2e-7 * width
    for part in (0.1, 0.4, 0.8):
        expected = part * (1.5 * value - slope / 2 + (slope - value) / 2 * part**2)
        ours = physics.flow_function(1 - part * width, g)
        assert ours == pytest.approx(expected, rel=1e-6)


@pytest.mark.parametrize("back, flow", [(0.7e6, 6.785), (0.4e6, 7.106)])
def test_converging_nozzle(back, flow):
    """1 MPa, 600 degC, 150 m/s, 50 cm2."""
    ours = physics.orifice_flow(50e-4, 1.0456e6, 884.19, back, 287, 1.4)
    assert ours == pytest.approx(flow, rel=2e-4)


def test_air_from_the_chemical_formula():
    """(C + H/4 - O/2) M_O2/0.23139 for CH1.87 and ethanol; weights of 2001 and of 2021."""
    oxygen = 31.9988 / 0.23139
    petrol = (1 + 1.87 / 4) * oxygen / (12.0107 + 1.87 * 1.00794)
    ethanol = (2 + 6 / 4 - 1 / 2) * oxygen / 46.06844
    assert physics.stoichiometric_ratio(0) == pytest.approx(petrol, abs=1e-3)
    assert physics.stoichiometric_ratio(1) == pytest.approx(ethanol, abs=6e-4)


def test_blends_by_hand():
    """E10 and E85 from 745 and 785 kg/m3: 10.48 and 85.66 % of ethanol by mass."""
    for volume, mass in ((0.10, 78.5 / 749.0), (0.85, 667.25 / 779.0)):
        air = 14.604 + mass * (9.005 - 14.604)
        heat = 43.4e6 + mass * (26.813e6 - 43.4e6)
        latent = 349e3 + mass * (919e3 - 349e3)
        assert physics.stoichiometric_ratio(volume) == pytest.approx(air, rel=1e-12)
        assert physics.heating_value(volume) == pytest.approx(heat, rel=1e-12)
        assert physics.latent_heat(volume) == pytest.approx(latent, rel=1e-12)
    assert physics.fuel_density(np.array([0.1, 0.85])) == pytest.approx([749.0, 779.0])
