"""What readings teach, and what choosing after them is worth, against hand-worked results.

The update of a normal prior by normal readings is that of any handbook (Gelman et al., Bayesian
Data Analysis, 3rd ed., section 2.5); the value of choosing between two after a reading is the unit
normal loss (Raiffa and Schlaifer, Applied Statistical Decision Theory, 1961, section 5.4).
"""

import numpy as np
import pytest
from scipy import integrate, stats

from windwall.study.information import gain_of_choosing, gain_of_two, left, taught
from windwall.study.information_drawn import gain_over_draws, left_over_draws

pytestmark = pytest.mark.published


def test_one_reading_of_one_number():
    # Prior 1, sensor 0.5: the posterior variance is 1 / (1 + 4) by the sum of precisions.
    taken = taught(np.array([[1.0]]), np.array([[0.25]]))
    assert left(np.array([1.0]), taken) == pytest.approx(np.sqrt(1 / 5), rel=1e-12)


def test_the_update_equals_the_sum_of_precisions():
    dice = np.random.default_rng(3)
    gradients = dice.normal(size=(3, 6))
    noise = np.diag([0.2, 0.5, 1.0]) + 0.05
    posterior = np.linalg.inv(np.eye(6) + gradients.T @ np.linalg.inv(noise) @ gradients)
    taken = taught(gradients, noise)
    assert np.eye(6) - taken == pytest.approx(posterior, rel=1e-6, abs=1e-9)


def test_two_actions_by_hand():
    # They differ by one and a reading will move that by two: 2 (pdf(1/2) - 1/2 sf(1/2)) with the
    # printed table's pdf(0.5) = 0.35207 and sf(0.5) = 0.30854.
    assert gain_of_two(1.0, 2.0) == pytest.approx(2 * (0.35207 - 0.5 * 0.30854), abs=1e-5)
    # The unit normal loss at zero is 0.39894.
    assert gain_of_two(0.0, 1.0) == pytest.approx(0.39894, abs=1e-5)


def test_two_actions_of_the_model():
    # Worked on paper: speeds 10 and 9, slopes (1, 0) and (0, 2), a reading of the second number
    # with a sensor as good as the prior. It takes half of 4 off the second's variance: their
    # difference will move by sqrt(2).
    taken = taught(np.array([[0.0, 1.0]]), np.array([[1.0]]))
    gain = gain_of_choosing(np.array([10.0, 9.0]), np.array([[1.0, 0.0], [0.0, 2.0]]), taken)
    by_hand = integrate.quad(
        lambda x: max(0, x) * stats.norm.pdf(x, -1, np.sqrt(2)), -12, 12, points=[0]
    )[0]
    assert gain == pytest.approx(by_hand, rel=1e-8)


def test_two_actions_that_move_together():
    # Slopes (1, 0.5) and (0, 2): their difference falls by 1.5 of the second number, of which the
    # sensor tells half the variance: it will move by 1.5 / sqrt(2).
    taken = taught(np.array([[0.0, 1.0]]), np.array([[1.0]]))
    gain = gain_of_choosing(np.array([10.0, 9.5]), np.array([[1.0, 0.5], [0.0, 2.0]]), taken)
    assert gain == pytest.approx(gain_of_two(0.5, 1.5 / np.sqrt(2)), rel=1e-12)


def test_a_third_action_that_never_wins_changes_nothing():
    taken = taught(np.array([[0.0, 1.0]]), np.array([[1.0]]))
    means, lines = np.array([10.0, 9.0, 0.0]), np.array([[1.0, 0.0], [0.0, 2.0], [0.0, 0.1]])
    two = gain_of_choosing(means[:2], lines[:2], taken)
    assert gain_of_choosing(means, lines, taken) == pytest.approx(two, rel=5e-3)


def test_three_actions_against_a_quadrature():
    # Independent and equal: the mean of the largest of three standard normal numbers is
    # 3 / (2 sqrt(pi)) (order statistics, any table).
    gain = gain_of_choosing(np.zeros(3), np.eye(3), np.eye(3))
    assert gain == pytest.approx(3 / (2 * np.sqrt(np.pi)), rel=2e-3)


def test_nothing_is_worth_nothing():
    means, lines = np.array([3.0, 2.9, 2.8]), np.random.default_rng(1).normal(size=(3, 4))
    known = taught(np.zeros((1, 4)), np.array([[0.1]]))  # a number that is known exactly
    assert gain_of_choosing(means, lines, known) == 0
    assert left(lines[0], known) == 1
    assert gain_of_two(1.0, 0.0) == 0


def test_no_reading_is_worth_less_than_nothing():
    dice = np.random.default_rng(7)
    for _ in range(50):
        count = int(dice.integers(2, 6))
        lines = dice.normal(size=(count, 5))
        taken = taught(dice.normal(size=(2, 5)), np.diag(dice.uniform(0.01, 3, 2)))
        gain = gain_of_choosing(dice.normal(size=count), lines, taken)
        perfect = gain_of_choosing(dice.normal(size=count), lines, np.eye(5))
        assert gain >= 0
        assert perfect >= 0


def test_a_better_sensor_is_worth_more():
    means, lines = np.array([1.0, 0.5]), np.array([[1.0, 0.2], [0.1, 0.9]])
    gains = [
        gain_of_choosing(means, lines, taught(np.array([[0.4, -1.0]]), np.array([[noise]])))
        for noise in (0.01, 0.1, 1.0, 10.0)
    ]
    assert gains == sorted(gains, reverse=True)


@pytest.fixture(scope="module")
def straight():
    """A linear world, drawn: what the theory says must come out of the draws."""
    dice = np.random.default_rng(11)
    z = dice.normal(size=(4096, 5))
    lines = np.array([[1.0, 0.5, 0.0, 0.3, 0.0], [0.2, -0.8, 0.4, 0.0, 0.3]])
    reads = np.array([[0.6, -0.9, 0.1, 0.0, 0.0]])
    return z, np.array([20.0, 19.7]), lines, reads, np.array([[1.5]])


def test_draws_agree_with_the_theory_where_all_is_straight(straight):
    z, means, lines, reads, noise = straight
    taken = taught(reads, noise)
    gain, error = gain_over_draws(z @ reads.T, noise, means + z @ lines.T)
    assert abs(gain - gain_of_choosing(means, lines, taken)) < 3 * error
    kept = left_over_draws(z @ reads.T, noise, z @ lines[0])
    assert kept == pytest.approx(left(lines[0], taken), rel=0.03)


def test_draws_see_what_straight_lines_do_not():
    # The second is better at both ends of what is read, which no slope through the middle tells.
    z = np.random.default_rng(5).normal(size=(2048, 1))
    speeds = np.column_stack([np.ones(len(z)), z[:, 0] ** 2])
    exact = (
        integrate.quad(lambda x: max(x * x, 1) * stats.norm.pdf(x), -8, 8, points=[-1, 1])[0] - 1
    )
    gain, error = gain_over_draws(z, np.array([[1e-6]]), speeds)
    assert abs(gain - exact) < 3 * error
    assert gain > 0.3


def test_a_curve_through_few_draws_teaches_nothing_by_itself():
    # Fitted to the draws it is judged by, it would leave sqrt(1 - 3/64) of nothing but noise.
    dice = np.random.default_rng(13)
    kept = [
        left_over_draws(dice.normal(size=(64, 1)), np.array([[0.1]]), dice.normal(size=64))
        for _ in range(20)
    ]
    assert np.mean(kept) > 0.99


def test_draws_of_what_says_nothing_are_worth_nothing():
    dice = np.random.default_rng(9)
    speeds = dice.normal(size=(2048, 3)) + [0.6, 0.0, -0.2]
    gain, error = gain_over_draws(np.zeros((2048, 1)), np.array([[1.0]]), speeds)
    assert gain <= 2 * error
    assert left_over_draws(np.zeros((2048, 1)), np.array([[1.0]]), speeds[:, 0]) > 0.99
