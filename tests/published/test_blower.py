"""Positive-displacement blowers: Mechanical Engineer's Data Handbook p. 125, NACA (Schey and
Wilson), the slip law of industrial lobe blowers, and integrals taken by scipy."""

import numpy as np
import pytest

from published.test_leak import BLOWER, held
from windwall import physics

pytestmark = pytest.mark.published

RPM = np.pi / 30
PSI = 6894.757293168361


# Mechanical Engineer's Data Handbook, p. 125, prints 0.84 and 0.77. It also prints 0.95 at a ratio
# of 1.2, where the expression it gives yields 0.936: a slip of rounding, left out here.
@pytest.mark.parametrize("ratio, printed", [(1.6, 0.84), (2.0, 0.77)])
def test_efficiency_of_the_ideal_roots(ratio, printed):
    assert physics.roots_efficiency(ratio) == pytest.approx(printed, abs=0.005)


def test_a_roots_works_as_the_handbook_says():
    # The same page: W = p1 Vs (r - 1).
    ratio = np.array([1.0, 1.2, 1.6, 2.0])
    work = physics.blower_indicated_work(1.013e5, 1.013e5 * ratio, 0.03)
    assert work == pytest.approx(1.013e5 * 0.03 * (ratio - 1), rel=1e-12)


def test_discharge_valves_save_what_naca_found(oracle):
    # Schey and Wilson, NACA: discharge valves, which turn constant-volume into isentropic
    # compression, save "approximately 26 per cent" at a critical altitude of 20 000 feet.
    atmosphere = oracle("fluids.atmosphere").ATMOSPHERE_1976
    ratio = atmosphere(0).P / atmosphere(20000 * 0.3048).P
    assert 1 - physics.roots_efficiency(ratio) == pytest.approx(0.26, abs=0.005)


def isentropic_work(p1, p2, volume, gamma, quad):
    """Area of the indicator diagram of an ideal compressor without clearance."""
    return quad(lambda p: volume * (p1 / p) ** (1 / gamma), p1, p2, epsrel=1e-11)[0]


@pytest.mark.parametrize("gamma", [1.30, 1.40])
@pytest.mark.parametrize("ratio", [1.05, 1.2, 1.6, 2.2])
def test_roots_efficiency_against_the_integral_of_v_dp(oracle, ratio, gamma):
    quad = oracle("scipy.integrate").quad
    ideal = isentropic_work(1e5, 1e5 * ratio, 1e-3, gamma, quad)
    assert physics.roots_efficiency(ratio, gamma) == pytest.approx(
        ideal / (1e-3 * 1e5 * (ratio - 1)), rel=1e-9
    )


def indicator_diagram(p1, p2, volume, built_in_ratio, gamma, quad):
    """Work of a revolution from its diagram: intake, compression inside, equalisation, delivery."""
    end = volume / built_in_ratio
    inside = quad(lambda v: p1 * (volume / v) ** gamma, end, volume, epsrel=1e-11)[0]
    return -p1 * volume + inside + p2 * end


@pytest.mark.parametrize("built_in_ratio", [1.0, 1.2, 1.3, 1.5])
@pytest.mark.parametrize("ratio", [0.8, 1.0, 1.4, 1.8, 2.6])
def test_screw_work_against_the_integral_of_p_dv(oracle, built_in_ratio, ratio):
    quad = oracle("scipy.integrate").quad
    drawn = indicator_diagram(9e4, 9e4 * ratio, 2.2e-4, built_in_ratio, 1.4, quad)
    found = physics.blower_indicated_work(9e4, 9e4 * ratio, 2.2e-4, built_in_ratio, 1.4)
    assert found == pytest.approx(drawn, rel=1e-9, abs=1e-10)


@pytest.mark.parametrize("built_in_ratio", [1.2, 1.3, 1.5])
def test_a_screw_is_ideal_where_its_inner_pressure_meets_the_outlet(oracle, built_in_ratio):
    scipy_optimize = oracle("scipy.optimize")
    quad = oracle("scipy.integrate").quad

    def efficiency(ratio):
        work = physics.blower_indicated_work(1e5, 1e5 * ratio, 1e-3, built_in_ratio)
        return isentropic_work(1e5, 1e5 * ratio, 1e-3, 1.4, quad) / work

    best = scipy_optimize.minimize_scalar(
        lambda ratio: -efficiency(ratio), bounds=(1.05, 3), method="bounded"
    )
    assert best.x == pytest.approx(built_in_ratio**1.4, rel=1e-4)
    assert -best.fun == pytest.approx(1, abs=1e-8)


# Remembered from textbooks: 0.03 m3 a revolution, 1.013 bar, ratio 1.5; the vane machine compresses
# inside over half the pressure rise. 1.52 and 1.35 kJ a revolution.
@pytest.mark.memory
def test_roots_against_vane():
    p1, p2, volume = 1.013e5, 1.5195e5, 0.03
    vane_ratio = 1.25 ** (1 / 1.4)
    assert physics.blower_indicated_work(p1, p2, volume) == pytest.approx(1520, abs=5)
    assert physics.blower_indicated_work(p1, p2, volume, vane_ratio) == pytest.approx(1350, abs=5)


def slip_by_the_industry(slip_1psi, rise, p1, T1, specific_gravity=1.0):
    """Positive Displacement Blower Calculations (pdblowers.com, 2015), "application slip": standard
    air is 528 degrees Rankine and 14.7 psia, the standard rise 1 psi."""
    return slip_1psi * np.sqrt(
        rise / PSI * (14.7 * PSI / p1) * (T1 / (528 / 1.8)) / specific_gravity
    )


@pytest.mark.parametrize(
    "rise, p1, T1, specific_gravity",
    [
        (20e3, 100e3, 298.15, 1),
        (60e3, 100e3, 298.15, 1),
        (50e3, 50e3, 298.15, 1),
        (60e3, 90e3, 350.0, 1),
        (60e3, 100e3, 298.15, 0.97),
    ],
)
def test_slip_follows_the_law_of_industrial_blowers(rise, p1, T1, specific_gravity):
    R = 287.05
    standard = physics.slip_speed(10e-6, 220e-6, PSI, 14.7 * PSI, 528 / 1.8, R)
    found = physics.slip_speed(10e-6, 220e-6, rise, p1, T1, R / specific_gravity)
    law = slip_by_the_industry(standard, rise, p1, T1, specific_gravity)
    assert found == pytest.approx(law, rel=1e-12)


@pytest.mark.parametrize("speed", [4000 * RPM, 8000 * RPM])
@pytest.mark.parametrize("rise", [2 * PSI, 4 * PSI])
def test_the_leaking_blower_delivers_what_the_industry_expects(speed, rise):
    # Q1 = Vd (N - slip), slip scaled from the blower's own at 1 psi. The industry's law is for a
    # cold incompressible leak; makers' rated flows are good to 4 %.
    p1, T1 = 101325.0, 293.15

    def slip(rise):
        point = physics.blower_point(p1, T1, p1 + rise, speed, 220e-6, leak_area=8e-6)
        return speed * (1 - point["volumetric_efficiency"])

    delivered = speed - slip(rise)
    expected = speed - slip_by_the_industry(slip(PSI), rise, p1, T1) / slip_by_the_industry(
        1, PSI, p1, T1
    )
    assert delivered == pytest.approx(expected, rel=0.04)


def test_without_leak_and_friction_the_first_law_gives_the_outlet_temperature():
    # Steady flow, ideal gas: m cp (T2 - T1) = N Vd (p2 - p1) and m = p1 Vd N/(R T1), so that
    # T2/T1 = 1 + (g - 1)/g (r - 1); Moran and Shapiro, chapter 4, energy rate balance.
    ratio = np.linspace(1.0, 2.2, 7)
    point = physics.blower_point(1e5, 298.15, 1e5 * ratio, 800.0, 220e-6)
    assert point["outlet_temperature"] == pytest.approx(
        298.15 * (1 + 0.4 / 1.4 * (ratio - 1)), rel=1e-12
    )


def test_the_whole_balance_against_scipy(oracle):
    # Volume at the inlet, choked or not, and heat: two equations solved by another method.
    fsolve = oracle("scipy.optimize").fsolve
    R, g, V, A = 287.05, 1.4, 220e-6, 10e-6
    cp = R * g / (g - 1)
    for p2, N, start in [(160e3, 100.0, (0.022, 360.0)), (230e3, 150.0, (0.03, 430.0))]:
        p1, T1 = 1e5, 298.15

        def leak(T2, p1=p1, p2=p2):
            ratio = max(p1 / p2, (2 / (g + 1)) ** (g / (g - 1)))
            psi = np.sqrt(2 * g / (g - 1) * (ratio ** (2 / g) - ratio ** ((g + 1) / g)))
            return A * p2 / np.sqrt(R * T2) * psi

        def balance(x, N=N, p2=p2, p1=p1, T1=T1, leak=leak):
            flow, T2 = x
            return [
                (p1 * V * N / R - flow * T1 - leak(T2) * T2) / T1,
                (flow * cp * (T2 - T1) - N * V * (p2 - p1)) / 1e5,
            ]

        flow, T2 = fsolve(balance, start, xtol=1e-12)
        point = physics.blower_point(p1, T1, p2, 2 * np.pi * N, V, A)
        assert point["status"] == "solved"
        assert point["flow"] == pytest.approx(flow, rel=1e-9)
        assert point["outlet_temperature"] == pytest.approx(T2, rel=1e-9)
        assert point["leak_flow"] == pytest.approx(leak(T2), rel=1e-9)


@pytest.mark.memory
@pytest.mark.parametrize("drive_ratio", [0.75, 0.85, 1.0])
def test_the_outlet_is_as_warm_as_blowers_are_said_to_be(drive_ratio):
    """Overall efficiency "around 70 % at a pressure ratio of at most two" (liongoal.com, text of an
    encyclopaedia), and 0.50 to 0.65 on makers' maps of small units at 1.3 to 1.8, from memory. A
    whole blower with its usual friction lies in the upper half of that band, and above it at 1.36,
    where the ideal Roots has 0.87; no printed table of outlet temperatures could be read.
    """
    blower = {**BLOWER, "drive_ratio": drive_ratio}
    roots = held(blower).charge_path.roots
    before, behind = roots.inlet, roots.outlet
    ideal = before.temperature * ((behind.pressure / before.pressure) ** (0.4 / 1.4) - 1)
    assert 1.15 < roots.pressure_ratio < 2
    assert 0.50 < ideal / (behind.temperature - before.temperature) < 0.78
