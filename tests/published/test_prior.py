"""Distributions of what is not known exactly, against those of SciPy."""

import numpy as np
import pytest
from scipy import stats

import windwall as ww
from windwall.study.draws import drawn_values, normal_draws
from windwall.study.prior import Prior
from windwall.study.worlds import uncertain

pytestmark = pytest.mark.published


@pytest.fixture(scope="module")
def prior():
    """Each number by itself."""
    car = ww.load("scenarios/airfield_cyclecar.json")
    return Prior(car, np.eye(len(uncertain(car).address)))


def grid(prior, place, scores):
    """One number at these scores, all others in their middle."""
    z = np.zeros((len(scores), len(prior)))
    z[:, place] = scores
    return prior.to_values(z)[:, place]


SCORES = np.array([-3.5, -1.0, -0.2, 0.0, 0.7, 2.0, 3.5])


def reference(prior, i):
    """SciPy's distribution of a number, cut at its range."""
    value, sigma, low, high = (x[i] for x in (prior.value, prior.sigma, prior.low, prior.high))
    if low > 0:
        spread = np.sqrt(np.log1p((sigma / value) ** 2))
        whole = stats.lognorm(spread, scale=value)
        ends = whole.cdf([low, high])
        return lambda share: whole.ppf(ends[0] + share * (ends[1] - ends[0]))
    return stats.truncnorm((low - value) / sigma, (high - value) / sigma, value, sigma).ppf


def test_every_number_has_the_distribution_that_is_promised(prior):
    kinds = set()
    for i, address in enumerate(prior.addresses):
        expected = reference(prior, i)(stats.norm.cdf(SCORES))
        # SciPy's own share loses digits in the far tail, hence not 1e-12.
        assert grid(prior, i, SCORES) == pytest.approx(expected, rel=1e-7, abs=1e-9), address
        kinds.add(bool(prior.low[i] > 0))
    assert kinds == {True, False}


def test_what_is_stated_stays_the_middle_where_nothing_is_cut(prior):
    middle = prior.to_values(np.zeros((1, len(prior))))[0]
    free = (prior._lowest < -6.5) & (prior._highest > 6.5)
    assert free.sum() > 20
    assert middle[free] == pytest.approx(prior.value[free], rel=1e-9)


def test_there_and_back(prior):
    z = np.random.default_rng(3).standard_normal((50, len(prior)))
    assert prior.to_z(prior.to_values(z)) == pytest.approx(z, abs=1e-6)


def test_correlated_numbers_are_correlated(prior):
    both = np.eye(len(prior))
    i, j = (prior.addresses.index(f"body/{key}") for key in ("mass", "rolling_resistance"))
    both[i, j] = both[j, i] = -0.7
    together = Prior(ww.load("scenarios/airfield_cyclecar.json"), both)
    z = np.random.default_rng(1).standard_normal((20000, len(prior)))
    values = together.to_values(z)
    assert np.corrcoef(values[:, i], np.log(values[:, j]))[0, 1] == pytest.approx(-0.7, abs=0.02)
    assert together.to_z(values[:9]) == pytest.approx(z[:9], abs=1e-6)
    one = stats.kstest(together.to_values(z)[:, i], lambda x: stats.norm.cdf(x, 348, 5))
    assert one.pvalue > 0.001


def test_draws_are_even_and_the_same_for_the_same_seed(prior):
    z = normal_draws(len(prior), 256, 7)
    np.testing.assert_array_equal(z, normal_draws(len(prior), 256, 7))
    assert not np.array_equal(z, normal_draws(len(prior), 256, 8))
    # Of 256 points one lies in each of 256 equal strips: independent draws leave a third empty.
    strips = np.floor(stats.norm.cdf(z) * 256).astype(int)
    assert all(len(set(column)) == 256 for column in strips.T)
    assert drawn_values(prior, 256, 7).shape == z.shape


@pytest.mark.parametrize("count", [0, 1, 100, 3 * 2**20])
def test_counts_that_are_not_even_are_refused(count):
    with pytest.raises(ValueError, match="powers of two"):
        normal_draws(3, count)
