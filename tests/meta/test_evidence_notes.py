"""What the page of evidence shows is what was compared."""

import numpy as np
import pytest

from evidence.notes import Check, watching
from evidence.page import of_check


@pytest.fixture
def check():
    return Check("test_here", "test_it", "It is so", remembered=False)


def numbers(check):
    return [(one.ours, one.theirs, pytest.approx(one.tolerance)) for one in check.compared]


@pytest.mark.parametrize(
    "actual, expected",
    [(2.1, 2.0), (np.array([1.0, 2.1]), [1.0, 2.0]), ({"a": 2.1}, {"a": 2.0}), ([2.1], [2.0])],
)
def test_what_approx_is_asked_is_noted(check, actual, expected):
    assert actual == watching(pytest.approx, check)(expected, rel=0.1)
    assert (check.compared[-1].ours, check.compared[-1].theirs) == (2.1, 2.0)
    assert check.compared[-1].share == pytest.approx(0.5)


def test_tolerances_are_those_of_approx(check):
    approx = watching(pytest.approx, check)
    assert approx(4.0) == 4.0
    assert approx(4.0, abs=0.1) == 4.0
    assert approx(4.0, rel=0.1, abs=0.1) == 4.0
    assert numbers(check) == [(4, 4, 4e-6), (4, 4, 0.1), (4, 4, 0.4)]


def test_what_is_not_so_is_neither_noted_nor_passed(check):
    assert watching(pytest.approx, check)(1.0) != 2.0
    assert check.compared == []


@pytest.mark.parametrize("held, passes", [(None, False), (0.3, True), (0.2, False)])
def test_a_bound_holds_the_target_or_what_was_found(check, held, passes):
    if passes:
        check.at_most("error", 0.25, 0.1, held)
        assert not check.bounds[0].met
    else:
        with pytest.raises(AssertionError):
            check.at_most("error", 0.25, 0.1, held)


def test_a_least_is_not_a_most(check):
    check.at_least("pairs", 14, 10)
    with pytest.raises(AssertionError):
        check.at_least("pairs", 9, 10)


def test_near_is_held(check):
    check.near(1.0, 1.2, 0.25, "a gain")
    with pytest.raises(AssertionError):
        check.near([1.0, 1.6], 1.2, 0.25)


def test_the_worst_of_a_test_has_its_line_and_a_claim_its_own(check):
    check.cases = 3
    check.near([1.0, 1.1], [1.0, 1.0], 0.2)
    check.near(2.0, 1.0, 1.0, "twice")
    check.at_most("median", 0.1, 0.2)
    assert of_check(check) == [
        "| It is so | 3 | 1.1 | 1 | 10 % | 20 % |",
        "| twice |  | 2 | 1 | 1e+02 % | 1e+02 % |",
        "| median |  | 0.1 |  |  | at most 0.2 |",
    ]


def test_without_numbers_a_line_says_why(check):
    assert of_check(check) == ["| It is so | 0 |  |  |  | bounds |"]
    check.drawn = True
    assert of_check(check)[0].endswith("| drawn |")
