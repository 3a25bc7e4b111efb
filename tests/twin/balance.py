"""docs/physics/operating_point.md, the march and the balance: how much air the engine is given."""

from scipy.optimize import brentq

from twin import engine as cylinder
from twin import path
from twin.gas import blend

PASSIVE = {"filter": path.filter_outlet, "duct": path.duct_outlet}


def behind(vehicle, air, part, state, m, held):
    """The gas behind one part."""
    kind = part["kind"]
    if kind in PASSIVE:
        return PASSIVE[kind](part, state, m)
    if kind == "throttle":
        return path.throttle_outlet(part, state, m, held["opening"])
    if kind == "positive_blower":
        return path.blower_outlet(part, state, m, held["engine_speed"])
    if kind == "charge_cooler":
        air_speed = held["road_speed"] + vehicle["day"]["headwind"]
        return path.cooler_outlet(part, state, m, air, air_speed)
    return dict(state)


def march(vehicle, air, parts, state, m, held):
    stations = []
    for part in parts:
        state = behind(vehicle, air, part, state, m, held)
        stations.append((part["id"], state))
    return stations


def balance(vehicle, air, held):
    """Flow and stations for which the engine draws what arrives.

    The unknown is the pressure behind the first throttle, which also exists where it is sonic; it
    gives the flow, and the flow gives everything behind. Without a throttle it is the flow itself.
    """
    start = {"p": air["p"], "T": air["T"], "gas": air["gas"]}
    parts, engine, fuel = vehicle["charge_path"], vehicle["engine"], blend(vehicle["fuel"])
    mixed = cylinder.mixture(engine, fuel)
    first = next((k for k, part in enumerate(parts) if part["kind"] == "throttle"), None)
    count = [0]

    def flow_to(pressure):
        def spare(m):
            try:
                stations = march(vehicle, air, parts[:first], start, m, held)
            except path.TooMuch:
                return -1.0
            state = stations[-1][1] if stations else start
            if state["p"] <= pressure:
                return -m
            return path.throttle_flow(parts[first], state, pressure, held["opening"]) - m

        return brentq(spare, 0.0, 3.0, xtol=1e-16, rtol=1e-14)

    def all_stations(unknown):
        if first is None:
            return unknown, march(vehicle, air, parts, start, unknown, held)
        m = flow_to(unknown)
        stations = march(vehicle, air, parts[:first], start, m, held)
        state = (stations[-1][1] if stations else start) | {"p": unknown}
        stations.append((parts[first]["id"], state))
        return m, stations + march(vehicle, air, parts[first + 1 :], state, m, held)

    def at(unknown):
        m, stations = all_stations(unknown)
        dry = m / (1 + air["w"])
        state = stations[-1][1] if stations else start
        p_exhaust = cylinder.exhaust_pressure(engine, air, dry, air["w"] + mixed["f"])
        drawn = cylinder.draw(engine, held["engine_speed"], state, p_exhaust)
        return {"m": m, "dry": dry, "stations": stations, "p_e": p_exhaust, "drawn": drawn}

    def spare(unknown):
        count[0] += 1
        try:
            answers = at(unknown)
        except path.TooMuch:
            return -1.0 if first is not None else 1.0
        return (answers["drawn"] - answers["m"]) * (1 if first is not None else -1)

    low, high = (0.01 * air["p"], (1 - 1e-9) * air["p"]) if first is not None else (1e-6, 3.0)
    root = brentq(spare, low, high, xtol=1e-12 * high, rtol=1e-15)
    return at(root) | {"residuals": count[0], "mixture": mixed}
