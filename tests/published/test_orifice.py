"""Compressible flow through openings against Cantera, fluids, NACA 1135 and textbook examples."""

import numpy as np
import pytest

from windwall import physics

pytestmark = pytest.mark.published

# Isentropic flow tables for gamma 1.4: NACA Report 1135 (1953); Matthews, Aeronautical Engineer's
# Data Book, Table A4.1. Mach number, p/p0, A/A*.
MACH_TABLE = [
    (0.05, 0.9983, 11.5914),
    (0.10, 0.9930, 5.8218),
    (0.15, 0.9844, 3.9103),
    (0.50, 0.8430, 1.3398),
    (0.60, 0.7840, 1.1882),
    (0.82, 0.6430, 1.0305),
    (0.90, 0.5913, 1.0089),
]


@pytest.mark.parametrize("mach, ratio, area", MACH_TABLE)
def test_isentropic_tables(mach, ratio, area):
    """The flow function is inverse to the area ratio of the tables."""
    exact = (1 + 0.2 * mach**2) ** -3.5
    assert exact == pytest.approx(ratio, abs=5.1e-5)
    share = physics.flow_function(exact, 1.4) / physics.flow_function(0.1, 1.4)
    assert share == pytest.approx(1 / area, rel=5e-5)


def test_critical_pressure_ratio_of_air():
    """Matthews, Aeronautical Engineer's Data Book, Table A4.2: 0.5283 at Mach 1."""
    assert physics.critical_ratio(1.4) == pytest.approx(0.5283, abs=5.1e-5)


@pytest.mark.memory
@pytest.mark.parametrize("gamma, ratio", [(1.3, 0.5457), (1.33, 0.5404), (1.667, 0.4871)])
def test_critical_pressure_ratio(gamma, ratio):
    """Cengel and Cimbala, Fluid Mechanics, Table 12-2, from memory."""
    assert physics.critical_ratio(gamma) == pytest.approx(ratio, abs=5.1e-5)


def test_critical_flow_factor():
    """ISO 9300: 0.684731 for 1.4; 0.0404 = 0.6847/sqrt(287) in Balmer, Example 16.12."""
    assert physics.flow_function(0.5, 1.4) == pytest.approx(0.684731, abs=5e-7)
    assert physics.flow_function(0.5, 1.4) / np.sqrt(287) == pytest.approx(0.0404, abs=5e-5)


@pytest.mark.parametrize("gamma", [1.12, 1.3, 1.4, 5 / 3])
@pytest.mark.parametrize("ratio", [0.2, 0.45, 0.6, 0.8, 0.95, 0.99, 0.999])
def test_against_an_expansion_in_cantera(oracle, gamma, ratio):
    """Speed from the fall of enthalpy, flow from speed and density, the most of it where choked.

    Cantera finds states to 1e-9 of temperature; the fall of enthalpy near ratio 1 enlarges that.
    """
    ct = oracle("cantera")
    species = ct.Species("X", {"N": 2})
    cp = gamma / (gamma - 1) * ct.gas_constant
    species.thermo = ct.ConstantCp(10, 5000, 101325, [298.15, 0, 0, cp])
    gas = ct.Solution(thermo="ideal-gas", species=[species])
    gas.TP = 330, 150e3
    start, entropy = gas.enthalpy_mass, gas.entropy_mass
    R = ct.gas_constant / gas.mean_molecular_weight

    def flux(pressure):
        gas.SP = entropy, pressure
        return gas.density * np.sqrt(2 * (start - gas.enthalpy_mass))

    optimize = oracle("scipy.optimize")
    throat = optimize.minimize_scalar(lambda p: -flux(p), bounds=(30e3, 140e3), method="bounded")
    expected = 2e-4 * flux(max(throat.x, ratio * 150e3))
    ours = physics.orifice_flow(2e-4, 150e3, 330, ratio * 150e3, R, gamma)
    assert ours == pytest.approx(expected, rel=2e-8 / (1 - ratio) + 1e-8)


@pytest.mark.parametrize("ratio", [0.6, 0.75, 0.9, 0.99, 0.9994])
@pytest.mark.parametrize("gamma", [1.3, 1.4])
def test_against_the_expansibility_of_iso_5167(oracle, ratio, gamma):
    """ISO 5167-3, nozzle of vanishing diameter ratio: incompressible flow times expansibility."""
    nozzle_expansibility = oracle("fluids").nozzle_expansibility
    pressure, T, R, area = 101325.0, 298.15, 287.05, 1e-4
    factor = nozzle_expansibility(D=1.0, Do=1e-4, P1=pressure, P2=ratio * pressure, k=gamma)
    density = pressure / (R * T)
    expected = factor * area * np.sqrt(2 * density * pressure * (1 - ratio))
    ours = physics.orifice_flow(area, pressure, T, ratio * pressure, R, gamma)
    assert ours == pytest.approx(expected, rel=1e-9)


def test_a_small_difference_is_bernoulli():
    """Textbook limit (White, Fluid Mechanics, chapter 9): A sqrt(2 rho dp), error of order dp/p."""
    pressure, density = 1e5, 1e5 / (287 * 300)
    for difference in (60.0, 200.0, 500.0):
        expected = 1e-4 * np.sqrt(2 * density * difference)
        ours = physics.orifice_flow(1e-4, pressure, 300, pressure - difference, 287, 1.4)
        assert ours == pytest.approx(expected, rel=difference / pressure)
        assert ours < expected


def test_a_supersonic_nozzle():
    """Balmer, Modern Engineering Thermodynamics, Example 16.12: 7 MPa, 2000 degC, 20 mm throat.

    The example rounds the constant to 0.0404 and so gets 1.8634 kg/s; the formula gives 1.8643.
    """
    area = np.pi / 4 * 0.02**2
    ours = physics.orifice_flow(area, 7e6, 2273.15, 1e5, 287, 1.4)
    assert ours == pytest.approx(0.0404 * 7e6 * area / np.sqrt(2273.15), rel=6e-4)
    assert ours == pytest.approx(1.8643, abs=5e-5)


@pytest.mark.memory
@pytest.mark.parametrize("back, printed", [(0.7e6, 6.77), (0.4e6, 7.10)])
def test_a_converging_nozzle(back, printed):
    """Cengel and Cimbala, Fluid Mechanics, Example 12-4; the printed answers are from memory.

    They were read off four-digit tables: 0.3 %.
    """
    T0 = 873.15 + 150**2 / (2 * 1005)
    p0 = 1e6 * (T0 / 873.15) ** 3.5
    assert physics.orifice_flow(50e-4, p0, T0, back, 287, 1.4) == pytest.approx(printed, rel=3e-3)


@pytest.mark.memory
def test_a_converging_diverging_nozzle():
    """Cengel and Cimbala, Fluid Mechanics, Example 12-6: 2.86 kg/s, from memory."""
    assert physics.orifice_flow(20e-4, 1e6, 800, 1e5, 287, 1.4) == pytest.approx(2.86, abs=5e-3)


def test_the_restrictor_of_student_racing():
    """Formula SAE rules since 1981: 20 mm, at most about 0.075 kg/s of air at the reference day."""
    area = np.pi / 4 * 0.02**2
    ours = physics.orifice_flow(area, 101325, 294, 30e3, 287.05, 1.4)
    assert ours == pytest.approx(0.0750, abs=5e-5)
