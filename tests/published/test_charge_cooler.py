"""Charge cooler: ht's effectiveness, the cross-flow equations marched by numpy, Incropera Examples
11.3 and 11.4, Som Example 10.7, and ht's film coefficients."""

import numpy as np
import pytest

from windwall import physics

pytestmark = pytest.mark.published


@pytest.mark.parametrize("ratio", [0.02, 0.1, 0.3574, 0.6, 0.9, 1.0])
@pytest.mark.parametrize("units", [0.05, 0.5, 1.0, 2.0, 4.0, 7.0, 10.0])
def test_effectiveness_against_ht(oracle, units, ratio):
    expected = oracle("ht.hx").effectiveness_from_NTU(units, ratio, subtype="crossflow")
    assert physics.crossflow_effectiveness(units, ratio) == pytest.approx(expected, abs=1e-7)


@pytest.mark.parametrize("units, ratio", [(0.5, 1.0), (2.0, 0.5), (4.0, 0.8)])
def test_effectiveness_against_the_two_streams_marched(units, ratio):
    """dTh/dx = -NTU (Th - Tc), dTc/dy = Cr NTU (Th - Tc) on the unit square, by the box scheme."""
    n = 400
    a, b = units / n / 2, ratio * units / n / 2
    hot = np.ones(n)  # at the left edge of a column of boxes, along y
    for _ in range(n):
        cold, leaving = 0.0, np.empty(n)
        for j in range(n):
            # Means over the box; two linear equations for the leaving temperatures.
            difference = (hot[j] - cold) / (1 + a + b)
            leaving[j] = hot[j] - 2 * a * difference
            cold += 2 * b * difference
        hot = leaving
    assert physics.crossflow_effectiveness(units, ratio) == pytest.approx(1 - hot.mean(), abs=2e-5)


def test_incropera_11_3(oracle):
    # Gas 300 to 100 degC, water 1 kg/s 35 to 125 degC (4197 J/kg K), U = 100 W/m2 K: NTU 2.1 from
    # the chart and 39.7 m2. The chart can be read to about 2 %.
    brentq = oracle("scipy.optimize").brentq
    heat = 1.0 * 4197 * (125 - 35)
    capacity_of_gas = heat / (300 - 100)
    ratio = capacity_of_gas / 4197
    effectiveness = heat / (capacity_of_gas * (300 - 35))
    units = brentq(
        lambda units: physics.crossflow_effectiveness(units, ratio) - effectiveness, 0.1, 10
    )
    assert units == pytest.approx(2.1, rel=0.02)
    assert units * capacity_of_gas / 100 == pytest.approx(39.7, rel=0.02)


def test_incropera_11_4():
    # Gas 1.5 kg/s (1000 J/kg K) at 250 degC, water 1 kg/s (4197 J/kg K) at 35 degC, 40 m2,
    # 100 W/m2 K: effectiveness 0.82 from the chart, 2.64e5 W, gas out 73.7 degC, water out
    # 98.0 degC. The chart lies 2 % below the exact value, which moves the gas by 3.4 K and the
    # water by 1.2 K.
    gas, water = 1500.0, 4197.0
    effectiveness = physics.crossflow_effectiveness(100 * 40 / gas, gas / water)
    heat = effectiveness * gas * (250 - 35)
    assert effectiveness == pytest.approx(0.82, rel=0.02)
    assert heat == pytest.approx(2.64e5, rel=0.025)
    assert 250 - heat / gas == pytest.approx(73.7, abs=4)
    assert 35 + heat / water == pytest.approx(98.0, abs=1.5)


def test_som_10_7():
    # Introduction to Heat Transfer, S. K. Som: air 10 kg/s (1.01 kJ/kg K) at 125 degC, water 7 kg/s
    # (4.18 kJ/kg K) at 20 degC, U 220 W/m2 K, 250 m2, both unmixed. The book takes the
    # approximate formula and rounds the heat to 1e6 W, so that the air leaves at 26 degC.
    air, water = 10.1e3, 29.26e3
    effectiveness = physics.crossflow_effectiveness(220 * 250 / air, air / water)
    heat = effectiveness * air * (125 - 20)
    assert heat == pytest.approx(1e6, rel=0.01)
    assert 125 - heat / air == pytest.approx(26, abs=1)


@pytest.mark.parametrize("flow", [0.5, 0.8, 1.5, 2.0])
def test_a_turbulent_side_grows_like_dittus_and_boelter(oracle, flow):
    # All the resistance on the charge's side, exponent 0.8: the ratio of two Nusselt numbers of ht.
    nusselt = oracle("ht.conv_internal").turbulent_Dittus_Boelter
    ratio = nusselt(Re=4e4 * flow, Pr=0.7) / nusselt(Re=4e4, Pr=0.7)
    found = physics.cooler_conductance(0.025 * flow, 0.25, 60.0, 0.025, 0.25, 1.0, 0.8, 0.6)
    assert found == pytest.approx(60 * ratio, rel=1e-9)


def test_two_films_are_resistances_in_series(oracle):
    # scipy's harmonic mean is two equal films in series, each changed on its own.
    hmean = oracle("scipy.stats").hmean
    found = physics.cooler_conductance(0.05, 0.1, 60.0, 0.025, 0.25, 0.5, 0.7, 0.6)
    assert found == pytest.approx(hmean([60 * 2**0.7, 60 * 0.4**0.6]), rel=1e-12)
