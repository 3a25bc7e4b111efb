"""How a spray comes in: its first seconds beside SciPy's linear systems and Lambert's function, the
film on the wall as Aquino has it (SAE 810494, 1981), and pulses counted out by NumPy."""

import numpy as np
import pytest
from scipy import integrate, signal, special

from windwall import physics

pytestmark = pytest.mark.published

RPM = np.pi / 30


@pytest.mark.parametrize("rise_time", [0.05, 0.3, 1.0])
@pytest.mark.parametrize("fill_time", [0.01, 0.2, 2.0])
def test_the_line_is_full_when_lamberts_function_says(rise_time, fill_time):
    """The volume pumped is t - tau (1 - exp(-t/tau)) of the whole flow; scipy.special.lambertw."""
    whole = 1 + fill_time / rise_time
    expected = 0.1 + rise_time * (whole + special.lambertw(-np.exp(-whole)).real)
    start = physics.spray_start(0.1, rise_time, fill_time, 0.5, 0.4, np.zeros(1))
    assert start["first_liquid"] == pytest.approx(expected, rel=1e-9)


@pytest.mark.parametrize("share, film_time", [(0.15, 0.2), (0.5, 0.5), (0.8, 1.5)])
def test_pump_and_film_are_two_lags_in_a_row(share, film_time):
    """Aquino's wall film, SAE 810494: a share X stays for a time tau, so that the transfer to the
    valves is (1 - X) + X/(1 + tau s); behind a pump of first order, by scipy.signal."""
    rise_time = 0.3
    film = ([(1 - share) * film_time, 1], [film_time, 1])
    line = signal.TransferFunction(film[0], np.polymul(film[1], [rise_time, 1]))
    time, expected = signal.step(line, T=np.linspace(0, 4, 400))
    found = physics.spray_start(0.25, rise_time, 0, share, film_time, time + 0.25)
    assert found["arrived"] == pytest.approx(expected, abs=1e-9)


def test_a_line_that_is_filled_first_by_solve_ivp():
    """Three states and one event, by scipy.integrate.solve_ivp."""
    delay, rise, fill, share, film = 0.1, 0.3, 0.25, 0.6, 0.5

    def rates(t, y):
        full = y[1] >= fill
        return [(1 - y[0]) / rise, 0 if full else y[0], (y[0] - y[2]) / film if full else 0]

    def filled(t, y):
        return y[1] - fill

    filled.terminal = True
    tight = {"rtol": 1e-11, "atol": 1e-13}
    first = integrate.solve_ivp(rates, (0, 10), [0, 0, 0], events=filled, **tight)
    wet = first.t_events[0][0]
    begun = [first.y[0, -1], fill, 0]
    later = integrate.solve_ivp(rates, (wet, wet + 3), begun, t_eval=[wet + 0.3, wet + 3], **tight)
    found = physics.spray_start(delay, rise, fill, share, film, later.t + delay)
    assert found["first_liquid"] == pytest.approx(delay + wet, rel=1e-9)
    arrived = (1 - share) * later.y[0] + share * later.y[2]
    assert found["arrived"] == pytest.approx(arrived, rel=1e-8)


@pytest.mark.parametrize("period, open_share", [(0.05, 0.46), (0.05, 0.1), (0.01, 0.7), (0.2, 0.9)])
@pytest.mark.parametrize("speed", [1000, 3000, 4321, 7000])
def test_strokes_and_pulses_counted_out(period, open_share, speed):
    """NumPy's mean and deviation over strokes of 240 degrees at every phase to the pulses."""
    begins = (np.arange(200_000) + 0.5) / 200_000 * period
    stroke = 4 * np.pi / (speed * RPM) / 3

    def opened(time):
        whole = np.floor(time / period)
        return whole * open_share * period + np.minimum(time - whole * period, open_share * period)

    caught = opened(begins + stroke) - opened(begins)
    found = physics.cycle_spread(period, open_share, speed * RPM)
    assert found == pytest.approx(caught.std() / caught.mean(), abs=1e-5)
