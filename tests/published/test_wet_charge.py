"""Vapour, liquid and drops in the charge: CoolProp, Cantera, chemicals, psychrolib, printed
measurements, and the rules of the workshop where they are all there is."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from windwall import physics

pytestmark = pytest.mark.published

COOLPROP = {"water": "Water", "methanol": "Methanol", "ethanol": "Ethanol"}
CAS = {"water": "7732-18-5", "methanol": "67-56-1", "ethanol": "64-17-5"}
ATMOSPHERE = 101325.0
RU = 8.314462618


@pytest.mark.parametrize("liquid", COOLPROP)
@pytest.mark.parametrize("celsius", [0.5, 25, 40, 60, 90])
def test_vapour_pressure_against_reference_equations(oracle, liquid, celsius):
    # Wagner's and the reference equations differ by up to 0.8 % for the alcohols below 10 degC.
    props = oracle("CoolProp.CoolProp").PropsSI
    reference = props("P", "T", celsius + 273.15, "Q", 1, COOLPROP[liquid])
    tolerance = 0.001 if liquid == "water" else 0.01
    assert physics.vapour_pressure(liquid, celsius + 273.15) == pytest.approx(
        reference, rel=tolerance
    )


@pytest.mark.parametrize(
    "liquid, boiling", [("water", 100.0), ("methanol", 64.7), ("ethanol", 78.3)]
)
def test_normal_boiling_points(liquid, boiling):
    # CRC Handbook of Chemistry and Physics; Wagner's methanol boils 0.16 K early.
    assert physics.vapour_pressure(liquid, boiling + 273.15) == pytest.approx(ATMOSPHERE, rel=0.008)


@pytest.mark.parametrize("liquid", COOLPROP)
@pytest.mark.parametrize("celsius", [10, 25, 40, 60])
def test_latent_heat_against_reference_equations(oracle, liquid, celsius):
    # Vapour as an ideal gas and one heat capacity of the liquid: within 2.5 %, the alcohols' real
    # vapour associates.
    props = oracle("CoolProp.CoolProp").PropsSI
    T = celsius + 273.15
    reference = props("H", "T", T, "Q", 1, COOLPROP[liquid]) - props(
        "H", "T", T, "Q", 0, COOLPROP[liquid]
    )
    found = physics.gas_enthalpy(liquid, T) - physics.liquid_enthalpy(liquid, T)
    assert found == pytest.approx(reference, rel=0.025)


@pytest.mark.parametrize(
    "celsius, humidity, pressure",
    [
        (25, 0.5, 101325),
        (35, 0.2, 101325),
        (30, 0.5, 101325),
        (35, 0.2, 87000),
        (15, 0.8, 95000),
    ],
)
def test_wet_bulb_against_humid_air_of_coolprop(oracle, celsius, humidity, pressure):
    # Adiabatic saturation with water that is as cold as the wet bulb.
    humid = oracle("CoolProp.HumidAirProp").HAPropsSI
    T = celsius + 273.15
    bulb = humid("B", "T", T, "P", pressure, "R", humidity)
    w = physics.humidity_ratio(humidity, T, pressure)
    found = physics.adiabatic_equilibrium(pressure, T, w, {"water": 0.05}, bulb)
    assert found["temperature"] == pytest.approx(bulb, abs=0.1)


def test_dew_point_against_humid_air_of_coolprop(oracle):
    humid = oracle("CoolProp.HumidAirProp").HAPropsSI
    # CoolProp's real moist air saturates later by its enhancement factor, 0.4 % of the vapour
    # pressure at 1 atm and 0.8 % at 2 atm, which the ideal mixture leaves out: 0.06 and 0.13 K.
    for boost, apart in ((0, 0.1), (50e3, 0.12), (100e3, 0.15)):
        p = ATMOSPHERE + boost
        dew = humid("D", "T", 330, "P", p, "W", 0.012)
        colder = physics.adiabatic_equilibrium(p, dew - 0.1, 0.012)
        warmer = physics.adiabatic_equilibrium(p, dew + apart, 0.012)
        assert colder["liquid"]["water"] > 0
        assert warmer["liquid"]["water"] == 0


def test_the_dew_point_rises_with_boost(oracle):
    # The same moist air at twice the pressure: its dew point by psychrolib, 25.0 from 13.9 degC.
    psychrolib = oracle("psychrolib")
    psychrolib.SetUnitSystem(psychrolib.SI)
    w = 0.00988
    dew = [psychrolib.GetTDewPointFromHumRatio(45.0, w, p) for p in (101325, 170e3)]
    assert dew[1] - dew[0] > 8
    for p, at in zip((101325, 170e3), dew, strict=True):
        assert physics.adiabatic_equilibrium(p, at + 273.15 - 0.1, w)["liquid"]["water"] > 0
        assert physics.adiabatic_equilibrium(p, at + 273.15 + 0.1, w)["liquid"]["water"] == 0


# Methanol in water at 1 atm, mole shares in liquid and vapour, from public course files; the point
# at 0.15 from memory (Perry's).
MEASURED = [
    (0.02, 0.134), (0.04, 0.230), (0.06, 0.304), (0.08, 0.365), (0.10, 0.418), (0.15, 0.517),
    (0.20, 0.579), (0.30, 0.665), (0.40, 0.729), (0.50, 0.779), (0.60, 0.825), (0.70, 0.870),
    (0.80, 0.915), (0.90, 0.958), (0.95, 0.979),
]  # fmt: skip


def bubble_vapour(x, alcohol, ethanol, pressure=ATMOSPHERE):
    """Mole share of alcohol in the vapour over a boiling liquid, by bisection in temperature."""
    active = physics.water_alcohol_activity(x, ethanol)

    def partial(T):
        return (
            active[0] * x * physics.vapour_pressure(alcohol, T),
            active[1] * (1 - x) * physics.vapour_pressure("water", T),
        )

    low, high = 300.0, 400.0
    for _ in range(60):
        T = (low + high) / 2
        low, high = (low, T) if sum(partial(T)) > pressure else (T, high)
    return partial(T)[0] / pressure, T


@pytest.mark.memory
def test_methanol_over_water_against_measurements():
    error = np.abs([bubble_vapour(x, "methanol", 0.0)[0] - y for x, y in MEASURED])
    assert error.mean() < 0.01
    assert error.max() < 0.02


@pytest.mark.memory
def test_ethanol_and_water_have_their_azeotrope():
    # From memory (CRC Handbook): 89.4 mole per cent ethanol, 78.2 degC at 1 atm.
    x = np.linspace(0.8, 0.97, 171)
    gap = np.array([bubble_vapour(value, "ethanol", 1.0)[0] - value for value in x])
    crossing = x[np.argmax(gap < 0)]
    assert crossing == pytest.approx(0.894, abs=0.03)
    assert bubble_vapour(crossing, "ethanol", 1.0)[1] - 273.15 == pytest.approx(78.2, abs=0.5)


def test_all_that_evaporates_cools_by_its_latent_heat(oracle):
    # Complete evaporation in hot dry air by Cantera's own gas enthalpies and CRC latent heats.
    cantera = oracle("cantera")
    listed = {each.name: each for each in cantera.Species.list_from_file("nasa_gas.yaml")}
    argon = "Ar" if "Ar" in listed else "AR"
    kept = [listed[name] for name in ("N2", "O2", argon, "CO2", "H2O")]
    gas = cantera.Solution(thermo="ideal-gas", species=kept)
    air = f"N2:0.78084, O2:0.20946, {argon}:0.00934, CO2:0.00036"
    p, T, water = 150e3, 400.0, 0.02
    gas.TPX = T, p, air
    air_hot = gas.enthalpy_mass
    gas.TPX = 298.15, p, "H2O:1"
    liquid = gas.enthalpy_mass - 43.98e3 / 18.01528e-3
    found = physics.adiabatic_equilibrium(p, T, 0, {"water": water})
    gas.TPX = found["temperature"], p, air
    air_cool = gas.enthalpy_mass
    gas.TPX = found["temperature"], p, "H2O:1"
    vapour = gas.enthalpy_mass
    assert found["liquid"]["water"] == 0
    assert air_cool + water * vapour == pytest.approx(air_hot + water * liquid, abs=30)


share = st.floats(0, 0.08)


@settings(max_examples=300, deadline=None)
@given(
    pressure=st.floats(20e3, 350e3),
    temperature=st.floats(250, 600),
    humidity=st.floats(0, 0.03),
    liquid=st.fixed_dictionaries(
        {"water": share, "methanol": share, "ethanol": share, "petrol": share}
    ),
    liquid_temperature=st.floats(270, 320),
)
def test_evaporation_closes_its_energy(pressure, temperature, humidity, liquid, liquid_temperature):
    # First law at constant pressure, from gas and liquid enthalpies summed here.
    found = physics.adiabatic_equilibrium(
        pressure, temperature, humidity, liquid, liquid_temperature
    )

    def total(T, vapour, drops, T_drops):
        return (
            physics.gas_enthalpy("dry_air", T)
            + sum(m * physics.gas_enthalpy(k, T) for k, m in vapour.items())
            + sum(m * physics.liquid_enthalpy(k, T_drops) for k, m in drops.items())
        )

    before = total(temperature, {"water": humidity}, liquid, liquid_temperature)
    T = found["temperature"]
    behind = total(T, found["vapour"], found["liquid"], T)
    exchanged = 2.4e6 * (humidity + sum(liquid.values())) + 1e4
    assert behind == pytest.approx(before, abs=1e-6 * exchanged)
    for name, mass in liquid.items():
        carried = mass + (humidity if name == "water" else 0)
        assert found["vapour"][name] + found["liquid"][name] == pytest.approx(carried, abs=1e-12)


# By pandas, of how chemicals reads its tables.
@pytest.mark.filterwarnings("ignore:The 'float_precision' argument")
@pytest.mark.parametrize("liquid", CAS)
def test_tension_and_viscosity_of_the_liquids(oracle, liquid):
    """Mulero and Cachadina 2012 and Perry 8, table 2-313, both as chemicals carries them.

    Water's viscosity differs by 2.5 % between Perry and ours.
    """
    T, cas = 298.15, CAS[liquid]
    ours = physics.drop_properties(liquid)
    chemicals = oracle("chemicals")
    tension = oracle("chemicals.interface").sigma_data_Mulero_Cachadina.loc[cas]
    terms = [tension[key] for key in ("Tc", "sigma0", "n0", "sigma1", "n1", "sigma2", "n2")]
    assert ours["surface_tension"] == pytest.approx(chemicals.REFPROP_sigma(T, *terms), rel=0.01)
    C1, C2, C3, C4, C5 = oracle("chemicals.viscosity").mu_data_Perrys_8E_2_313.loc[cas][
        ["C1", "C2", "C3", "C4", "C5"]
    ]
    perry = np.exp(C1 + C2 / T + C3 * np.log(T) + C4 * T**C5)
    assert ours["viscosity"] == pytest.approx(perry, rel=0.03)


@pytest.mark.parametrize("liquid, species", [("water", "H2O"), ("methanol", "CH3OH")])
def test_diffusion_of_water_and_methanol(oracle, liquid, species):
    """Kinetic theory over GRI-Mech's collision parameters, Cantera: rough at 25 degC, 15 %."""
    gas = oracle("cantera").Solution("gri30.yaml", transport_model="mixture-averaged")
    gas.TPX = 298.15, ATMOSPHERE, {"N2": 0.79, "O2": 0.21}
    theirs = gas.binary_diff_coeffs[gas.species_index(species), gas.species_index("N2")]
    assert physics.drop_properties(liquid)["diffusivity"] == pytest.approx(theirs, rel=0.15)


def test_a_nozzle_follows_the_root_of_its_pressure():
    # Torricelli: 200 to 60 psi leaves 0.548 of the flow; a jar in the workshop reads about one half
    # (common practice, no source).
    assert physics.nozzle_flow(1, 60, 200) == pytest.approx(0.548, abs=5e-4)
    assert physics.nozzle_flow(1, 60, 200) == pytest.approx(0.5, abs=0.06)


def test_drops_land_in_bends_as_inertia_has_it():
    # Stokes number of a 10 um water drop at 25 m/s in 38 mm: 0.174. Pui, Romay-Novas and Liu (from
    # memory): half the drops land in a right angle where the number on the radius is 0.31.
    number = physics.stokes_number(997, 10e-6, 25, 2.1e-5, 0.038)
    assert number == pytest.approx(0.174, abs=5e-4)
    assert physics.caught_in_bend(0.31 / 2, np.pi / 2) == pytest.approx(0.5, abs=0.01)


def test_the_drop_is_as_cold_as_a_wet_bulb(oracle):
    # For water in air Le is near one: a drop's temperature is nearly the psychrometer's.
    humid = oracle("CoolProp.HumidAirProp").HAPropsSI
    for T, w in ((298.15, 0.0062), (313.15, 0.010)):
        bulb = humid("B", "T", T, "P", ATMOSPHERE, "W", w)
        assert physics.drop_rate(ATMOSPHERE, T, w, {"water": 1})[0] == pytest.approx(bulb, abs=1.0)


@pytest.mark.memory
@pytest.mark.parametrize(
    "celsius, humidity, micrometres, seconds",
    [
        (20, 0.80, 50, 14), (20, 0.80, 100, 57), (20, 0.80, 200, 227),
        (30, 0.50, 50, 4), (30, 0.50, 100, 16), (30, 0.50, 200, 65),
    ],
)  # fmt: skip
def test_drops_of_water_live_as_long_as_sprayers_count(celsius, humidity, micrometres, seconds):
    # Lifetimes that texts on crop spraying give, t = d^2/(80 dT) with the wet-bulb depression
    # (Amsden 1962); from memory. A rule of one number for all temperatures and drops that fall:
    # ours, at rest, come out 0.86 to 0.89 of it, so a fifth is allowed.
    saturated = 611.2 * np.exp(17.62 * celsius / (243.12 + celsius))  # Magnus form of WMO-No. 8
    vapour = humidity * saturated
    ratio = 0.622 * vapour / (ATMOSPHERE - vapour)
    _, constant = physics.drop_rate(ATMOSPHERE, celsius + 273.15, ratio, {"water": 1})
    assert (micrometres * 1e-6) ** 2 / constant == pytest.approx(seconds, rel=0.2)
