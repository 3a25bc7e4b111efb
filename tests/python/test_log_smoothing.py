"""A local parabola: without bias where the truth is one, and as sure as it says."""

import numpy as np
import pytest

from windwall.logs.smoothing import Noise, local_quadratic, noise_of


def uneven(rng, count=60):
    return np.sort(rng.uniform(-1.2, 1.2, count))


def test_a_parabola_is_met_exactly_on_uneven_steps():
    time = uneven(np.random.default_rng(1))
    found = local_quadratic(time, 3 - 2 * time + 5 * time**2, 0.1, 0.6)
    assert found.level == pytest.approx(3 - 0.2 + 0.05, abs=1e-12)
    assert found.slope == pytest.approx(-2 + 1.0, abs=1e-12)


def test_a_cubic_biases_the_slope_by_what_is_stated():
    time, half = np.linspace(-1, 1, 4001), 0.5
    found = local_quadratic(time, time**3, 0.0, half)
    assert found.level == pytest.approx(0, abs=1e-12)
    assert found.slope == pytest.approx(6 * half**2 / 10, rel=2e-3)


@pytest.mark.published
def test_on_equal_steps_it_is_the_filter_of_savitzky_and_golay():
    """Against SciPy's `savgol_filter`, order 2 on 11 rows: level and slope."""
    from scipy.signal import savgol_filter

    values = np.random.default_rng(2).normal(size=101).cumsum()
    time = 0.1 * np.arange(101)
    level = savgol_filter(values, 11, 2)
    slope = savgol_filter(values, 11, 2, deriv=1, delta=0.1)
    for at in (10, 37, 90):
        found = local_quadratic(time, values, time[at], 0.5)
        assert found.rows == 11
        assert found.level == pytest.approx(level[at], abs=1e-10)
        assert found.slope == pytest.approx(slope[at], abs=1e-9)


def drawn(rho, count, rng):
    """Noise of one standard deviation whose neighbours are tied."""
    noise = rng.normal(size=count)
    for at in range(1, count):
        noise[at] = rho * noise[at - 1] + np.sqrt(1 - rho**2) * noise[at]
    return noise


@pytest.mark.parametrize("rho", [0.0, 0.6])
def test_the_spread_is_as_large_as_it_says(rho):
    """Of 300 noisy parabolas: the root mean square of error over ± is one. 0.1 is twice what chance
    leaves of it, and the correlation that is found in 200 rows is not quite the true one.
    """
    rng, time = np.random.default_rng(3), np.arange(-1, 9, 0.05)
    errors = []
    for _ in range(300):
        values = 2 + time - time**2 + 0.1 * drawn(rho, len(time), rng)
        known = noise_of(time, values, 1.0)
        found = local_quadratic(time, values, 0.0, 1.0, known)
        errors.append(
            [(found.level - 2) / found.level_sigma, (found.slope - 1) / found.slope_sigma]
        )
    level, slope = np.sqrt(np.mean(np.square(errors), axis=0))
    assert level == pytest.approx(1, abs=0.1)
    assert slope == pytest.approx(1, abs=0.1)


def test_tied_rows_would_be_far_too_sure_without_the_correction():
    rng, time = np.random.default_rng(4), np.arange(-1, 3, 0.05)
    errors = []
    for _ in range(200):
        values = 0.1 * drawn(0.6, len(time), rng)
        found = local_quadratic(time, values, 0.0, 1.0)
        errors.append(found.level / found.level_sigma)
    assert np.sqrt(np.mean(np.square(errors))) > 1.5


def test_rounding_is_a_spread_too():
    time = np.arange(-1, 3, 0.05)
    known = noise_of(time, np.where(time < 0.95, 20.0, 20.5), 0.5)
    assert known.rounding == 0.5
    found = local_quadratic(time, np.full(len(time), 20.0), 0.0, 0.9, Noise(0.0, 0.5))
    assert found.level == pytest.approx(20)
    # 37 rows, of which a parabola leaves 9/4 of the variance of their mean in the middle.
    assert found.level_sigma == pytest.approx(0.5 / np.sqrt(12) * 1.5 / np.sqrt(37), rel=0.02)


def test_too_few_rows_or_rows_to_one_side_say_nothing():
    time = np.arange(0, 1, 0.05)
    assert local_quadratic(time, time, 0.0, 0.5) is None
    assert local_quadratic(time[:5], time[:5], 0.1, 0.5) is None
    holes = np.where((time > 0.3) & (time < 0.8), np.nan, time)
    assert local_quadratic(time, holes, 0.5, 0.3) is None
