"""docs/physics/top_speed.md: a pull, the end of each gear, the balance speed and the run-up."""

from functools import cache
from itertools import pairwise

from scipy.integrate import quad
from scipy.interpolate import CubicSpline
from scipy.optimize import brentq

from twin import road
from twin.twin import point

SAMPLES = 12


class Run:
    """Pulls of one vehicle at full throttle, each solved once, and counted."""

    def __init__(self, vehicle):
        self.vehicle = vehicle
        self.residuals = 0
        self.pull = cache(self.solve_pull)

    def torque(self, engine_speed, road_speed):
        answers = point(self.vehicle, engine_speed, 1.0, road_speed)
        self.residuals += answers["residuals"]
        return answers["torque"]

    def solve_pull(self, gear, engine_speed):
        """Road speed and thrust of one engine speed in one gear, repeated until they agree."""
        vehicle, i = self.vehicle, road.overall_ratio(self.vehicle, gear)
        v, before = engine_speed * road.rolling_radius(vehicle["tyres"], 0) / i * 0.98, -1.0
        while abs(v - before) > 1e-7 * v:
            before = v
            torque = self.torque(engine_speed, v)
            radius = road.rolling_radius(vehicle["tyres"], v)
            wheels = road.wheel_torque(vehicle, gear, engine_speed, torque)
            thrust = min(wheels / radius, road.grip_limit(vehicle))
            v = engine_speed * radius * (1 - road.slip(vehicle, thrust)) / i
        return v, thrust

    def surplus(self, gear, engine_speed):
        v, thrust = self.pull(gear, engine_speed)
        return thrust - road.road_load(self.vehicle, self.vehicle["air"], v)

    def speeds(self):
        """Engine speeds from the launch to the rev limit."""
        last = self.vehicle["engine"]["rev_limit"]
        clutches = [p["launch_speed"] for p in self.vehicle["driveline"] if p["kind"] == "clutch"]
        first = clutches[0] if clutches else 0.4 * last
        return [first + (last - first) * k / (SAMPLES - 1) for k in range(SAMPLES)]

    def end(self, gear):
        """(engine speed, road speed) where the surplus of a gear ends; None where there is none."""
        speeds = self.speeds()
        last = max((k for k, N in enumerate(speeds) if self.surplus(gear, N) > 0), default=None)
        if last is None:
            return None
        N = speeds[last]
        if speeds[-1] > N:
            N = brentq(lambda n: self.surplus(gear, n), N, speeds[last + 1], xtol=1e-8)
        return N, self.pull(gear, N)[0]


def top_speed(vehicle):
    """Balance speed, the gear and engine speed there, and the speed and time of the run-up.

    The fastest gear's end is taken: vehicles with a gap between their gears are not for this twin.
    """
    run = Run(vehicle)
    ends = {gear: run.end(gear) for gear in range(road.gears(vehicle))}
    gear = max((gear for gear in ends if ends[gear]), key=lambda gear: ends[gear][1])
    answers = {"gear": gear + 1, "engine_speed": ends[gear][0], "speed": ends[gear][1]}
    length = vehicle["goal"]["run_up"]
    if length:
        answers |= run_up(run, gear, answers["speed"], length)
    return answers | {"residuals": run.residuals}


def thrust_curves(run, gear, speed):
    """For each gear its first pull, and a spline of its thrust through dense true points.

    The last gear's is brought through its balance, where the integrand of the run-up is steepest;
    where the rev limit ends it with thrust to spare, its last pull is the end already.
    """
    curves = {}
    for each in range(road.gears(run.vehicle)):
        pulls = [run.pull(each, N) for N in run.speeds()]
        if each == gear and speed < pulls[-1][0] * (1 - 1e-6):
            balance = road.road_load(run.vehicle, run.vehicle["air"], speed)
            pulls = [pull for pull in pulls if abs(pull[0] / speed - 1) > 1e-6] + [(speed, balance)]
        pulls = sorted((float(v), float(thrust)) for v, thrust in pulls)
        curves[each] = (pulls[0], pulls[-1][0], CubicSpline(*zip(*pulls, strict=True)))
    return curves


def acceleration(run, curves, gear, v):
    (v_first, thrust_first), v_last, curve = curves[gear]
    if v > v_last:
        return float("-inf")
    vehicle, slips = run.vehicle, v < v_first
    thrust = thrust_first if slips else float(curve(v))
    radius = road.rolling_radius(vehicle["tyres"], v)
    resistance = road.road_load(vehicle, vehicle["air"], v)
    return (thrust - resistance) / road.accelerated_mass(vehicle, gear, radius, slips)


def start_gear(run, curves):
    """The greatest acceleration from rest; within a thousandth the one of the largest reduction."""
    at_rest = {gear: acceleration(run, curves, gear, 0.0) for gear in curves}
    best = max(at_rest.values())
    equal = [gear for gear in curves if at_rest[gear] > best - 1e-3 * abs(best)]
    return max(equal, key=lambda gear: road.overall_ratio(run.vehicle, gear))


def pieces(run, curves, end):
    """(from, to, gear) over road speed: one gear, and between two samples of every curve.

    The gear of the start is kept until its clutch has ceased to slip.
    """
    started = start_gear(run, curves)
    locked = curves[started][0][0]
    joints = {float(v) for *_, curve in curves.values() for v in curve.x}
    ends = sorted({0.0, 0.2, 2.0} | {v for v in joints if v < end}) + [end]

    def best(v):
        if v < locked:
            return started
        return max(curves, key=lambda gear: acceleration(run, curves, gear, v))

    def gap(v, low, high):
        return acceleration(run, curves, low, v) - acceleration(run, curves, high, v)

    for a, b in pairwise(ends):
        first, last = best(a + 1e-7 * (b - a)), best(b - 1e-7 * (b - a))
        middle = b
        if first != last:
            middle = brentq(gap, a + 1e-7 * (b - a), b - 1e-7 * (b - a), args=(first, last))
            yield middle, b, last
        yield a, middle, first


def coast(vehicle, v):
    """The speed after a change of gear, and the time it takes; the road is felt half-way."""
    spent = max([part["shift_time"] for part in vehicle["driveline"] if "shift_time" in part] + [0])
    body, radius = vehicle["body"], road.rolling_radius(vehicle["tyres"], 0.0)
    wheels = body["rotating_share"] * body["mass"]
    if body["wheel_inertia"] is not None:
        wheels = body["wheel_inertia"] / radius**2

    def slowed(u, t):
        return v - road.road_load(vehicle, vehicle["air"], u) / (body["mass"] + wheels) * t

    return slowed(slowed(v, spent / 2), spent), spent


def run_up(run, gear, balance_speed, length):
    """The gear of the start, and speed and time at the end, by quadrature over road speed."""
    curves = thrust_curves(run, gear, balance_speed)
    started = {"start_gear": start_gear(run, curves) + 1}
    gone = time = 0.0
    highest = started["start_gear"] - 1
    for a, b, gear in sorted(pieces(run, curves, balance_speed * (1 - 1e-9))):

        def per_speed(v, power, gear=gear):
            return v**power / acceleration(run, curves, gear, v)

        def between(a, b, power, f=per_speed):
            return quad(f, a, b, args=(power,), epsrel=1e-8, limit=200)[0]

        if gear > highest:
            highest = gear
            low, spent = coast(run.vehicle, a)
            way = spent * (low + a) / 2 + between(low, a, 1)
            lasts = spent + between(low, a, 0)
            if gone + way >= length:
                share = (length - gone) / way
                return started | {"run_up_speed": a, "run_up_time": time + lasts * share}
            gone, time = gone + way, time + lasts
        stretch = between(a, b, 1)
        if gone + stretch >= length:
            b = brentq(lambda v, a=a, gone=gone: gone + between(a, v, 1) - length, a, b, xtol=1e-9)
            return started | {"run_up_speed": b, "run_up_time": time + between(a, b, 0)}
        gone, time = gone + stretch, time + between(a, b, 0)
    # what is left of the road is driven at the speed that stays
    rest = (length - gone) / balance_speed
    return started | {"run_up_speed": balance_speed, "run_up_time": time + rest}
