"""Drives against closed forms and against quadrature by NumPy and SciPy: constant thrust from
standstill (elementary integrals of m dv/(F - a - c v^2)), rolling out, constant power, and four
gears with their changes.

Thrust here does not depend on what the tyres slip, the engine's speed does: where a gear is left
is worked out with it. Rolling resistance is rounded at standstill, tanh(v/0.1 m/s), which is worth
a thousandth of a second at a start; where a closed form has no room for that nothing rolls.
"""

import numpy as np
import pytest
from scipy.integrate import solve_ivp

from published.driven import (
    CONSTANT,
    MASS,
    RADIUS,
    RPM,
    SHARE,
    SQUARE,
    drive,
    slip,
    vehicle,
)
from windwall import physics

pytestmark = pytest.mark.published

ACCELERATED = MASS * (1 + SHARE)
FLAT = [(500, 25.0), (12000, 25.0)]
THRUST = 25.0 * 9.0 / RADIUS


def rolling(speed):
    return CONSTANT * np.tanh(speed / 0.1)


class TestConstantThrust:
    CAR = vehicle([9.0], FLAT, rolling_resistance=0.0)
    ENDS = np.sqrt(THRUST / SQUARE)

    @pytest.mark.parametrize("speed", [5.0, 15.0, 30.0])
    def test_time(self, speed):
        scale = ACCELERATED / (SQUARE * self.ENDS)
        expected = scale * np.arctanh(speed / self.ENDS)
        assert self.CAR.time_to(f"{speed} m/s") == pytest.approx(expected, rel=1e-6)

    @pytest.mark.parametrize("distance", [20.0, 250.0])
    def test_distance(self, distance):
        grown = np.exp(2 * SQUARE * distance / ACCELERATED)
        speed = self.ENDS * np.sqrt(1 - 1 / grown)
        scale = ACCELERATED / (SQUARE * self.ENDS)
        expected = scale * np.arctanh(speed / self.ENDS)
        assert self.CAR.time_over(f"{distance} m") == pytest.approx(expected, rel=1e-6)


class TestConstantPower:
    """A torque that falls with speed; what the tyres slip is lost, F (v + P/(C F_z)) = P."""

    SPEEDS = np.geomspace(500, 12000, 150)
    POWER = 12e3
    TABLE = np.column_stack([SPEEDS, POWER / (SPEEDS * RPM)])
    CAR = vehicle([9.0], TABLE)

    def thrust(self, speed):
        """By fixed point, with the torque as it stands in the table."""
        force = 500.0
        for _ in range(60):
            turning = max(speed / (1 - slip(force)) * 9.0 / RADIUS / RPM, 1000.0)
            force = np.interp(turning, *self.TABLE.T) * 9.0 / RADIUS
        return force

    def test_time_and_distance(self):
        edges = np.concatenate([np.linspace(0, 2, 400), np.linspace(2, 25, 2000)[1:]])
        nodes, weights = np.polynomial.legendre.leggauss(4)
        half = np.diff(edges)[:, None] / 2
        speeds = edges[:-1, None] + half * (1 + nodes)
        pulls = np.vectorize(self.thrust)(speeds) - rolling(speeds) - SQUARE * speeds**2
        steps = half * weights * ACCELERATED / pulls
        time, distance = steps.sum(), (steps * speeds).sum()
        # The corners of the drawn torque cost a step its order: 1e-6 where it is asked for more.
        assert self.CAR.time_to("25 m/s") == pytest.approx(time, rel=1e-5)
        assert self.CAR.time_over(f"{distance} m") == pytest.approx(time, rel=1e-5)

    def test_nearly_as_in_closed_form(self):
        """From 10 to 25 m/s without slip, by the cubic's partial fractions."""
        held = (ACCELERATED, self.POWER, CONSTANT, SQUARE)
        closed = np.subtract(*physics.run_up_constant_power_time(*held, [25.0, 10.0]))
        found = self.CAR.time_to("25 m/s") - self.CAR.time_to("10 m/s")
        assert found == pytest.approx(closed, rel=5e-3)


class TestRollingOut:
    LEGS = (
        {"kind": "full_throttle", "to_speed": "30 m/s"},
        {"kind": "coast", "to_speed": "10 m/s"},
    )

    def test_time_and_distance(self):
        run = drive(vehicle([9.0], FLAT), *self.LEGS)
        rolls = [at for at, phase in enumerate(run["phase"]) if phase == "coasting"]
        first, last = (
            rolls[0] - 1,
            rolls[-1],
        )  # the moment it begins is kept once, as one of pulling
        time, distance = (run[key][last] - run[key][first] for key in ("time", "distance"))
        assert run["road/speed"][first] == pytest.approx(30.0, abs=1e-6)
        held = (ACCELERATED, CONSTANT, SQUARE, 30.0, 10.0)
        assert time == pytest.approx(float(physics.coast_down_time(*held)), rel=1e-6)
        assert distance == pytest.approx(float(physics.coast_down_distance(*held)), rel=1e-6)
        turning = np.sqrt(CONSTANT * SQUARE) / ACCELERATED
        scale = np.sqrt(CONSTANT / SQUARE)
        by_hand = (np.arctan(30 / scale) - np.arctan(10 / scale)) / turning
        assert time == pytest.approx(by_hand, rel=1e-6)


class TestFourGears:
    RATIOS = (14.0, 9.0, 6.5, 5.2)
    TORQUE, EFFICIENCY, INERTIA = 25.0, 0.85, 0.015
    SHIFT_SPEED, SHIFT_TIME, LAUNCH = 8000 * RPM, 0.4, 1000 * RPM
    CAR = vehicle(RATIOS, FLAT, EFFICIENCY, INERTIA, SHIFT_TIME)

    def thrust(self, gear):
        return self.TORQUE * self.RATIOS[gear] * self.EFFICIENCY / RADIUS

    def road_speed(self, gear, engine_speed, turning=0.0):
        """By fixed point: of the thrust what turns takes its share before the tyres."""
        wheels = speed = engine_speed * RADIUS / self.RATIOS[gear]
        for _ in range(60):
            load = rolling(speed) + SQUARE * speed**2
            share = turning / (ACCELERATED + turning)
            speed = wheels * (1 - slip((1 - share) * self.thrust(gear) + share * load))
        return speed

    def rolled(self, state, end, thrust, mass):
        """Time, distance and speed behind a stretch that ends at a speed or a time."""
        time, distance, speed = state
        fast = ("speed", "distance").index(end[0]) if end[0] in ("speed", "distance") else None

        def rates(_, now):
            return [now[1], (thrust - rolling(now[1]) - SQUARE * now[1] ** 2) / mass]

        def there(_, now):
            return now[1 - fast] - end[1]

        there.terminal = True
        last = time + end[1] if fast is None else 1e3
        events = None if fast is None else there
        run = solve_ivp(
            rates, (time, last), [distance, speed], events=events, rtol=1e-11, atol=1e-11
        )
        return run.t[-1], run.y[0, -1], run.y[1, -1]

    def stretches(self):
        """Every stretch of the run: until what, thrust and accelerated mass."""
        yield ("speed", self.road_speed(0, self.LAUNCH)), self.thrust(0), ACCELERATED
        for gear, ratio in enumerate(self.RATIOS):
            turning = self.INERTIA * (ratio / RADIUS) ** 2
            mass = ACCELERATED + turning
            last = gear + 1 == len(self.RATIOS)
            top = 1e9 if last else self.road_speed(gear, self.SHIFT_SPEED, turning)
            yield ("speed", top), self.thrust(gear), mass
            if not last:
                yield ("time", self.SHIFT_TIME), 0.0, ACCELERATED

    def worked(self, key, value):
        """Seconds to a speed or a distance, stretch by stretch."""
        state = (0.0, 0.0, 0.0)
        for end, thrust, mass in self.stretches():
            place = {"speed": 2, "distance": 1}[key]
            beyond = self.rolled(state, (key, value), thrust, mass) if thrust else None
            after = self.rolled(state, end, thrust, mass) if end[1] < 1e9 else None
            if after is None or (after[place] >= value and beyond):
                return beyond[0]
            state = after
        raise AssertionError("the run ends before it gets there")

    @pytest.mark.parametrize("speed", [10.0, 20.0, 26.8224, 30.0])
    def test_time_to_a_speed(self, speed):
        found = self.CAR.time_to(f"{speed} m/s", shift_speed="8000 rpm")
        assert found == pytest.approx(self.worked("speed", speed), rel=1e-6)

    @pytest.mark.parametrize("distance", [30.0, 100.0, 201.168, 402.336])
    def test_time_over_a_distance(self, distance):
        found = self.CAR.time_over(f"{distance} m", shift_speed="8000 rpm")
        assert found == pytest.approx(self.worked("distance", distance), rel=1e-6)
