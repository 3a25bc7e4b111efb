"""Air of a day: values computed once from the stated equations by other code."""

import numpy as np
import pytest

from windwall import physics

pytestmark = pytest.mark.worked

ZERO = 273.15


@pytest.mark.parametrize(
    "altitude, temperature, pressure, density",
    [
        (0, 288.150, 101325.0, 1.22500),
        (500, 284.900, 95460.8, 1.16727),
        (1000, 281.650, 89874.6, 1.11164),
        (1286, 279.791, 86800.2, 1.08075),
        (2000, 275.150, 79495.2, 1.00649),
    ],
)
def test_standard_atmosphere(altitude, temperature, pressure, density):
    assert physics.standard_atmosphere_temperature(altitude) == pytest.approx(temperature, abs=5e-4)
    assert physics.standard_atmosphere_pressure(altitude) == pytest.approx(pressure, abs=0.05)
    assert physics.standard_atmosphere_density(altitude) == pytest.approx(density, abs=5e-6)


def test_geometric_altitude_counts_less():
    altitude = physics.geopotential_altitude(1000)
    assert physics.standard_atmosphere_pressure(altitude) == pytest.approx(89876.28, abs=0.01)
    assert physics.station_pressure(1000) == pytest.approx(89876.28, abs=0.01)


@pytest.mark.parametrize(
    "celsius, pascal",
    [(0.011, 611.70), (25, 3169.22), (40, 7383.46), (60, 19943.8), (100, 101418.7), (120, 198685)],
)
def test_saturation_pressure(celsius, pascal):
    """Just above the triple point, since the curve over ice ends there."""
    assert physics.saturation_pressure(ZERO + celsius) == pytest.approx(pascal, rel=5e-6)


@pytest.mark.parametrize(
    "celsius, pressure, humidity, density, ratio, dry",
    [
        (15, 101325, 0.0, 1.22505, 0.0, 1.22505),
        (20, 101325, 0.5, 1.19890, 0.007262, 1.19025),
        (30, 101325, 0.5, 1.15521, 0.013310, 1.14003),
        (35, 95000, 0.4, 1.06441, 0.015095, 1.04858),
    ],
)
def test_humid_air(celsius, pressure, humidity, density, ratio, dry):
    """Made with 287.042 and 461.52 J/(kg K); the project's 287.048 and 461.523: 3 parts in 1e5."""
    state = humidity, ZERO + celsius, pressure
    assert physics.humid_air_density(*state) == pytest.approx(density, rel=3e-5)
    assert physics.humidity_ratio(*state) == pytest.approx(ratio, rel=7e-5)
    assert physics.dry_air_density(*state) == pytest.approx(dry, rel=3e-5)


def test_density_altitude():
    assert physics.density_altitude(0.97877) == pytest.approx(2277, abs=0.5)


@pytest.mark.parametrize(
    "T, air, gamma, water, methanol, ethanol",
    [
        (250, 1002.94, 1.40097, 1854.5, 1291.4, 1267.5),
        (298.15, 1004.73, 1.39997, 1864.4, 1374.4, 1417.6),
        (350, 1008.63, 1.39780, 1881.1, 1484.7, 1587.7),
        (400, 1014.19, 1.39476, 1902.2, 1604.2, 1753.9),
        (500, 1029.92, 1.38640, 1954.7, 1857.8, 2074.4),
    ],
)
def test_heat_capacities(T, air, gamma, water, methanol, ethanol):
    assert physics.air_heat_capacity(T) == pytest.approx(air, abs=6e-3)
    assert physics.air_gamma(T) == pytest.approx(gamma, abs=6e-6)
    assert physics.gas_heat_capacity("water", T) == pytest.approx(water, abs=0.06)
    assert physics.gas_heat_capacity("methanol", T) == pytest.approx(methanol, abs=0.06)
    assert physics.gas_heat_capacity("ethanol", T) == pytest.approx(ethanol, abs=0.06)


@pytest.mark.parametrize(
    "name, share, gamma", [("methanol", 0.02, 1.39493), ("water", 0.02, 1.39729)]
)
def test_gamma_of_mixtures(name, share, gamma):
    cp = physics.air_heat_capacity(298.15) + share * physics.gas_heat_capacity(name, 298.15)
    R = physics.gas_constant("dry_air") + share * physics.gas_constant(name)
    assert cp / (cp - R) == pytest.approx(gamma, abs=6e-6)


@pytest.mark.parametrize(
    "celsius, pressure, humidity, j1349, iso, din",
    [
        (20, 101325, 0.5, 0.97656, 0.97621, 0.99975),
        (35, 95000, 0.4, 1.10049, 1.10304, 1.09327),
        (35, 87000, 0.2, 1.20299, 1.20984, 1.19380),
    ],
)
def test_power_correction(celsius, pressure, humidity, j1349, iso, din):
    T = ZERO + celsius
    dry = pressure - humidity * physics.saturation_pressure(T)
    assert physics.j1349_factor(dry, T) == pytest.approx(j1349, abs=6e-6)
    assert physics.iso1585_factor(dry, T) == pytest.approx(iso, abs=6e-6)
    assert physics.din70020_factor(pressure, T) == pytest.approx(din, abs=6e-6)


@pytest.mark.parametrize(
    "hectopascal, celsius, factor",
    [(990, 25, 1.0000), (950, 35, 1.0701), (850, 15, 1.1711), (1013, 15, 0.9537)],
)
def test_j1349(hectopascal, celsius, factor):
    ours = physics.j1349_factor(hectopascal * 100, ZERO + celsius)
    assert ours == pytest.approx(factor, abs=6e-5)


def test_altimeter_equation():
    """The sea-level pressure is found again where the standard atmosphere is shifted back."""
    for weather in np.array([97e3, 101325.0, 104e3]):
        station = physics.station_pressure(1500.0, weather)
        n = 0.0065 * 287.05287 / 9.80665
        height = physics.geopotential_altitude(1500.0)
        back = (station**n + 101325**n * 0.0065 * height / 288.15) ** (1 / n)
        assert back == pytest.approx(weather, rel=1e-12)
