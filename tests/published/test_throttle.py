"""Butterfly throttles: area integrated by scipy and by Monte Carlo (numpy), sudden expansion by
fluids, and Weisbach's loss coefficients of a throttle valve (1855)."""

import numpy as np
import pytest

from windwall import physics

pytestmark = pytest.mark.published

DEGREE = np.pi / 180
CLOSED = 6 * DEGREE


def integrated_area(quad, bore, shaft, angle, closed):
    """Strip by strip along the shaft: chord of the bore less the wider of plate and shaft."""
    radius = bore / 2
    k = np.cos(angle) / np.cos(closed)

    def gap(x):
        chord = np.sqrt(radius**2 - x**2)
        return 2 * max(chord - max(k * chord, min(shaft / 2, chord)), 0)

    # The plate's edge meets the shaft's where k chord = shaft/2, the shaft the bore's further out.
    breaks = [np.sqrt(radius**2 - half**2) for half in (shaft / 2 / k, shaft / 2) if half < radius]
    return 2 * quad(gap, 0, radius, points=breaks, limit=400, epsabs=1e-13)[0]


@pytest.mark.parametrize("shaft", [0.0, 4e-3, 8e-3, 12e-3])
@pytest.mark.parametrize("angle", [8, 10, 20, 40, 60, 75, 77, 80, 89])
def test_area_against_strips_integrated_by_scipy(oracle, shaft, angle):
    quad = oracle("scipy.integrate").quad
    area = physics.throttle_area(0.038, shaft, angle * DEGREE, CLOSED)
    drawn = integrated_area(quad, 0.038, shaft, angle * DEGREE, CLOSED)
    assert area == pytest.approx(drawn, rel=1e-6, abs=1e-12)


@pytest.mark.parametrize("angle", [30, 60, 75, 90])
def test_area_against_points_thrown_at_the_bore(angle):
    # numpy's PCG64, two million points in the unit square around the bore.
    x, y = np.random.default_rng(1).uniform(-1, 1, (2, 2_000_000))
    in_bore = x**2 + y**2 < 1
    k = np.cos(angle * DEGREE) / np.cos(CLOSED)
    hidden = (np.abs(y) < 8 / 38) | (np.abs(y) < k * np.sqrt(np.clip(1 - x**2, 0, None)))
    share = np.mean(in_bore & ~hidden)
    area = physics.throttle_area(0.038, 0.008, angle * DEGREE, CLOSED)
    spread = np.sqrt(share * (1 - share) / x.size)
    assert area / 0.038**2 == pytest.approx(share, abs=5 * spread)


def loss_coefficient(opening, shaft=0.0, discharge_coefficient=0.8, bore=0.05, drop=60.0):
    """Loss over rho V^2/2 in the pipe, from the flow at a small drop."""
    pressure, temperature = 1e5, 300.0
    flow = physics.throttle_flow(
        pressure,
        temperature,
        pressure - drop,
        opening,
        bore,
        shaft=shaft,
        discharge_coefficient=discharge_coefficient,
    )
    density = pressure / (287.05 * temperature)
    velocity = flow / (density * np.pi / 4 * bore**2)
    return drop / (density * velocity**2 / 2)


@pytest.mark.parametrize("discharge_coefficient", [0.6, 0.7, 0.8])
@pytest.mark.parametrize("shaft", [0.0, 8e-3])
def test_wide_open_it_is_a_sudden_expansion(oracle, discharge_coefficient, shaft):
    # Borda and Carnot as fluids has it, on the velocity of the jet.
    diffuser_sharp = oracle("fluids.fittings").diffuser_sharp
    bore = 0.05
    jet = discharge_coefficient * physics.throttle_area(bore, shaft, np.pi / 2)
    filled = jet / (np.pi / 4 * bore**2)
    expected = diffuser_sharp(Di1=bore * np.sqrt(filled), Di2=bore) / filled**2
    # A drop of 100 Pa in the jet: gas behaves like a liquid there, to about half a percent.
    found = loss_coefficient(1.0, shaft, discharge_coefficient, drop=100 * (1 - filled) ** 2)
    assert found == pytest.approx(expected, rel=0.005)


# Weisbach's throttle valve, a disc in a round pipe: loss coefficient over the angle from wide open,
# as engineering handbooks reprint it (Perry, loss coefficients of fittings: butterfly valve). Water
# past a disc of another shape: a factor of 1.5, over nearly three decades, is what one coefficient
# of discharge can give.
@pytest.mark.parametrize(
    "from_open, printed", [(5, 0.24), (10, 0.52), (20, 1.54), (40, 10.8), (60, 118.0)]
)
def test_loss_of_a_disc_after_weisbach(from_open, printed):
    opening = (84 - from_open) / 84  # of the travel from 6 to 90 degrees
    found = loss_coefficient(opening)
    assert printed / 1.5 < found < printed * 1.5


def test_without_shaft_it_is_the_area_between_two_ellipses():
    # Heywood (1988), chapter 7: 1 - cos(psi)/cos(psi0) of the bore where there is no shaft.
    psi = np.linspace(6, 90, 15) * DEGREE
    expected = np.pi / 4 * 0.038**2 * (1 - np.cos(psi) / np.cos(CLOSED))
    assert physics.throttle_area(0.038, 0.0, psi, CLOSED) == pytest.approx(expected, rel=1e-12)


def test_it_chokes_where_fluids_says(oracle):
    # The flow stops growing below the critical pressure of isentropic flow (1.4).
    critical = oracle("fluids.compressible").P_critical_flow(1e5, 1.4)
    behind = np.array([0.5, 0.99, 1.0, 1.02, 1.2]) * critical
    flow = physics.throttle_flow(1e5, 300.0, behind, 0.3, 0.038)
    assert flow[:2] == pytest.approx(flow[2], rel=1e-9)
    assert np.all(np.diff(flow[2:]) < 0)
