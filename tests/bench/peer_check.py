"""The compiled peer beside the core: that both answer the same, and what a point costs the peer."""

import time
from itertools import product
from math import radians
from statistics import median

import numpy as np

import windwall
from bench.peer import Peer
from twin import twin
from twin.reading import told

# Both close the balance to 1e-11 of the flow; plates with little drop leave a hundred times that.
CLOSE = 1e-9
SHARES = np.linspace(0.3, 1, 12)  # of the rev limit
ROAD_SPEEDS = (0.0, 29.0)
REPEATS, MANY = 7, 2000


# What is nearly nothing is held against these: N m, rad.
LEAST = {"torque": 1, "retard": radians(1)}


def on_petrol(scenario):
    """The same without alcohol in its tank, whose evaporation the peer does not have."""
    return scenario.set({"fuel/ethanol": "0 %", "fuel/methanol": "0 %"})


def asked(vehicle):
    """Engine and road speeds to compare at, rad/s and m/s."""
    return list(product(SHARES * vehicle["engine"]["rev_limit"], ROAD_SPEEDS))


def of_the_core(scenario, engine_speed, road_speed):
    """What the peer answers, from the core; None where no later spark holds the margin."""
    si = windwall.si
    held = scenario.operating_point(si(engine_speed), si(1.0), si(road_speed))
    if held.status != "solved":
        return None
    point = held.to_dict()["point"]
    manifold, engine = point["manifold"], point["engine"]
    return {
        "flow": [part["outlet"]["flow"] for part in point["charge_path"].values()][-1],
        "pressure": manifold["pressure"],
        "temperature": manifold["temperature"],
        "torque": engine["torque"],
        "retard": point["knock"]["retard"],
        "exhaust": engine["exhaust_gas_temperature"],
    }


def differences(scenario):
    """Largest relative difference of each point both answer; where only one does it is infinite."""
    vehicle = twin.understood(told(scenario))
    points = asked(vehicle)
    answers = Peer(vehicle).points(points)
    found = []
    for k, point in enumerate(points):
        core = of_the_core(scenario, *point)
        if (core is not None) != answers["answered"][k]:
            found.append(np.inf)
        elif core is not None:
            found.append(max(apart(core[key], answers[key][k], LEAST.get(key, 0)) for key in core))
    return found


def apart(core, peer, least):
    return abs(peer - core) / max(abs(core), least)


def cost_of_points(vehicle):
    """Microseconds and evaluations of a cold point and of one from its neighbour.

    At the speeds of `cost_of_points` in bench.cpp.
    """
    peer, limit = Peer(vehicle), vehicle["engine"]["rev_limit"]
    points = [(limit * (0.9 + 0.05 * (k % 3)), 20.0) for k in range(MANY)]
    costs = []
    for cold in (True, False):
        times = []
        for _ in range(REPEATS):
            start = time.process_time()
            answers = peer.points(points, cold)
            times.append(time.process_time() - start)
        costs.append((1e6 * median(times) / MANY, answers["evaluations"].mean()))
    return costs
