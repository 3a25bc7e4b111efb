"""The model a second time, from docs/physics alone: plain floats, SciPy's root finders, slow.

`point` and `top_speed` count under "residuals" how often the balance of the engine was evaluated.
"""

from scipy.optimize import brentq

from twin import engine as cylinder
from twin.balance import balance
from twin.gas import weather
from twin.reading import scenario as read

LEAST_OPENING = 0.02


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
    return cylinder.octane_index(engine, vehicle["fuel"]) - needs


def held_by_spark(vehicle, held):
    """Balance and retard, the throttle closed where no retard is enough."""
    spark, residuals = vehicle["engine"]["spark"], [0]

    def at(opening):
        balanced = balance(vehicle, held | {"opening": opening})
        residuals[0] += balanced["residuals"]
        spare = margin(vehicle, held, balanced, 0.0)
        retard = cylinder.retard(vehicle["engine"], held["engine_speed"], spare)
        return balanced, retard, margin(vehicle, held, balanced, retard) - spark["margin"]

    opening = held["opening"]
    found = at(opening)
    if spark["policy"] == "hold_margin" and found[2] < -1e-9:
        if at(LEAST_OPENING)[2] < 0:
            raise NoStateError
        # from the side where the spark is at its end
        most = spark["most_retard"]

        def short(o):
            balanced = at(o)[0]
            return margin(vehicle, held, balanced, most) - spark["margin"]

        opening = brentq(short, LEAST_OPENING, opening, xtol=1e-13, rtol=1e-14)
        found = at(opening)
    return opening, found[0], found[1], residuals[0]


def point(scenario, engine_speed, opening=1.0, road_speed=0.0):
    """One operating point: SI floats by name; `scenario` is a path, a document or a read one."""
    ready = isinstance(scenario, dict) and "air" in scenario
    vehicle = scenario if ready else understood(scenario)
    air = vehicle["air"]
    held = {"engine_speed": engine_speed, "opening": opening, "road_speed": road_speed}
    opening, balanced, retard, residuals = held_by_spark(vehicle, held)
    engine, state = vehicle["engine"], balanced["stations"][-1][1]
    p, p_e, dry = state["p"], balanced["p_e"], balanced["dry"]
    powers = {
        "indicated": cylinder.indicated(engine, balanced["mixture"], dry, retard),
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
    }


def top_speed(scenario):
    """How fast it gets; see `twin.climb`."""
    from twin.climb import top_speed as climb

    return climb(understood(scenario))
