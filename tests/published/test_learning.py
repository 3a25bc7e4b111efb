"""Learning from facts against SciPy, NumPy, lmfit, emcee, iminuit and the closed form of Bayesian
linear regression (C. M. Bishop, Pattern Recognition and Machine Learning, 2006, section 3.3).

No vehicle takes part: models are lines and curves that are written down here.
"""

import numpy as np
import pytest
from scipy.stats import norm, t

from windwall.study.calibrate_likelihood import ABOVE, BELOW, Likelihood
from windwall.study.calibrate_maximum import find_maximum
from windwall.study.calibrate_moments import moments, of_numbers

pytestmark = pytest.mark.published

SLOPES = np.array([[1.0, 0.4, 0.0], [0.3, -1.2, 0.5], [0.0, 0.7, 0.7], [2.0, 0.0, -1.0]])
LEVEL = np.array([1.0, -2.0, 0.5, 3.0])
VALUE = np.array([1.8, -1.4, 0.2, 3.1])
SIGMA = np.array([0.3, 0.5, 0.2, 1.0])


def straight(z):
    return LEVEL + z @ SLOPES.T


def numbers(**further):
    return Likelihood(VALUE, SIGMA, np.zeros(4), **further)


def learned(model, likelihood, size=3):
    return find_maximum(model, likelihood, np.zeros(size))


def closed_form(value=VALUE, sigma=SIGMA, slopes=SLOPES, level=LEVEL):
    """Equations 3.50 and 3.51 there, with a prior of one."""
    precision = np.eye(slopes.shape[1]) + slopes.T @ np.diag(sigma**-2) @ slopes
    covariance = np.linalg.inv(precision)
    return covariance @ slopes.T @ ((value - level) / sigma**2), covariance


def test_a_straight_model_is_the_closed_form_update():
    at = learned(straight, numbers())
    mean, covariance = closed_form()
    np.testing.assert_allclose(at.z, mean, atol=1e-6)
    found = moments(at, numbers())
    np.testing.assert_allclose(found.mean, mean, atol=1e-6)
    np.testing.assert_allclose(found.covariance, covariance, atol=1e-6)


def test_one_fact_is_the_update_of_one_number():
    """Precisions add, and the mean lies between by their weights."""
    one = Likelihood(np.array([2.0]), np.array([0.5]), np.zeros(1))
    found = moments(learned(lambda z: z, one, 1), one)
    assert found.mean[0] == pytest.approx(2 * 4 / 5, abs=1e-9)
    assert found.covariance[0, 0] == pytest.approx(1 / 5, abs=1e-9)


def test_lmfit_finds_the_same():
    lmfit = pytest.importorskip("lmfit")
    names = ["a", "b", "c"]
    unknown = lmfit.Parameters()
    for name in names:
        unknown.add(name, value=0.0)

    def residuals(there):
        z = np.array([there[name].value for name in names])
        return np.concatenate([z, (straight(z) - VALUE) / SIGMA])

    fitted = lmfit.minimize(residuals, unknown, scale_covar=False)
    found = moments(learned(straight, numbers()), numbers())
    np.testing.assert_allclose([fitted.params[one].value for one in names], found.mean, atol=1e-5)
    np.testing.assert_allclose(fitted.covar, found.covariance, rtol=1e-4, atol=1e-6)


def test_emcee_walks_the_same():
    emcee = pytest.importorskip("emcee")
    likelihood = numbers()

    def log_posterior(z):
        return likelihood.log(straight(z)) - 0.5 * np.sum(z**2, axis=1)

    sampler = emcee.EnsembleSampler(32, 3, log_posterior, vectorize=True)
    sampler.random_state = np.random.RandomState(4).get_state()
    sampler.run_mcmc(np.random.RandomState(5).normal(size=(32, 3)), 3000)
    chain = sampler.get_chain(discard=500, flat=True)
    worth = len(chain) / np.max(sampler.get_autocorr_time(discard=500))
    found = moments(learned(straight, likelihood), likelihood)
    spread = np.sqrt(np.diag(found.covariance))
    # Four standard errors of a mean, and of a standard deviation, from that many equal draws.
    np.testing.assert_array_less(np.abs(chain.mean(0) - found.mean) / spread, 4 / np.sqrt(worth))
    np.testing.assert_array_less(np.abs(chain.std(0) / spread - 1), 4 / np.sqrt(2 * worth))


def bent(z):
    """A line and a curve, as power and drag give a speed."""
    return np.stack([np.exp(0.2 * z[:, 0]) - 0.3 * z[:, 1], (1 + 0.1 * z[:, 1]) ** 3], axis=1)


def test_iminuit_has_the_same_covariance_of_a_bent_model():
    """Gauss and Newton leave out how the model bends, which counts by how far it misses the facts:
    here by a tenth of a standard deviation, which is worth a part in a hundred.
    """
    iminuit = pytest.importorskip("iminuit")
    likelihood = Likelihood(np.array([1.03, 1.03]), np.array([0.1, 0.15]), np.zeros(2))

    def loss(z):
        z = np.asarray(z)[None, :]
        return float(0.5 * np.sum(z**2) - likelihood.log(bent(z))[0])

    minuit = iminuit.Minuit(loss, np.zeros(2))
    minuit.errordef = iminuit.Minuit.LIKELIHOOD
    minuit.migrad()
    minuit.hesse()
    at = learned(bent, likelihood, 2)
    np.testing.assert_allclose(at.z, minuit.values, atol=2e-3)
    np.testing.assert_allclose(of_numbers(at, likelihood).covariance, minuit.covariance, rtol=0.02)


@pytest.mark.parametrize("side", [ABOVE, BELOW])
@pytest.mark.parametrize("value", [-1.0, 0.0, 1.5])
def test_a_bound_cuts_a_normal_distribution_smoothly(side, value):
    """Mean and variance of a normal distribution times a probit, by quadrature."""
    likelihood = Likelihood(np.array([value]), np.array([0.5]), np.array([side]))
    found = moments(learned(lambda z: 0.3 + 1.2 * z, likelihood, 1), likelihood)
    z = np.linspace(-9, 9, 200001)
    density = norm.pdf(z) * norm.cdf(side * (0.3 + 1.2 * z - value) / 0.5)
    density /= density.sum()
    mean = np.sum(z * density)
    assert found.mean[0] == pytest.approx(mean, abs=1e-6)
    assert found.covariance[0, 0] == pytest.approx(np.sum((z - mean) ** 2 * density), abs=1e-6)


def test_residuals_are_the_loss_and_slopes_theirs():
    side = np.array([0, 0, ABOVE, BELOW])
    off = np.linspace(-6, 6, 49)
    for tails in (None, 4.0):
        likelihood = Likelihood(VALUE, SIGMA, side, tails)
        model = VALUE + off[:, None] * SIGMA
        residuals = likelihood.residuals(model)
        density = norm.logpdf(off) if tails is None else t.logpdf(off, tails)
        np.testing.assert_allclose(
            0.5 * residuals[:, 0] ** 2, density.max() - density, rtol=1e-6, atol=1e-9
        )
        np.testing.assert_allclose(0.5 * residuals[:, 2] ** 2, -norm.logcdf(off), rtol=1e-9)
        np.testing.assert_allclose(0.5 * residuals[:, 3] ** 2, -norm.logcdf(-off), rtol=1e-9)
        step = 1e-6
        up, down = (likelihood.residuals(model + way * step * SIGMA) for way in (1, -1))
        slopes = (up - down) / (2 * step * SIGMA)
        np.testing.assert_allclose(likelihood.slopes(model), slopes, rtol=2e-4, atol=1e-4)


def test_an_outlier_pulls_less_by_students_t():
    """Five readings of one number, the last of them twelve standard deviations off."""
    read, sigma = np.array([1.1, 0.9, 1.0, 1.05, 4.6]), np.full(5, 0.3)

    def same(z):
        return np.repeat(z, 5, axis=1)

    by_normal = learned(same, Likelihood(read, sigma, np.zeros(5)), 1).z[0]
    by_tails = learned(same, Likelihood(read, sigma, np.zeros(5), 4.0), 1).z[0]
    right = np.sum(read[:4]) / 0.09 / (1 + 4 / 0.09)  # without it, and with the prior
    assert by_normal > 1.6
    assert by_tails == pytest.approx(right, abs=0.15)
