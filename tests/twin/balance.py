"""docs/physics/operating_point.md, the march and the balance: how much air the engine is given."""

from math import sqrt

from scipy.optimize import brentq

from twin import engine as cylinder
from twin import path
from twin.gas import blend


def under_hood(vehicle, wind, nodes):
    """Temperature around the engine, film of its warm walls, and the gas at the intake's mouth."""
    air, hood = vehicle["air"], vehicle["under_hood"]
    draught = 1 + wind / hood["halving_speed"]
    around = air["T"] + bay_rise(hood) / draught
    around = nodes.get("under_hood/air", around)
    film = 5 + 11.9 * sqrt(hood["stir"] * draught)
    mouth = {
        "p": air["p"] + hood["ram_recovery"] * air["density"] * wind**2 / 2,
        "T": air["T"] + hood["intake_share"] * (around - air["T"]),
        "gas": air["gas"],
    }
    return around, film, mouth


def bay_rise(hood):
    """Of the air under the bodywork where nothing blows through it."""
    return hood["rise"] * (0.35 if hood["hood"] == "open" else 1)


def behind(air, part, state, m, held):
    """The gas behind one part."""
    kind = part["kind"]
    if kind == "filter":
        return path.filter_outlet(part, state, m)
    if kind == "duct":
        return path.duct_outlet(part, state, m, held["around"], held["film"])
    if kind == "plenum":
        metal = held["nodes"].get(f"charge_path/{part['id']}/wall")
        return path.plenum_outlet(part, state, m, held["around"], held["film"], metal)
    if kind == "throttle":
        return path.throttle_outlet(part, state, m, held["opening"])
    if kind == "positive_blower":
        speed = held["engine_speed"]
        metal = held["nodes"].get(f"charge_path/{part['id']}/case")
        return path.blower_outlet(part, state, m, speed, held["around"], held["film"], metal)
    if kind == "charge_cooler":
        return path.cooler_outlet(part, state, m, air, held["wind"])
    raise NotImplementedError(kind)


def march(air, parts, state, m, held):
    stations = []
    for part in parts:
        state = behind(air, part, state, m, held)
        stations.append((part["id"], state))
    return stations


def balance(vehicle, held):
    """Flow and stations for which the engine draws what arrives.

    The unknown is the pressure behind the first throttle, which also exists where it is sonic; it
    gives the flow, and the flow gives everything behind. Without a throttle it is the flow itself.
    """
    air, parts, engine = vehicle["air"], vehicle["charge_path"], vehicle["engine"]
    wind = max(0.0, held["road_speed"] + vehicle["day"]["headwind"])
    nodes = held.get("nodes", {})
    around, film, start = under_hood(vehicle, wind, nodes)
    held = held | {"wind": wind, "around": around, "film": film, "nodes": nodes}
    mixed = cylinder.mixture(engine, blend(vehicle["fuel"]), held.get("enrichment", 0.0))
    first = next((k for k, part in enumerate(parts) if part["kind"] == "throttle"), None)
    count = [0]

    def flow_to(pressure):
        def spare(m):
            try:
                stations = march(air, parts[:first], start, m, held)
            except path.TooMuchError:
                return -1.0
            state = stations[-1][1] if stations else start
            if state["p"] <= pressure:
                return -m
            return path.throttle_flow(parts[first], state, pressure, held["opening"]) - m

        return brentq(spare, 0.0, 3.0, xtol=1e-16, rtol=1e-14)

    def all_stations(unknown):
        if first is None:
            return unknown, march(air, parts, start, unknown, held)
        m = flow_to(unknown)
        stations = march(air, parts[:first], start, m, held)
        state = (stations[-1][1] if stations else start) | {"p": unknown}
        stations.append((parts[first]["id"], state))
        return m, stations + march(air, parts[first + 1 :], state, m, held)

    def at(unknown):
        m, stations = all_stations(unknown)
        dry = m / (1 + air["w"])
        state = stations[-1][1] if stations else start
        there = cylinder.conditions(engine, air, held, state, m, dry, mixed)
        drawn = cylinder.draw(engine, held["engine_speed"], state, there)
        there |= {"m": m, "dry": dry, "stations": stations, "drawn": drawn}
        return there | {"mixture": mixed, "mouth": start["T"], "held": held, "start": start}

    def spare(unknown):
        count[0] += 1
        try:
            answers = at(unknown)
        except path.TooMuchError:
            return -1.0 if first is not None else 1.0
        return (answers["drawn"] - answers["m"]) * (1 if first is not None else -1)

    low, high = (0.01 * start["p"], (1 - 1e-9) * start["p"]) if first is not None else (1e-6, 3.0)
    root = brentq(spare, low, high, xtol=1e-12 * high, rtol=1e-15)
    return at(root) | {"residuals": count[0]}
