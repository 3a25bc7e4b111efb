"""docs/physics/heat.md, "What takes time": kelvins a second of every thermal node."""

from twin import heat, path
from twin.balance import bay_rise

OIL = 2000.0  # J/(kg K)
WALL = 2700.0 * heat.METAL  # J/(m3 K)
AIR_CHANGES = 0.2  # of the bay, a second
THROUGH_THE_BLOCK = 0.3  # of the resistance from oil to air, inside of the block


def rates(vehicle, balanced, now=None):
    """{address: K/s} at the temperatures that were held while the balance was sought; or at those
    of `now`, in the charge that it found.
    """
    then = balanced["held"]["nodes"]
    balanced = balanced | {"held": balanced["held"] | {"nodes": now or then}}
    rest, cooled_by = head_at_rest(vehicle, balanced)
    found = engine_rates(vehicle, balanced, rest, cooled_by)
    found["under_hood/air"] = bay_rate(vehicle, balanced, rest)
    before = balanced["start"]
    for part, (name, behind) in zip(vehicle["charge_path"], balanced["stations"], strict=True):
        here = f"charge_path/{name}"
        if part["kind"] == "positive_blower":
            found[f"{here}/case"] = case_rate(part, before, behind, balanced["held"])
        if part["kind"] == "plenum":
            found[f"{here}/wall"] = wall_rate(part, behind, balanced["held"], then[f"{here}/wall"])
        if part["kind"] in {"duct", "charge_cooler"}:
            raise NotImplementedError(part["kind"])
        before = behind
    return found


def head_at_rest(vehicle, balanced):
    """K that the head would come to, and the air that cools it."""
    engine, held, state = vehicle["engine"], balanced["held"], balanced["stations"][-1][1]
    (warms, gas), (cools, T_a) = heat.around_the_head(
        engine, vehicle["air"], held, state, balanced["m"], balanced["mixture"]["phi"]
    )
    return (warms * gas + cools * T_a) / (warms + cools), T_a


def into_the_head(vehicle, balanced, T_h):
    """W, from the account of the exhaust, less what the oil has of it."""
    walls = heat.to_the_walls(vehicle, balanced["held"], balanced, balanced["retard"], T_h)
    return walls - heat.oil_from_walls(vehicle["engine"], balanced["dry"], balanced["mixture"])


def engine_rates(vehicle, balanced, rest, head_air):
    engine, air, held = vehicle["engine"], vehicle["air"], balanced["held"]
    T_h, T_o, T_b = (held["nodes"][f"engine/{node}"] for node in ("head", "oil", "block"))
    mixed = balanced["mixture"]
    through = into_the_head(vehicle, balanced, rest) / (rest - head_air)
    into_head = into_the_head(vehicle, balanced, T_h) - through * (T_h - head_air)
    into_oil, G, T_a = heat.around_the_oil(engine, air, held, balanced["dry"], mixed)
    to_block = G / THROUGH_THE_BLOCK * (T_o - T_b)
    to_air = G / (1 - THROUGH_THE_BLOCK) * (T_b - T_a)
    cooling = engine["cooling"]
    return {
        "engine/head": into_head / (cooling["head_mass"] * heat.METAL),
        "engine/oil": (into_oil - to_block) / (engine["oil"]["mass"] * OIL),
        "engine/block": (to_block - to_air) / (cooling["block_mass"] * heat.METAL),
    }


def case_rate(part, before, behind, held):
    omega, T = part["drive_ratio"] * held["engine_speed"], held["nodes"][held_case(part)]
    to_case, to_air = path.case_conductances(part, before, omega, held["film"])
    taken = to_case * ((before["T"] + behind["T"]) / 2 - T) + behind["unused"]
    given = to_air * (T - held["around"])
    mount = min(part["mount_temperature"], held["nodes"]["engine/block"])
    given += part["mount_conductance"] * (T - mount)
    return (taken - given) / (part["case_mass"] * heat.METAL)


def held_case(part):
    return f"charge_path/{part['id']}/case"


def wall_rate(part, behind, held, then):
    T = held["nodes"][f"charge_path/{part['id']}/wall"]
    films = path.PLENUM_FILM, held["film"]
    outside = path.plenum_conductance(part, held["film"]) * sum(films) / films[0]
    capacity = path.plenum_surface(part) * part["wall_thickness"] * WALL
    taken = behind["taken"] + behind["from_charge"] * (then - T)
    return (taken - outside * (T - held["around"])) / capacity


def bay_rate(vehicle, balanced, rest):
    hood, held, T_a = vehicle["under_hood"], balanced["held"], vehicle["air"]["T"]
    warmth = min((held["nodes"]["engine/head"] - T_a) / (rest - T_a), 1.0)
    draught = 1 + held["wind"] / hood["halving_speed"]
    return AIR_CHANGES * (
        warmth * bay_rise(hood) - draught * (held["nodes"]["under_hood/air"] - T_a)
    )
