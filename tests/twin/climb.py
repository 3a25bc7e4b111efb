"""docs/physics/top_speed.md: a pull, the end of each gear, the balance speed and the run-up."""

from functools import cache

from scipy.integrate import quad
from scipy.interpolate import PchipInterpolator
from scipy.optimize import brentq

from twin import road
from twin.twin import point


class Run:
    """Pulls of one vehicle at full throttle, each solved once."""

    def __init__(self, vehicle):
        self.vehicle = vehicle
        self.residuals = 0
        self.cooled = any(p["kind"] == "charge_cooler" for p in self.vehicle["charge_path"])
        self.held = cache(self.solve)
        self.pull = cache(self.solve_pull)

    def solve(self, engine_speed, road_speed):
        answers = point(self.vehicle, engine_speed, 1.0, road_speed)
        self.residuals += answers["residuals"]
        return answers

    def solve_pull(self, gear, engine_speed):
        """Road speed and thrust of one engine speed in one gear, repeated until they agree."""
        vehicle = self.vehicle
        i = road.overall_ratio(vehicle, gear)
        v, before = engine_speed * road.rolling_radius(vehicle["tyres"], 0) / i, -1.0
        while abs(v - before) > 1e-10 * v:
            before = v
            torque = self.held(engine_speed, v if self.cooled else 0.0)["torque"]
            radius = road.rolling_radius(vehicle["tyres"], v)
            wheels = road.wheel_torque(vehicle, gear, engine_speed, torque)
            thrust = min(wheels / radius, road.grip_limit(vehicle))
            v = engine_speed * radius * (1 - road.slip(vehicle, thrust)) / i
        return v, thrust

    def surplus(self, gear, engine_speed):
        v, thrust = self.pull(gear, engine_speed)
        return thrust - road.road_load(self.vehicle, self.vehicle["air"], v)

    def speeds(self):
        """Ten engine speeds from the launch to the rev limit."""
        last = self.vehicle["engine"]["rev_limit"]
        clutches = [p["launch_speed"] for p in self.vehicle["driveline"] if p["kind"] == "clutch"]
        first = clutches[0] if clutches else 0.4 * last
        return [first + (last - first) * k / 9 for k in range(10)]

    def end(self, gear):
        """(engine speed, road speed) where the surplus of a gear ends; None where it never has any."""
        speeds = self.speeds()
        signs = [self.surplus(gear, N) > 0 for N in speeds]
        if not any(signs):
            return None
        last = max(k for k, sign in enumerate(signs) if sign)
        if last == len(speeds) - 1:
            return speeds[-1], self.pull(gear, speeds[-1])[0]
        N = brentq(lambda n: self.surplus(gear, n), speeds[last], speeds[last + 1], xtol=1e-9)
        return N, self.pull(gear, N)[0]


def top_speed(vehicle):
    """Balance speed, the gear and engine speed there, and the speed and time of the run-up."""
    run = Run(vehicle)
    ends = {gear: run.end(gear) for gear in range(road.gears(run.vehicle))}
    reached = {gear: end for gear, end in ends.items() if end}
    gear = max(reached, key=lambda g: reached[g][1])
    answers = {"gear": gear + 1, "engine_speed": reached[gear][0], "speed": reached[gear][1]}
    length = (run.vehicle["goal"] or {}).get("run_up")
    if length:
        answers |= run_up(run, answers["speed"], length)
    return answers | {"residuals": run.residuals}


def thrust_curves(run):
    """For each gear its thrust over road speed, as the page samples it."""
    curves = {}
    for gear in range(road.gears(run.vehicle)):
        pulls = [run.pull(gear, N) for N in run.speeds()]
        curve = PchipInterpolator(*zip(*pulls, strict=True), extrapolate=False)
        curves[gear] = (pulls[0], pulls[-1][0], curve)
    return curves


def acceleration(run, curves, gear, v):
    (v_first, thrust_first), v_last, curve = curves[gear]
    if v > v_last:
        return float("-inf")
    vehicle = run.vehicle
    thrust = thrust_first if v <= v_first else float(curve(v))
    radius = road.rolling_radius(vehicle["tyres"], v)
    resistance = road.road_load(vehicle, vehicle["air"], v)
    return (thrust - resistance) / road.accelerated_mass(vehicle, gear, radius)


def pieces(run, curves, balance_speed):
    """(from, to, gear) over road speed: one gear, and between two samples of every curve."""
    joints = {float(v) for *_, curve in curves.values() for v in curve.x}
    ends = sorted({0.0, 0.2, 2.0} | {v for v in joints if v < balance_speed}) + [balance_speed]

    def best(v):
        return max(curves, key=lambda gear: acceleration(run, curves, gear, v))

    def change(a, b, low, high):
        gap = lambda v: (  # noqa: E731
            acceleration(run, curves, low, v) - acceleration(run, curves, high, v)
        )
        return brentq(gap, a, b) if gap(b) > float("-inf") else b

    for a, b in zip(ends, ends[1:], strict=False):
        nudge = 1e-9 * b
        first, last = best(a + nudge), best(b - nudge)
        if first == last:
            yield a, b, first
        else:
            middle = change(a + nudge, b - nudge, first, last)
            yield a, middle, first
            yield middle, b, last


def run_up(run, balance_speed, length):
    """Speed and time at the end of the road, from rest, by quadrature over road speed."""
    curves, gone, time = thrust_curves(run), 0.0, 0.0
    for a, b, gear in pieces(run, curves, balance_speed):
        b = min(b, balance_speed * (1 - 1e-9))

        def per_speed(v, power, gear=gear):
            return v**power / acceleration(run, curves, gear, v)

        def road_to(v, a=a, f=per_speed):
            return quad(f, a, v, args=(1,), epsrel=1e-8, limit=200)[0]

        stretch = road_to(b)
        if gone + stretch >= length:
            b = brentq(lambda v, gone=gone, to=road_to: gone + to(v) - length, a, b, xtol=1e-9)
        time += quad(per_speed, a, b, args=(0,), epsrel=1e-8, limit=200)[0]
        if gone + stretch >= length:
            return {"run_up_speed": b, "run_up_time": time}
        gone += stretch
    raise ValueError("the balance speed is nearer than the end of the road")
