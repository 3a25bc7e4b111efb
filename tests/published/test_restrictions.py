"""Filters, pipes and bends against fluids (Churchill, Colebrook, Ergun, isothermal flow, Rennels,
Miller) and against the U.S. Standard Atmosphere 1976."""

import numpy as np
import pytest

from windwall import physics

pytestmark = pytest.mark.published


@pytest.mark.parametrize("roughness", [0.0, 1e-5, 5e-4, 0.01])
@pytest.mark.parametrize("reynolds", [1.0, 500.0, 2300.0, 4e3, 2e4, 1e5, 1e6])
def test_friction_factor_is_churchills(oracle, reynolds, roughness):
    expected = oracle("fluids").friction_factor(reynolds, roughness, Method="Churchill_1977")
    assert physics.darcy_friction_factor(reynolds, roughness) == pytest.approx(expected, rel=1e-9)


@pytest.mark.parametrize("roughness", [0.0, 5e-5, 5e-4, 5e-3])
@pytest.mark.parametrize("reynolds", [1e4, 3e4, 1e5, 3e5])
def test_friction_factor_is_near_colebrooks(oracle, reynolds, roughness):
    # Churchill's one formula for all regimes is known to leave Colebrook by up to about 3 %.
    expected = oracle("fluids").friction_factor(reynolds, roughness, Method="Colebrook")
    assert physics.darcy_friction_factor(reynolds, roughness) == pytest.approx(expected, rel=0.03)


@pytest.mark.parametrize("altitude", [0, 2000, 6000, 10000])
def test_viscosity_of_the_standard_atmosphere(oracle, altitude):
    air = oracle("fluids.atmosphere").ATMOSPHERE_1976(altitude)
    assert physics.air_viscosity(air.T) == pytest.approx(air.mu, rel=1e-5)


@pytest.mark.parametrize("temperature", [260.0, 300.0, 400.0, 500.0])
def test_viscosity_against_real_air(oracle, temperature):
    # CoolProp's reference correlation (Lemmon and Jacobsen, 2004).
    expected = oracle("CoolProp.CoolProp").PropsSI("V", "T", temperature, "P", 1e5, "Air")
    assert physics.air_viscosity(temperature) == pytest.approx(expected, rel=0.015)


@pytest.mark.parametrize("flow", [0.005, 0.03, 0.06])
def test_a_pipe_with_a_bend_against_fluids(oracle, flow):
    fluids = oracle("fluids")
    density, viscosity, bore, length = 1.17, 1.85e-5, 0.038, 0.8
    velocity = flow / (density * np.pi / 4 * bore**2)
    reynolds = fluids.Reynolds(V=velocity, D=bore, rho=density, mu=viscosity)
    friction = fluids.friction_factor(reynolds, 2e-5 / bore, Method="Churchill_1977")
    bend = fluids.fittings.bend_rounded(Di=bore, angle=90, fd=friction, bend_diameters=1.5)
    K = fluids.K_from_f(friction, length, bore) + bend
    found = physics.duct_pressure_drop(flow, density, viscosity, length, bore, bend, 2e-5)
    assert found == pytest.approx(fluids.dP_from_K(K, density, velocity), rel=1e-9)


def test_the_usual_bend_lies_between_rennels_and_miller(oracle):
    # The default of a duct's loss coefficient, 0.3, claims to be one bend of these.
    bend = oracle("fluids.fittings").bend_rounded
    values = [
        bend(Di=0.038, angle=90, bend_diameters=radius, Re=6e4, fd=0.0207, method=method)
        for radius in (1.0, 1.5)
        for method in ("Rennels", "Miller")
    ]
    assert min(values) < 0.3 < max(values)


@pytest.mark.parametrize("flow, tolerance", [(0.02, 0.004), (0.04, 0.014), (0.08, 0.055)])
def test_incompressible_flow_is_near_enough(oracle, flow, tolerance):
    # fluids' isothermal pipe flow of a gas, at Mach 0.04, 0.09 and 0.17 in a 38 mm pipe. What is
    # left out is the gas speeding up as it expands: some 1.8 Mach^2 of the drop.
    fluids = oracle("fluids")
    pressure, temperature, bore, length = 1e5, 300.0, 0.038, 1.0
    density = pressure / (287.05 * temperature)
    viscosity = physics.air_viscosity(temperature)
    reynolds = 4 * flow / (np.pi * bore * viscosity)
    friction = physics.darcy_friction_factor(reynolds, 2e-5 / bore)
    behind = fluids.isothermal_gas(density, friction, P1=pressure, L=length, D=bore, m=flow)
    drop = physics.duct_pressure_drop(flow, density, viscosity, length, bore, 0.0, 2e-5)
    assert pressure - behind > drop > (1 - tolerance) * (pressure - behind)


def test_a_filter_is_a_bed_after_ergun(oracle):
    # A bed of 0.3 mm grains, 90 % empty, 20 mm deep, 0.03 m2: Ergun's sum of a viscous and an
    # inertial loss. One point and the viscous share of it give every other flow and density.
    ergun = oracle("fluids.packed_bed").Ergun
    area, viscosity = 0.03, 1.85e-5

    def bed(flow, density):
        velocity = flow / (density * area)
        return ergun(dp=3e-4, voidage=0.9, vs=velocity, rho=density, mu=viscosity, L=0.02)

    def viscous(flow, density):
        return ergun(
            dp=3e-4, voidage=0.9, vs=flow / (density * area), rho=1e-12, mu=viscosity, L=0.02
        )

    drop, share = bed(0.025, 1.2), viscous(0.025, 1.2) / bed(0.025, 1.2)
    assert 0.1 < share < 0.9
    for flow in (0.002, 0.01, 0.05, 0.1):
        for density in (0.9, 1.2, 1.4):
            found = physics.filter_pressure_drop(flow, density, drop, 0.025, share, 1.2)
            assert found == pytest.approx(bed(flow, density), rel=1e-9)
