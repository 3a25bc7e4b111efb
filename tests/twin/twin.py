"""The model a second time, from docs/physics alone: plain floats, SciPy's root finders, slow.

`point` and `top_speed` count under "residuals" how often the balance of the engine was evaluated.
"""

from functools import cache
from math import radians

from scipy.optimize import brentq

from twin import engine as cylinder
from twin import heat
from twin.balance import balance
from twin.gas import weather
from twin.reading import scenario as read

LEAST_OPENING = 0.2  # where a throttle before a blower leaves far less than six tenths


class NoStateError(Exception):
    """No state in which the engine could run."""


def understood(source):
    """The vehicle of a file's path or document, with the air of its day."""
    vehicle = read(source)
    return vehicle | {"air": weather(vehicle["day"])}


def margin(vehicle, held, balanced, retard):
    engine = vehicle["engine"]
    state = balanced["stations"][-1][1]
    w = vehicle["air"]["w"]
    needs = cylinder.requirement(engine, held["engine_speed"], state, balanced, w, retard)
    return cylinder.octane_index(engine, vehicle["fuel"], balanced["mixture"]) - needs


def held_off_knock(vehicle, held):
    """Balance, retard and opening: a later spark, a richer mixture with it, then less throttle."""
    engine, spark = vehicle["engine"], vehicle["engine"]["spark"]
    wanted, most, count = cylinder.wanted_margin(engine), spark["most_retard"], [0]

    @cache
    def balance_at(opening, richer):
        balanced = balance(vehicle, held | {"opening": opening, "enrichment": richer})
        count[0] += balanced["residuals"]
        return balanced

    def at(retard, opening=held["opening"]):
        balanced = balance_at(opening, cylinder.enrichment(engine, retard))
        return balanced, margin(vehicle, held, balanced, retard) - wanted

    def answer(retard, opening=held["opening"]):
        return opening, at(retard, opening)[0], retard, count[0]

    if spark["policy"] == "as_given":
        given = cylinder.given_retard(engine, held["engine_speed"])
        return held["opening"], balance(vehicle, held), given, 0
    lacking = radians(max(0.0, -at(0.0)[1]))
    if lacking <= min(radians(cylinder.RICHER_FROM), most):
        return answer(lacking)

    def latest(opening=held["opening"]):
        """Where the plan ends, or behind the richest mixture the exhaust is as hot as it may be."""

        def too_hot(retard):
            balanced = at(retard, opening)[0]
            return heat.exhaust(vehicle, held, balanced, retard) - spark["hottest_exhaust"]

        richest = min(most, cylinder.richest_at(engine))
        if too_hot(richest) >= 0:
            return richest
        if too_hot(most) <= 0:
            return most
        return brentq(too_hot, richest, most, xtol=1e-13, rtol=1e-14)

    def spare_at_the_end(opening=held["opening"]):
        return at(latest(opening), opening)[1]

    if spare_at_the_end() >= 0:
        return answer(brentq(lambda d: at(d)[1], 0.0, latest(), xtol=1e-13, rtol=1e-14))
    if spare_at_the_end(LEAST_OPENING) < 0:
        raise NoStateError
    opening = brentq(spare_at_the_end, LEAST_OPENING, held["opening"], xtol=1e-12)
    return answer(latest(opening), opening)


def point(scenario, engine_speed, opening=1.0, road_speed=0.0, nodes=None):
    """One operating point: SI floats by name; `scenario` is a path, a document or a read one.

    `nodes`: temperatures in K that time changes, by address; without them all is as in a long pull.
    """
    ready = isinstance(scenario, dict) and "air" in scenario
    vehicle = scenario if ready else understood(scenario)
    air = vehicle["air"]
    held = {"engine_speed": engine_speed, "opening": opening, "road_speed": road_speed}
    held["nodes"] = nodes or {}
    opening, balanced, retard, residuals = held_off_knock(vehicle, held)
    engine, state = vehicle["engine"], balanced["stations"][-1][1]
    p, p_e, dry = state["p"], balanced["p_e"], balanced["dry"]
    powers = {
        "indicated": cylinder.indicated(engine, air, state, balanced, balanced["mixture"], retard),
        "rubbing": cylinder.rubbing(engine, engine_speed, p, air["p"], balanced["thickness"]),
        "pumping": cylinder.pumping(engine, engine_speed, state, p_e),
        "accessories": cylinder.accessories(engine, engine_speed),
        "blowers": sum(
            station["crank"]
            for (_, station), part in zip(balanced["stations"], vehicle["charge_path"], strict=True)
            if part["kind"] == "positive_blower"
        ),
    }
    work = powers["indicated"] - sum(powers[key] for key in powers if key != "indicated")
    return powers | {
        "flow": balanced["m"],
        "dry": dry,
        "stations": dict(balanced["stations"]),
        "pressure": p,
        "temperature": state["T"],
        "exhaust_pressure": p_e,
        "head_temperature": balanced["T_h"],
        "oil_temperature": balanced["T_o"],
        "filling": cylinder.filling(engine, engine_speed, state, balanced),
        "fuel_flow": balanced["mixture"]["f"] * dry,
        "opening": opening,
        "retard": retard,
        "margin": margin(vehicle, held, balanced, retard),
        "torque": work / engine_speed,
        "residuals": residuals,
        "balanced": balanced | {"retard": retard},
    }


def top_speed(scenario):
    """How fast it gets; see `twin.climb`."""
    from twin.climb import top_speed as climb

    return climb(understood(scenario))
