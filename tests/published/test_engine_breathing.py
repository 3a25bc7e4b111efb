"""Filling of the cylinders against Cantera, SciPy and SAE J1349 (1990 form)."""

import numpy as np
import pytest

from windwall import physics

pytestmark = pytest.mark.published

DEGREE = np.pi / 180


def perfect_gas(cantera, gamma):
    """One gas with constant heat capacity, 29 kg/kmol."""
    species = cantera.Species("X", {"N": 2})
    cp = gamma / (gamma - 1) * cantera.gas_constant
    species.thermo = cantera.ConstantCp(200, 5000, 101325, [298.15, 0, 0, cp])
    return cantera.Solution(thermo="ideal-gas", species=[species])


def induct(cantera, ratio, exhaust_pressure, gamma, intake_pressure=100e3, temperature=330.0):
    """Volumetric efficiency of one slow intake stroke in a Cantera reactor with a piston."""
    gas = perfect_gas(cantera, gamma)
    gas.TP = temperature, intake_pressure
    manifold = cantera.Reservoir(gas, clone=True)
    density = gas.density
    gas.TP = 900.0, exhaust_pressure
    swept, clearance = 1.0, 1 / (ratio - 1)
    cylinder = cantera.IdealGasReactor(gas, clone=True, energy="on", volume=clearance)
    crankcase = cantera.Reservoir(gas, clone=True)
    cantera.Wall(cylinder, crankcase, A=1.0, velocity=lambda t: swept if t > 1e-3 else 0.0)
    valve = cantera.Valve(manifold, cylinder, K=5e-2)  # wide: the pressures meet within 1 %
    net = cantera.ReactorNet([cylinder])
    net.max_time_step = 2e-4
    before = cylinder.mass
    net.advance(1e-3)
    net.advance(1e-3 + 1.0)
    assert valve.mass_flow_rate > 0
    return (cylinder.mass - before) / (density * swept)


@pytest.mark.parametrize("ratio", [8, 10])
@pytest.mark.parametrize("pressure_ratio", [0.5, 0.6, 0.8, 0.999])
@pytest.mark.parametrize("gamma", [1.3, 1.4])
def test_ideal_filling_is_that_of_a_reactor_with_a_piston(oracle, ratio, pressure_ratio, gamma):
    cantera = oracle("cantera")
    filled = induct(cantera, ratio, pressure_ratio * 100e3, gamma)
    assert physics.ideal_volumetric_efficiency(ratio, pressure_ratio, gamma) == pytest.approx(
        filled, abs=2e-3
    )


@pytest.mark.parametrize("ratio, pressure_ratio", [(8, 1.2), (8, 2.0), (10, 1.5), (6, 2.5)])
def test_ideal_filling_with_back_flow(oracle, ratio, pressure_ratio):
    # Residual above intake pressure: first law over the gas that ends in the cylinder, all of the
    # residual and the fresh charge, found by SciPy. Enthalpy of the charge in, work of the piston
    # and of the gas pushed back and drawn again at intake pressure.
    brentq = oracle("scipy.optimize").brentq
    gamma, R, T, p = 1.3, 287.0, 330.0, 1e5
    clearance = 1 / (ratio - 1)
    cv = R / (gamma - 1)
    residual_energy = pressure_ratio * p * clearance / (gamma - 1)

    def imbalance(mass):
        end_energy = p * (1 + clearance) / (gamma - 1)
        received = residual_energy + mass * cv * T
        manifold_work = p * mass * R * T / p
        return end_energy - received - manifold_work + p * 1.0

    mass = brentq(imbalance, 0, 5)
    assert physics.ideal_volumetric_efficiency(ratio, pressure_ratio, gamma) == pytest.approx(
        mass * R * T / p, rel=1e-9
    )


def test_one_where_exhaust_and_intake_are_at_one_pressure():
    # Heywood 1988, equation 6.2: for any ratio and any gas.
    ratio, gamma = np.meshgrid(np.linspace(5, 15, 11), [1.25, 1.3, 1.4])
    assert physics.ideal_volumetric_efficiency(ratio, 1.0, gamma) == pytest.approx(1, abs=1e-12)


def quasi_steady(scipy_integrate, index, closing):
    """Filling of a cylinder of ratio 9 through a valve whose area is a squared sine.

    Isentropic orifice both ways, gamma 1.4, rod 3.5 cranks, from top dead centre with residual at
    intake state. Everything in units of intake density, swept volume and sound speed.
    """
    gamma, ratio, rod = 1.4, 9.0, 3.5
    opening = -15.0
    length = 180 + closing - opening
    piston_speed = index * 0.35  # of sound, with a mean area of 0.35 of the piston's

    def volume(deg):
        t = np.radians(deg)
        x = (1 - np.cos(t)) + rod - np.sqrt(rod**2 - np.sin(t) ** 2)
        return 1 / (ratio - 1) + x / 2

    def area(deg):  # mean over the opening is 0.35 of the piston's
        return 0.7 * np.sin(np.pi * (deg - opening) / length) ** 2

    def flux(pressure_ratio):  # over intake density and sound speed
        r = max(pressure_ratio, (2 / (gamma + 1)) ** (gamma / (gamma - 1)))
        return np.sqrt(2 / (gamma - 1) * (r ** (2 / gamma) - r ** ((gamma + 1) / gamma)))

    def slopes(deg, state):
        mass, pressure = state  # over intake density x swept volume, over intake pressure
        step = 1e-4
        v = volume(deg)
        dv = (volume(deg + step) - volume(deg - step)) / (2 * step)
        # Per degree: stroke / (180 deg) at mean piston speed; swept volume = area x stroke.
        scale = area(deg) / (180 * piston_speed)
        if pressure <= 1:
            dm, heat = scale * flux(pressure), 1.0
        else:
            temperature = pressure * v / mass
            out = pressure / np.sqrt(temperature) * flux(1 / pressure)
            dm, heat = -scale * out, temperature
        return [dm, (gamma * dm * heat - gamma * pressure * dv) / v]

    start = [volume(0), 1.0]
    path = scipy_integrate.solve_ivp(
        slopes, (0, 180 + closing), start, rtol=1e-8, atol=1e-10, max_step=1.0
    )
    return path.y[0, -1] - volume(0)


@pytest.mark.parametrize("closing", [20, 40, 60])
def test_filling_over_the_mach_index_integrated_by_scipy(oracle, closing):
    integrate = oracle("scipy.integrate")
    indices = np.array([0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 1.0, 1.2])
    filled = np.array([quasi_steady(integrate, index, closing) for index in indices])
    ours = physics.mach_filling(indices, closing * DEGREE)
    # Relative to the best, as the model uses it. The table has three digits, and the temperature
    # of gas that flows back is a choice that moves the late closing by 0.4 %.
    assert ours == pytest.approx(filled / filled.max(), abs=2e-3 if closing < 60 else 5e-3)


@pytest.mark.parametrize("closing", [20, 40, 60])
@pytest.mark.parametrize("index", [1.4, 1.7])
def test_filling_beyond_the_table(oracle, closing, index):
    # A choked valve passes a fixed flow; 3 % is lost on the shape of the stroke.
    integrate = oracle("scipy.integrate")
    change = quasi_steady(integrate, index, closing) / quasi_steady(integrate, 1.2, closing)
    ours = physics.mach_filling([index, 1.2], closing * DEGREE)
    assert ours[0] / ours[1] == pytest.approx(change, rel=0.03)


def test_filling_falls_quickly_beyond_half():
    # JSME mechanical-engineering dictionary, 11:1002813: it falls off when Z exceeds 0.5.
    closing = np.array([20, 40, 60]) * DEGREE
    before = physics.mach_filling(0.3, closing) - physics.mach_filling(0.5, closing)
    beyond = physics.mach_filling(0.7, closing) - physics.mach_filling(0.9, closing)
    assert np.all(beyond > 1.7 * before)
    assert np.all(physics.mach_filling(0.5, closing) > 0.91)
    assert np.all(physics.mach_filling(1.0, closing) < 0.82)


@pytest.mark.parametrize(
    "pressure, celsius, factor",
    [(990, 25, 1.0000), (950, 35, 1.0701), (850, 15, 1.1711), (1013, 15, 0.9537)],
)
def test_charge_flow_gives_the_power_factor_of_j1349(pressure, celsius, factor):
    # SAE J1349, 1990 form: indicated power goes with the air flow, friction is 15 % of it.
    T, T0 = celsius + 273.0, 298.0

    def air(p, t):
        return p / t * physics.filling_temperature_share(t, T0)

    ours = 1.18 * air(990, T0) / air(pressure, T) - 0.18
    assert ours == pytest.approx(factor, abs=5e-5)


def test_supercharged_worked_example():
    # Open Scilab textbook companion 443, example 19.1: 3.0 L at 3600 rpm, filling 0.82, 12 kW per
    # m3/min of free air, 1 bar and 300 K; blown to 1.6 bar and 355.99 K it fills its whole volume.
    speed = 3600 * np.pi / 30
    swept = physics.swept_flow(3.0e-3, speed) * 60  # m3/min
    assert 12 * 0.82 * swept == pytest.approx(53.136, abs=5e-4)
    free_air = swept * 1.6 * 300 / 355.99
    assert free_air == pytest.approx(7.281, abs=5e-4)
    assert 12 * (free_air - 0.82 * swept) == pytest.approx(34.24, abs=0.01)
    pumping = 0.6e5 * physics.swept_flow(3.0e-3, speed)
    assert pumping == pytest.approx(5.40e3, rel=1e-9)
    assert physics.mean_effective_pressure(5.40e3, 3.0e-3, speed) == pytest.approx(0.6e5, rel=1e-9)
