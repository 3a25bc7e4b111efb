"""What can only hold back never makes faster, and what cancels in two directions cancels."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from windwall import physics

pytestmark = pytest.mark.worked


@given(
    st.floats(1e3, 1e5),
    st.floats(60, 900),
    st.floats(0.05, 1.5),
    st.floats(0.005, 0.04),
    st.floats(1.001, 1.5),
)
def test_more_mass_or_drag_is_never_faster(power, mass, area, coefficient, more):
    def top(mass, area, coefficient):
        return physics.top_speed_for_power(power, coefficient * mass * 9.80665, 0.6 * area)

    base = top(mass, area, coefficient)
    assert top(mass * more, area, coefficient) < base
    assert top(mass, area * more, coefficient) < base
    assert top(mass, area, coefficient * more) < base


@given(st.floats(1e3, 1e5), st.floats(0, 500), st.floats(0.05, 1), st.floats(0.1, 20))
def test_a_headwind_is_slower_than_a_tailwind(power, constant, square, wind):
    ahead, still, behind = physics.top_speed_for_power(power, constant, square, [wind, 0, -wind])
    assert ahead < still < behind


@given(st.floats(1, 60), st.floats(0.1, 15), st.floats(0.05, 1.5))
def test_two_directions_leave_the_square_of_the_wind(speed, wind, area):
    load = physics.road_load(speed + wind, 300, area, 0.015, 1.2, headwind=[wind, -wind, 0.0])
    excess = np.mean(load[:2]) - load[2]
    assert excess == pytest.approx(0.6 * area * wind**2, rel=1e-6)


@given(st.floats(2, 60), st.floats(0.001, 0.3))
def test_a_slope_pulls_back_as_much_as_on(speed, grade):
    up, down, level = physics.road_load(speed, 300, 0.45, 0.0, 1.2, grade=[grade, -grade, 0.0])
    assert up - level == pytest.approx(level - down, rel=1e-9)
    assert up - level == pytest.approx(300 * 9.80665 * np.sin(np.arctan(grade)), rel=1e-9)


@given(st.floats(1e3, 1e5), st.floats(0, 500), st.floats(0.05, 1), st.floats(1, 2e3))
def test_a_run_up_ends_below_the_top_speed(power, constant, square, distance):
    top = physics.top_speed_for_power(power, constant, square)
    reached = physics.run_up_constant_power_speed(330, power, constant, square, distance)
    lighter = physics.run_up_constant_power_speed(320, power, constant, square, distance)
    assert reached <= lighter <= top
    # Once at the terminal speed to the last digit, mass no longer tells.
    if reached < 0.999 * top:
        assert reached < lighter


@given(st.floats(5, 60), st.floats(100, 3e3))
def test_time_and_speed_of_a_run_bracket_its_length(end, thrust):
    """Where acceleration never rises: distance <= time x end speed <= 2 distance."""
    top = np.sqrt((thrust - 44) / 0.27)
    end = min(end, 0.99 * top)
    time = physics.run_up_constant_force_time(330, thrust, 44, 0.27, 0.0, end)
    distance = physics.run_up_constant_force_distance(330, thrust, 44, 0.27, 0.0, end)
    assert distance <= time * end <= 2 * distance * (1 + 1e-12)


def test_without_losses_time_and_speed_make_three_halves_of_the_length():
    time = physics.run_up_constant_power_time(330, 17e3, 0.0, 0.0, 30.0)
    distance = physics.run_up_constant_power_distance(330, 17e3, 0.0, 0.0, 30.0)
    assert time * 30 == pytest.approx(1.5 * distance, rel=1e-14)
