"""Charge cooler and throttle against values computed once by a separate script from the same
equations."""

import numpy as np
import pytest

from windwall import physics

pytestmark = pytest.mark.worked


@pytest.mark.parametrize(
    "units, ratio, effectiveness",
    [(2.5, 0.6, 0.75572), (1, 1, 0.47622), (2, 0.5, 0.73241), (2.66667, 0.35740, 0.83579)],
)
def test_effectiveness(units, ratio, effectiveness):
    found = physics.crossflow_effectiveness(units, ratio)
    assert found == pytest.approx(effectiveness, abs=6e-6)


# 60 W/K at 25 and 250 g/s; charge 120 degC with 1008 J/kg K, air 30 degC with 1006 J/kg K.
# charge g/s, air g/s: conductance, transfer units, ratio, effectiveness, W, outlet degC
@pytest.mark.parametrize(
    "hot, cold, conductance, units, ratio, effectiveness, heat, outlet",
    [
        (10, 250, 41.4, 4.106, 0.040, 0.9776, 887, 32.0),
        (25, 250, 60.0, 2.381, 0.100, 0.8809, 1998, 40.7),
        (40, 250, 69.8, 1.731, 0.160, 0.7809, 2834, 49.7),
        (25, 100, 43.9, 1.742, 0.250, 0.7598, 1723, 51.6),
        (25, 20, 21.6, 1.074, 0.798, 0.5207, 943, 82.6),
        (25, 5, 10.5, 2.082, 0.200, 0.8214, 372, 105.2),
    ],
)
def test_core_off_its_rating(hot, cold, conductance, units, ratio, effectiveness, heat, outlet):
    UA = physics.cooler_conductance(hot * 1e-3, cold * 1e-3, 60.0, 0.025, 0.25)
    C_hot, C_cold = hot * 1.008, cold * 1.006
    C_min, C_max = min(C_hot, C_cold), max(C_hot, C_cold)
    found = physics.crossflow_effectiveness(UA / C_min, C_min / C_max)
    assert pytest.approx(conductance, abs=0.06) == UA
    assert UA / C_min == pytest.approx(units, abs=6e-4)
    assert C_min / C_max == pytest.approx(ratio, abs=6e-4)
    assert found == pytest.approx(effectiveness, abs=6e-5)
    assert found * C_min * 90 == pytest.approx(heat, abs=0.6)
    assert 120 - found * C_min * 90 / C_hot == pytest.approx(outlet, abs=0.06)


@pytest.mark.parametrize(
    "angle, mm2",
    [
        (10, 11.0325),
        (20, 62.2516),
        (40, 258.9793),
        (60, 557.0607),
        (75, 803.6533),
        (77.92, 832.3757),
        (90, 832.3757),
    ],
)
def test_throttle_area(angle, mm2):
    found = physics.throttle_area(0.038, 0.008, np.radians(angle), np.radians(6))
    assert found * 1e6 == pytest.approx(mm2, abs=6e-5)


def test_pipe_of_38_mm():
    # 30 g/s of 1.17 kg/m3: 22.6 m/s, Reynolds 54 300, f 0.0207 (smooth pipe), 163 Pa a metre.
    reynolds = 4 * 0.03 / (np.pi * 0.038 * 1.85e-5)
    assert reynolds == pytest.approx(54300, rel=2e-3)
    # The value of the script is Colebrook's; Churchill's formula lies within 2 % of it.
    assert physics.darcy_friction_factor(reynolds, 1.5e-6 / 0.038) == pytest.approx(
        0.0207, rel=0.02
    )
    drop = physics.duct_pressure_drop(0.03, 1.17, 1.85e-5, 1.0, 0.038, 0.0, 1.5e-6)
    assert drop == pytest.approx(163, rel=0.02)
