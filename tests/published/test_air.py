"""Standard atmosphere and humid air against fluids, ambiance, psychrolib, CoolProp, ISO 2533."""

import numpy as np
import pytest

from windwall import physics

pytestmark = pytest.mark.published

ZERO = 273.15
ALTITUDES = [-430.0, 0.0, 286.0, 1500.0, 2240.0, 4300.0, 6000.0, 10900.0]
WEATHER = [
    (0.0, 15.0, 101325.0),
    (0.5, 20.0, 101325.0),
    (0.35, 33.0, 98400.0),
    (0.9, 38.0, 101325.0),
    (0.4, 35.0, 87000.0),
    (0.7, 5.0, 78000.0),
    (0.2, 45.0, 70000.0),
]


@pytest.mark.parametrize("geometric", ALTITUDES)
def test_standard_atmosphere_of_fluids(oracle, geometric):
    """U.S. Standard Atmosphere 1976, which equals ISO 2533 below 32 km.

    Its gas constant follows from 8314.32 and 28.9644: 1 part in 1e6 at the tropopause.
    """
    theirs = oracle("fluids").ATMOSPHERE_1976(geometric)
    altitude = physics.geopotential_altitude(geometric)
    assert altitude == pytest.approx(theirs.H, abs=1e-3)
    assert physics.standard_atmosphere_temperature(altitude) == pytest.approx(theirs.T, rel=1e-6)
    assert physics.standard_atmosphere_pressure(altitude) == pytest.approx(theirs.P, rel=2e-6)
    assert physics.standard_atmosphere_density(altitude) == pytest.approx(theirs.rho, rel=1e-6)


@pytest.mark.parametrize("geometric", [0.0, 500.0, 1286.0, 3000.0, 8000.0])
def test_standard_atmosphere_of_ambiance(oracle, geometric):
    """Doc 7488 of ICAO as ambiance computes it."""
    theirs = oracle("ambiance").Atmosphere(geometric)
    altitude = physics.geopotential_altitude(geometric)
    assert altitude == pytest.approx(theirs.H[0], abs=1e-3)
    assert physics.standard_atmosphere_temperature(altitude) == pytest.approx(theirs.temperature[0])
    assert physics.standard_atmosphere_pressure(altitude) == pytest.approx(theirs.pressure[0])
    assert physics.standard_atmosphere_density(altitude) == pytest.approx(theirs.density[0])


@pytest.mark.memory
@pytest.mark.parametrize(
    "altitude, pressure, density",
    [
        (0, 1013.25, 1.22500),
        (1000, 898.746, 1.11164),
        (2000, 794.952, 1.00649),
        (3000, 701.085, 0.909122),
        (5000, 540.199, 0.736116),
        (11000, 226.320, 0.363918),
    ],
)
def test_printed_standard_atmosphere(altitude, pressure, density):
    """Table 1 of ISO 2533 by geopotential altitude, hPa and kg/m3, from memory."""
    assert physics.standard_atmosphere_pressure(altitude) == pytest.approx(pressure * 100, rel=2e-6)
    assert physics.standard_atmosphere_density(altitude) == pytest.approx(density, rel=5e-6)


@pytest.mark.parametrize(
    "geometric, temperature, pressure, density",
    [(6000, 0.8647812131, 0.4660012452, 0.53886606), (3200, 0.9279, 0.6746, 0.7271)],
)
def test_ratios_of_the_us_standard_atmosphere(geometric, temperature, pressure, density):
    """Carmichael's tables of the U.S. Standard Atmosphere 1976, by geometric altitude."""
    altitude = physics.geopotential_altitude(geometric)
    rounding = 2e-6 if geometric == 6000 else 1e-4
    ratio = physics.standard_atmosphere_temperature(altitude) / 288.15
    assert ratio == pytest.approx(temperature, rel=rounding)
    ratio = physics.standard_atmosphere_pressure(altitude) / 101325
    assert ratio == pytest.approx(pressure, rel=rounding)
    ratio = physics.standard_atmosphere_density(altitude) / 1.225
    assert ratio == pytest.approx(density, rel=rounding)


@pytest.mark.parametrize("altitude", [0.0, 250.0, 1000.0, 3000.0])
def test_pressure_at_altitude_of_ashrae(oracle, altitude):
    """Equation 3 of the ASHRAE Handbook, Fundamentals, chapter 1, as psychrolib has it.

    It takes the altitude as geopotential and prints the exponent with five digits: 5 parts in 1e5.
    """
    psychrolib = oracle("psychrolib")
    psychrolib.SetUnitSystem(psychrolib.SI)
    assert physics.standard_atmosphere_pressure(altitude) == pytest.approx(
        psychrolib.GetStandardAtmPressure(altitude), rel=5e-5
    )


@pytest.mark.parametrize("weather", [97e3, 101325.0, 103.5e3])
@pytest.mark.parametrize("altitude", [0.0, 400.0, 1538.0, 2200.0])
def test_station_pressure_against_the_altimeter_equation(altitude, weather):
    """Smithsonian Meteorological Tables, 1951: A^n = p^n + p0^n a H/T0, n = 0.190284.

    Its exponent is rounded differently from that of ISO 2533: 1 part in 1e4.
    """
    n = 0.190284
    term = 101325**n * 0.0065 * physics.geopotential_altitude(altitude) / 288.15
    expected = (weather**n - term) ** (1 / n)
    assert physics.station_pressure(altitude, weather) == pytest.approx(expected, rel=1e-4)


def test_density_altitude_of_a_hot_day():
    """Pilots' rule: density altitude rises 120 ft for each kelvin above standard.

    Examined in the International Journal of Aviation, Aeronautics, and Aerospace 5 (2018) no. 3.

    A rule of thumb in round numbers: 5 %.
    """
    for altitude in (0.0, 1000.0):
        pressure = physics.standard_atmosphere_pressure(altitude)
        hot = physics.standard_atmosphere_temperature(altitude) + 10
        rise = physics.density_altitude(pressure / (287.05287 * hot)) - altitude
        assert rise == pytest.approx(10 * 120 * 0.3048, rel=0.05)


@pytest.mark.parametrize("celsius", [0.01, 5, 15, 25, 40, 60, 80, 100, 120, 150, 180, 199])
def test_saturation_pressure_of_water(oracle, celsius):
    """IAPWS-95 as CoolProp has it; Hyland and Wexler state 0.02 % up to 100 degC, 0.1 % above."""
    CP = oracle("CoolProp.CoolProp")
    expected = CP.PropsSI("P", "T", ZERO + celsius, "Q", 0, "Water")
    tolerance = 3e-4 if celsius <= 100 else 1e-3
    assert physics.saturation_pressure(ZERO + celsius) == pytest.approx(expected, rel=tolerance)


@pytest.mark.parametrize("celsius", [-90, -60, -40, -20, -5, -0.5, 0.5, 25, 99, 160, 199])
def test_saturation_pressure_of_psychrolib(oracle, celsius):
    """The same equations of the ASHRAE Handbook, Fundamentals 2017, over ice and over water."""
    psychrolib = oracle("psychrolib")
    psychrolib.SetUnitSystem(psychrolib.SI)
    expected = psychrolib.GetSatVapPres(celsius)
    assert physics.saturation_pressure(ZERO + celsius) == pytest.approx(expected, rel=1e-9)


@pytest.mark.parametrize(
    "celsius, pascal",
    [
        (-20, 103.24),
        (-5, 401.74),
        (5, 872.6),
        (25, 3169.7),
        (50, 12351.3),
        (100, 101418.0),
        (150, 476101.4),
    ],
)
def test_printed_saturation_pressure(celsius, pascal):
    """Table 3 of the ASHRAE Handbook, Fundamentals 2017, as in psychrolib's tests: 0.03 %."""
    assert physics.saturation_pressure(ZERO + celsius) == pytest.approx(pascal, rel=3e-4)


@pytest.mark.parametrize("celsius, bar, digit", [(18, 0.0206, 1e-4), (28, 0.03782, 1e-5)])
def test_saturation_pressure_of_steam_tables(celsius, bar, digit):
    """Rajput, Engineering Thermodynamics, Example 10.10; within one of the last digit."""
    pressure = physics.saturation_pressure(ZERO + celsius)
    assert pressure / 1e5 == pytest.approx(bar, abs=digit)


def test_vapour_in_a_cubic_metre():
    """OpenStax, College Physics, Table 13.5: 23.0 g/m3 in saturated air of 25 degC."""
    moist = physics.humid_air_density(1, ZERO + 25, 101325)
    dry = physics.dry_air_density(1, ZERO + 25, 101325)
    assert 1e3 * (moist - dry) == pytest.approx(23.0, abs=0.05)


@pytest.mark.parametrize("humidity, celsius, pressure", WEATHER)
def test_humid_air_of_coolprop(oracle, humidity, celsius, pressure):
    """ASHRAE RP-1485 real moist air as CoolProp has it.

    Ours is a mixture of ideal gases: compressibility (4e-4 of density) and the enhancement factor
    (0.4 to 0.5 % of the vapour) are left out.
    """
    CP = oracle("CoolProp.CoolProp")
    T = ZERO + celsius
    state = ("T", T, "P", pressure, "R", humidity)
    volume = CP.HAPropsSI("Vha", *state)
    assert physics.humid_air_density(humidity, T, pressure) == pytest.approx(1 / volume, rel=7e-4)
    volume = CP.HAPropsSI("Vda", *state)  # per kilogram of dry air
    assert physics.dry_air_density(humidity, T, pressure) == pytest.approx(1 / volume, rel=8e-4)
    ratio = CP.HAPropsSI("W", *state)
    assert physics.humidity_ratio(humidity, T, pressure) == pytest.approx(ratio, rel=6e-3)


@pytest.mark.parametrize("humidity, celsius, pressure", WEATHER)
def test_humid_air_of_psychrolib(oracle, humidity, celsius, pressure):
    """ASHRAE Handbook, Fundamentals 2017: ideal mixture with 0.621945 and 287.042 J/(kg K).

    The project's own gases give 0.62196 and 287.048: 3 parts in 1e5. Its driest air has 1e-7.
    """
    psychrolib = oracle("psychrolib")
    psychrolib.SetUnitSystem(psychrolib.SI)
    ratio = psychrolib.GetHumRatioFromRelHum(celsius, humidity, pressure)
    T = ZERO + celsius
    assert physics.humidity_ratio(humidity, T, pressure) == pytest.approx(ratio, rel=5e-5, abs=2e-7)
    density = psychrolib.GetMoistAirDensity(celsius, ratio, pressure)
    assert physics.humid_air_density(humidity, T, pressure) == pytest.approx(density, rel=5e-5)
    dry = 1 / psychrolib.GetMoistAirVolume(celsius, ratio, pressure)
    assert physics.dry_air_density(humidity, T, pressure) == pytest.approx(dry, rel=5e-5)


def test_printed_density_of_moist_air():
    """1.08411986 kg/m3 at 30 degC, 0.02 kg/kg and 95 461 Pa: psychrolib's test, from ASHRAE."""
    pressure, T, ratio = 95461, ZERO + 30, 0.02
    vapour = pressure * ratio / (physics.gas_constant("dry_air") / physics.gas_constant("water"))
    vapour /= 1 + ratio * physics.gas_constant("water") / physics.gas_constant("dry_air")
    humidity = vapour / physics.saturation_pressure(T)
    assert physics.humidity_ratio(humidity, T, pressure) == pytest.approx(ratio, rel=1e-12)
    assert physics.humid_air_density(humidity, T, pressure) == pytest.approx(1.08411986, rel=5e-5)


@pytest.mark.parametrize("humidity, celsius", [(0.5, 25), (0.2, 40), (0.9, 10), (0.3, -5)])
def test_dew_point_of_psychrolib(oracle, humidity, celsius):
    """psychrolib inverts the same curve to 0.001 K."""
    psychrolib = oracle("psychrolib")
    psychrolib.SetUnitSystem(psychrolib.SI)
    vapour = humidity * physics.saturation_pressure(ZERO + celsius)
    expected = psychrolib.GetTDewPointFromRelHum(celsius, humidity)
    assert physics.dew_point(vapour) - ZERO == pytest.approx(expected, abs=2e-3)


def test_dew_point_of_coolprop(oracle):
    """Real moist air (ASHRAE RP-1485) differs by the enhancement factor, 0.1 K."""
    CP = oracle("CoolProp.CoolProp")
    vapour = 0.35 * physics.saturation_pressure(306.15)
    expected = CP.HAPropsSI("D", "T", 306.15, "P", 98400, "R", 0.35)
    assert physics.dew_point(vapour) == pytest.approx(expected, abs=0.1)


def test_all_of_it_takes_arrays():
    """NumPy's broadcasting."""
    T = np.array([[283.0], [303.0]])
    pressure = np.array([90e3, 95e3, 100e3])
    density = physics.humid_air_density(0.5, T, pressure)
    assert density.shape == (2, 3)
    assert density[1, 2] == physics.humid_air_density(0.5, 303.0, 100e3)
