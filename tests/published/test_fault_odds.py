"""Odds of faults in cases that can be worked out: straight lines, one reading, one severity.

Densities, chances and quadratures are SciPy's; the odds are Bayes' rule.
"""

from math import log, sqrt

import numpy as np
import pytest
from scipy import integrate, stats

from windwall.study.fault_odds import LISTENING, Curve, Seen, chances, fit, fit_without

pytestmark = pytest.mark.published


def seen(values, sigmas, gradient, words=None):
    return Seen(np.array(values, float), np.array(sigmas, float), words or {}, np.array(gradient))


def straight(most, *slopes):
    severities = np.linspace(0, most, 8)
    return Curve(severities, severities[:, None] * np.array(slopes), most)


def test_no_fault_is_a_normal_density():
    # Sensor and vehicle in quadrature: 3 and 4 make 5.
    found = fit_without(seen([7.0], [3.0], [[4.0]]), np.array([1.0]))
    assert found.evidence == pytest.approx(stats.norm.logpdf(7, 1, 5), rel=1e-12)
    assert found.misfit == pytest.approx((6 / 5) ** 2)


def test_a_fault_is_the_mean_over_its_severities():
    # A normal density over an even spread of severities from 0 to 4, each moving the reading by 2.
    found = fit(seen([3.0], [0.5], [[0.0]]), straight(4.0, 2.0))
    exact = (stats.norm.cdf(8, 3, 0.5) - stats.norm.cdf(0, 3, 0.5)) / 8
    assert found.evidence == pytest.approx(log(exact), abs=1e-4)
    assert found.severity == pytest.approx(1.5, rel=1e-3)
    assert found.spread == pytest.approx(0.25, rel=1e-2)


def test_readings_that_share_the_doubt_of_the_vehicle():
    # A reference by a general library: the multivariate normal density, integrated over severities.
    gradient = np.array([[1.0, 0.3], [0.8, -0.2], [0.1, 0.9]])
    values, sigmas = np.array([1.2, 0.4, -0.3]), np.array([0.4, 0.5, 0.6])
    slopes = np.array([0.5, -0.4, 0.2])
    spread = gradient @ gradient.T + np.diag(sigmas**2)
    exact = integrate.quad(
        lambda s: stats.multivariate_normal.pdf(values, slopes * s, spread) / 3, 0, 3
    )[0]
    found = fit(seen(values, sigmas, gradient), straight(3.0, *slopes))
    assert found.evidence == pytest.approx(log(exact), abs=1e-4)


@pytest.mark.parametrize("word, side", [("heard", -1), ("not heard", 1)])
def test_what_was_heard_is_a_probit(word, side):
    # Alone: the margin is 2 with a doubt of 3 and an ear of LISTENING.
    found = fit_without(seen([np.nan], [0.0], [[3.0]], {0: word}), np.array([2.0]))
    exact = stats.norm.cdf(side * 2 / sqrt(9 + LISTENING**2))
    assert found.evidence == pytest.approx(log(exact), rel=1e-9)


def test_what_was_heard_counts_with_the_numbers_given():
    # The joint chance by two-dimensional quadrature: reading r = z + error, margin m = 2 z + 1.
    sigma = 0.7
    found = fit_without(
        seen([0.9, np.nan], [sigma, 0.0], [[1.0], [2.0]], {1: "heard"}), np.array([0.0, 1.0])
    )
    exact = integrate.quad(
        lambda z: (
            stats.norm.pdf(z)
            * stats.norm.pdf(0.9, z, sigma)
            * stats.norm.cdf(-(1 + 2 * z) / LISTENING)
        ),
        -8,
        8,
    )[0]
    assert found.evidence == pytest.approx(log(exact), abs=1e-6)


def test_at_the_edge_the_margin_is_none():
    found = fit_without(seen([np.nan], [0.0], [[3.0]], {0: "at the edge"}), np.array([2.0]))
    exact = stats.norm.logpdf(0, 2, sqrt(9 + LISTENING**2))
    assert found.evidence == pytest.approx(exact, rel=1e-9)


def test_odds_are_those_of_bayes():
    # Prior 1 to 1, likelihoods 0.2 and 0.6: 1 to 3.
    assert chances([log(0.2), log(0.6)], [0.5, 0.5]) == pytest.approx([0.25, 0.75])
    assert chances([log(0.2), log(0.6)], [0.9, 0.1]) == pytest.approx([0.75, 0.25])


def test_a_severity_without_an_answer_explains_nothing():
    whole, cut = straight(4.0, 2.0), straight(2.0, 2.0)._replace(most=4.0)
    near, far = seen([1.0], [0.2], [[0.0]]), seen([7.0], [0.2], [[0.0]])
    assert fit(near, cut).evidence == pytest.approx(fit(near, whole).evidence, abs=1e-3)
    assert fit(far, cut).evidence < fit(far, whole).evidence - 50
