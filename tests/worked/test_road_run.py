"""Four gears at constant torque, worked two ways: by the closed forms and by SciPy with events.

25 N m up to 8000 rpm, overall ratios 14, 9, 6.5 and 5.2, rolling radius 0.27 m, efficiency 0.85;
300 kg, of which 1.20, 1.10, 1.06 and 1.04 times are accelerated; a change takes 0.4 s without drive
at 309 kg; rolling 44.129925 N, drag 0.27 v2; from rest, no limit of grip.
"""

import numpy as np
import pytest
from scipy import integrate

from windwall import physics

pytestmark = pytest.mark.worked

RATIOS = (14, 9, 6.5, 5.2)
MASSES = (360, 330, 318, 312)
ROLLING, DRAG = 44.129925, 0.27
SHIFT, SHIFT_MASS = 0.4, 309
LIMIT = 8000 * np.pi / 30
RADIUS = 0.27


def thrust(gear):
    return physics.stage_torque(25.0, 500.0, RATIOS[gear], 0.85) / RADIUS


def changing_speed(gear):
    return physics.overall_ratio_speed(LIMIT, RATIOS[gear], RADIUS)


def legs():
    """(gear or None, start speed, time, place) of each leg of the run."""
    speed = time = place = 0.0
    found = []
    for gear in range(3):
        found.append((gear, speed, time, place))
        arguments = (MASSES[gear], thrust(gear), ROLLING, DRAG, speed, changing_speed(gear))
        time += physics.run_up_constant_force_time(*arguments)
        place += physics.run_up_constant_force_distance(*arguments)
        speed = changing_speed(gear)
        found.append((None, speed, time, place))
        after = physics.coast_down_speed(SHIFT_MASS, ROLLING, DRAG, speed, SHIFT)
        place += physics.coast_down_distance(SHIFT_MASS, ROLLING, DRAG, speed, after)
        time += SHIFT
        speed = after
    return [*found, (3, speed, time, place)]


def test_thrust_in_each_gear():
    expected = [1101.85185, 708.33333, 511.57407, 409.25926]
    np.testing.assert_allclose([thrust(gear) for gear in range(4)], expected, atol=6e-6)


def test_changes():
    # Speed and time before each change; speed, time and place after it.
    before = [(16.156762, 5.626291), (25.132741, 11.535532), (34.799180, 26.648607)]
    after = [
        (16.009231, 6.026291, 52.405610),
        (24.857261, 11.935532, 176.514570),
        (34.324567, 27.048607, 638.351588),
    ]
    found = legs()
    np.testing.assert_allclose([leg[1:3] for leg in found[1::2]], before, atol=6e-7)
    np.testing.assert_allclose([leg[1:] for leg in found[2::2]], after, atol=2e-6)


@pytest.mark.parametrize(
    ("leg", "distance", "time", "speed"),
    [
        (2, 100.0, 8.627349, 20.528311),
        (4, 201.168, 12.909539, 25.759126),
        (4, 402.336, 19.936977, 31.185046),
    ],
)
def test_speed_and_time_over_distances(leg, distance, time, speed):
    gear, start, began, place = legs()[leg]
    reached = physics.run_up_constant_force_speed(
        MASSES[gear], thrust(gear), ROLLING, DRAG, start, distance - place
    )
    took = physics.run_up_constant_force_time(
        MASSES[gear], thrust(gear), ROLLING, DRAG, start, reached
    )
    assert reached == pytest.approx(speed, abs=2e-6)
    assert began + took == pytest.approx(time, abs=2e-6)


def test_terminal_speed_lies_below_the_limit_of_engine_speed():
    gear, start, _, _ = legs()[-1]
    terminal = physics.run_up_constant_force_speed(
        MASSES[gear], thrust(gear), ROLLING, DRAG, start, 1e6
    )
    assert terminal == pytest.approx(36.774052, abs=6e-7)
    assert terminal < changing_speed(gear) == pytest.approx(43.4990, abs=6e-5)


def drive(gear, seconds, speed, place, until=None):
    """One leg by the ODE solver: end time, speed and place."""
    force, mass = (0.0, SHIFT_MASS) if gear is None else (thrust(gear), MASSES[gear])

    def change(_, y):
        return y[0] - (until or np.inf)

    change.terminal = True
    run = integrate.solve_ivp(
        lambda _, y: [(force - ROLLING - DRAG * y[0] ** 2) / mass, y[0]],
        (0, seconds), [speed, place], method="DOP853", rtol=1e-12, atol=1e-12,
        events=change if until else None,
    )  # fmt: skip
    return run.t[-1], *run.y[:, -1]


def test_against_the_differential_equation():
    speed = place = time = 0.0
    for gear, start, began, where in legs():
        assert (time, speed, place) == pytest.approx((began, start, where), rel=1e-9, abs=1e-9)
        if gear == 3:
            return
        until = None if gear is None else changing_speed(gear)
        took, speed, place = drive(gear, SHIFT if gear is None else 100, speed, place, until)
        time += took
