"""Ideal gases against Cantera, CoolProp, chemicals, SciPy and NBS Circular 564."""

import numpy as np
import pytest

from windwall import physics

pytestmark = pytest.mark.published

TEMPERATURES = [201.0, 250.0, 298.15, 350.0, 500.0, 800.0, 999.0]
CANTERA = {
    "nitrogen": "N2",
    "oxygen": "O2",
    "argon": "Ar",
    "carbon_dioxide": "CO2",
    "water": "H2O",
    "methanol": "CH3OH",
    "ethanol": "C2H5OH",
}
AIR = {"N2": 0.78084, "O2": 0.20946, "Ar": 0.00934, "CO2": 0.00036}
SURROGATE = {"C8H18,isooctane": 0.6749, "C7H8": 0.3251}  # petrol by mass, H/C 1.87


@pytest.fixture(scope="module")
def gas(oracle):
    """A Cantera gas of the named species, from the NASA polynomials it ships."""
    ct = oracle("cantera")
    listed = {s.name: s for s in ct.Species.list_from_file("nasa_gas.yaml")}
    names = [*CANTERA.values(), *SURROGATE]
    listed["Ar"] = listed.get("Ar") or listed["AR"]
    return ct.Solution(thermo="ideal-gas", species=[listed[name] for name in names])


@pytest.mark.parametrize("name", CANTERA)
@pytest.mark.parametrize("T", TEMPERATURES)
def test_pure_gases(gas, name, T):
    """Atomic weights differ in the fifth digit between IUPAC 2001 and Cantera."""
    gas.TPX = T, 101325, {CANTERA[name]: 1}
    assert physics.gas_heat_capacity(name, T) == pytest.approx(gas.cp_mass, rel=1e-4)
    assert physics.gas_enthalpy(name, T) == pytest.approx(gas.enthalpy_mass, rel=1e-4, abs=20)
    assert physics.gas_gamma(name, T) == pytest.approx(gas.cp / gas.cv, rel=1e-6)


@pytest.mark.parametrize("T", TEMPERATURES)
def test_dry_air(gas, T):
    gas.TPX = T, 101325, AIR
    assert physics.air_heat_capacity(T) == pytest.approx(gas.cp_mass, rel=3e-5)
    assert physics.air_gamma(T) == pytest.approx(gas.cp / gas.cv, rel=1e-5)
    assert physics.gas_enthalpy("dry_air", T) == pytest.approx(gas.enthalpy_mass, rel=1e-4, abs=5)


def test_gas_constant_of_dry_air(gas):
    """8314.462618/28.9654 = 287.048 J/(kg K); CIPM-2007 has 28.96546 g/mol for 400 ppm CO2."""
    gas.TPX = 300, 101325, AIR
    expected = 8314.462618 / gas.mean_molecular_weight
    assert physics.gas_constant("dry_air") == pytest.approx(expected, rel=2e-5)
    assert physics.gas_constant("dry_air") == pytest.approx(8314.462618 / 28.96546, rel=1e-5)
    assert physics.gas_constant("dry_air") == pytest.approx(287.048, abs=5e-4)


@pytest.mark.parametrize("T", TEMPERATURES)
def test_petrol_vapour_is_the_stated_surrogate(gas, T):
    gas.TPY = T, 101325, SURROGATE
    assert physics.gas_heat_capacity("petrol", T) == pytest.approx(gas.cp_mass, rel=1e-4)
    assert physics.gas_constant("petrol") == pytest.approx(
        8314.462618 / gas.mean_molecular_weight, rel=1e-4
    )


def test_petrol_surrogate_has_the_hydrogen_of_petrol(gas):
    """H/C 1.87, within the 12 to 15 % hydrogen by mass of US DOE, Properties of Fuels, 2002."""
    gas.TPY = 298.15, 101325, SURROGATE
    carbon = gas.elemental_mole_fraction("C")
    hydrogen = gas.elemental_mole_fraction("H")
    assert hydrogen / carbon == pytest.approx(1.87, abs=5e-4)
    assert 0.12 < gas.elemental_mass_fraction("H") < 0.15


@pytest.mark.parametrize("T", [250.0, 300.0, 350.0, 400.0, 600.0])
def test_petrol_vapour_against_other_polynomials(oracle, T):
    """TRC fits of the two hydrocarbons as the library chemicals carries them."""
    chemicals = oracle("chemicals")
    data = oracle("chemicals.heat_capacity").TRC_gas_data
    expected = 0.0
    for cas, share, molar_mass in (("540-84-1", 0.6749, 0.11423), ("108-88-3", 0.3251, 0.09214)):
        row = data.loc[cas]
        coefficients = [row[f"a{i}"] for i in range(8)]
        expected += share * chemicals.TRCCp(T, *coefficients) / molar_mass
    assert physics.gas_heat_capacity("petrol", T) == pytest.approx(expected, rel=0.012)


@pytest.mark.parametrize(
    "name, fluid",
    [
        ("nitrogen", "Nitrogen"),
        ("oxygen", "Oxygen"),
        ("argon", "Argon"),
        ("carbon_dioxide", "CarbonDioxide"),
        ("water", "Water"),
        ("methanol", "Methanol"),
        ("ethanol", "Ethanol"),
    ],
)
@pytest.mark.parametrize("T", [280.0, 320.0, 400.0, 550.0])
def test_ideal_heat_capacity_of_reference_equations(oracle, name, fluid, T):
    """CoolProp's reference equations of state in the limit of no pressure: another source.

    The alcohols' internal rotation is fitted differently by different authors: 1.5 %.
    """
    CP = oracle("CoolProp.CoolProp")
    expected = CP.PropsSI("CP0MASS", "T", T, "P", 1e3, fluid)
    tolerance = 0.015 if name in {"methanol", "ethanol"} else 2e-3
    assert physics.gas_heat_capacity(name, T) == pytest.approx(expected, rel=tolerance)


@pytest.mark.parametrize(
    "T, cp, k",
    [
        (250, 1.003, 1.401),
        (300, 1.005, 1.400),
        (350, 1.008, 1.398),
        (400, 1.013, 1.395),
        (450, 1.020, 1.391),
        (500, 1.029, 1.387),
        (600, 1.051, 1.376),
        (700, 1.075, 1.364),
        (800, 1.099, 1.354),
        (1000, 1.142, 1.336),
    ],
)
def test_printed_heat_capacity_of_air(T, cp, k):
    """NBS Circular 564 (1955), kJ/(kg K): rounded to 1e-3, and 1e-3 for sixty years of data."""
    assert physics.air_heat_capacity(T) / 1e3 == pytest.approx(cp, abs=1.5e-3)
    assert physics.air_gamma(T) == pytest.approx(k, abs=1.5e-3)


@pytest.mark.parametrize(
    "T, cp, k",
    [(250, 0.791, 1.314), (300, 0.846, 1.288), (400, 0.939, 1.252), (600, 1.075, 1.213)],
)
def test_printed_heat_capacity_of_carbon_dioxide(T, cp, k):
    """Cengel and Boles, Thermodynamics, Table A-2b: old data, so 2 of the last digit."""
    assert physics.gas_heat_capacity("carbon_dioxide", T) / 1e3 == pytest.approx(cp, abs=2e-3)
    assert physics.gas_gamma("carbon_dioxide", T) == pytest.approx(k, abs=2e-3)


@pytest.mark.parametrize(
    "name, cas, uncertainty",
    [
        ("water", "7732-18-5", 50),
        ("carbon_dioxide", "124-38-9", 150),
        ("methanol", "67-56-1", 500),
        ("ethanol", "64-17-5", 500),
    ],
)
def test_enthalpy_of_formation(oracle, name, cas, uncertainty):
    """Active Thermochemical Tables as the library chemicals carries them, J/mol.

    The polynomials of 1988 follow CODATA, whose uncertainty is 40 and 130; the alcohols' is older.
    """
    expected = oracle("chemicals").Hfg(cas)
    molar_mass = 8.314462618 / physics.gas_constant(name)
    assert physics.gas_enthalpy(name, 298.15) * molar_mass == pytest.approx(
        expected, abs=uncertainty
    )


@pytest.mark.parametrize("name", ["nitrogen", "oxygen", "argon"])
def test_elements_have_no_enthalpy_of_formation(name):
    """By definition; the polynomials of NASA TM-4513 keep it to 0.1 J/g."""
    assert physics.gas_enthalpy(name, 298.15) == pytest.approx(0, abs=100)


def test_gamma_of_moist_air(gas):
    """Cantera's air with 20 g/kg of water vapour: cp and R mix by mass, gamma does not."""
    gas.TPX = 298.15, 1e5, AIR
    share = dict(zip(gas.species_names, gas.Y, strict=True))
    share["H2O"] = 0.02
    gas.TPY = 298.15, 1e5, share
    cp = physics.air_heat_capacity(298.15) + 0.02 * physics.gas_heat_capacity("water", 298.15)
    R = physics.gas_constant("dry_air") + 0.02 * physics.gas_constant("water")
    assert cp / (cp - R) == pytest.approx(gas.cp / gas.cv, rel=5e-6)


def test_monotone_interpolation_of_scipy(oracle):
    """The piecewise cubic that every table is read with, against SciPy's pchip."""
    interpolate = oracle("scipy.interpolate")
    random = np.random.default_rng(7)
    for _ in range(20):
        x = np.cumsum(random.uniform(0.05, 2, 9))
        y = random.normal(size=9)
        at = np.linspace(x[0], x[-1], 101)
        expected = interpolate.PchipInterpolator(x, y)(at)
        assert physics.monotone_cubic(x, y, at) == pytest.approx(expected, abs=1e-12)
