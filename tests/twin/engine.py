"""docs/physics/engine.md and knock.md: what a cylinder draws, makes of it, and when it knocks."""

from math import degrees, log, pi, radians, sqrt

import numpy as np
from scipy.interpolate import PchipInterpolator

from twin import heat, liquids
from twin.gas import alcohol_by_molecules, blend, gamma

RICHER_FROM = 11  # degrees of retard
MACH = (0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 1.0, 1.2)
FILLING = {
    20: (0.989, 0.971, 0.945, 0.911, 0.870, 0.823, 0.771, 0.664, 0.567),
    40: (0.978, 0.973, 0.962, 0.944, 0.917, 0.879, 0.831, 0.722, 0.619),
    60: (0.944, 0.944, 0.937, 0.926, 0.911, 0.891, 0.860, 0.768, 0.667),
}
CLOSINGS = list(FILLING)
FILLING_AT = PchipInterpolator(
    MACH, np.array([np.array(row) / max(row) for row in FILLING.values()]).T
)
RATIOS = (6, 7, 8, 9, 10, 11, 12)
RICHNESS = (0.6, 0.8, 0.9, 1.0, 1.1, 1.15, 1.2, 1.3, 1.4)
FUEL_AIR = (
    (0.4192, 0.4004, 0.3906, 0.3774, 0.3480, 0.3320, 0.3167, 0.2889, 0.2646),
    (0.4460, 0.4267, 0.4168, 0.4034, 0.3712, 0.3540, 0.3376, 0.3079, 0.2820),
    (0.4682, 0.4486, 0.4386, 0.4251, 0.3906, 0.3724, 0.3551, 0.3238, 0.2964),
    (0.4870, 0.4673, 0.4571, 0.4436, 0.4071, 0.3880, 0.3700, 0.3373, 0.3088),
    (0.5033, 0.4834, 0.4732, 0.4597, 0.4215, 0.4016, 0.3829, 0.3490, 0.3194),
    (0.5176, 0.4976, 0.4874, 0.4739, 0.4341, 0.4136, 0.3943, 0.3593, 0.3289),
    (0.5303, 0.5103, 0.5000, 0.4866, 0.4453, 0.4243, 0.4044, 0.3685, 0.3372),
)
EXPONENTS = [
    [-log(1 - eta) / log(r) for eta in row] for r, row in zip(RATIOS, FUEL_AIR, strict=True)
]


def swept(engine):
    return pi / 4 * engine["bore"] ** 2 * engine["stroke"] * engine["cylinders"]


def swept_flow(engine, speed):
    return swept(engine) * speed / (4 * pi)


def piston_speed(engine, speed):
    return engine["stroke"] * speed / pi


def mixture(engine, fuel, enrichment=0.0):
    """Fuel and heat for each kilogram of dry air, and the richness."""
    lam = engine["lambda"] - enrichment
    f = 1 / lam / fuel["air"]
    port = {name: f * share for name, share in fuel["shares"].items()}
    return {"f": f, "heat": f * fuel["heating"], "phi": 1 / lam, "port": port}


def exhaust_pressure(engine, air, state, dry, carried):
    """carried: fuel and vapours, kg per kg of dry air."""
    exhaust = engine["exhaust"]
    reference = exhaust["at_flow"] or 1.184 * swept_flow(engine, engine["rev_limit"])
    squared = (dry * (1 + carried) / reference) ** 2
    hot = (state["T"] + 800) / (298.15 + 800)
    return air["p"] + exhaust["back_pressure"] * squared * 101325 / air["p"] * hot


def conditions(engine, air, held, state, m, dry, mixed):
    """What the flow that arrives makes of exhaust, head and oil."""
    p_exhaust = exhaust_pressure(engine, air, state, dry, air["w"] + mixed["f"])
    head = held["nodes"].get("engine/head")
    if head is None:
        head = heat.head(engine, air, held, state, m, mixed["phi"])
    oil = held["nodes"].get("engine/oil") or engine["oil"]["temperature"]
    if oil is None:
        oil = heat.oil(engine, air, held, dry, mixed)
    thickness = heat.thickness(engine, oil)
    there = {"p_e": p_exhaust, "T_h": head, "T_o": oil, "thickness": thickness}
    return there | {"mixture": mixed, "w": air["w"]}


def by_speed(engine, speed):
    breathing = engine["breathing"]
    best = breathing["best_speed"] or 0.7 * engine["rev_limit"]
    return 1 / (1 + breathing["fall_off"] * (speed / best - 1) ** 2)


def sound(state):
    return sqrt(gamma(state["gas"], state["T"]) * state["gas"]["R"] * state["T"])


def by_mach(engine, speed, sound):
    valves = engine["valves"]
    area = valves["flow_coefficient"] * valves["per_side"] * valves["intake_ratio"] ** 2
    Z = piston_speed(engine, speed) / (area * sound)
    late = min(max(degrees(valves["intake_closing"]), 20), 60)
    if MACH[-1] < Z:
        return np.interp(late, CLOSINGS, FILLING_AT(MACH[-1])) * MACH[-1] / Z
    return float(np.interp(late, CLOSINGS, FILLING_AT(max(Z, MACH[0]))))


def by_pressures(engine, ratio):
    r, g = engine["compression_ratio"], 1.3
    E = r / (r - 1) - (ratio + g - 1) / (g * (r - 1))
    return E if E >= 0.3 else 0.3 * np.exp(E / 0.3 - 1)


def filling(engine, speed, state, there):
    """Volumetric efficiency, referred to the manifold."""
    breathing, T = engine["breathing"], state["T"]
    if breathing["stated_efficiency"] is not None:
        return breathing["stated_efficiency"]
    warm = breathing["wall_heating"]
    return (
        breathing["peak_efficiency"]
        * by_speed(engine, speed)
        * by_mach(engine, speed, sound(state))
        * by_pressures(engine, there["p_e"] / state["p"])
        * sqrt(T / breathing["reference_temperature"])
        * ((1 - warm) * T + warm * breathing["reference_head_temperature"])
        / ((1 - warm) * T + warm * there["T_h"])
        * liquids.filling_share(engine, state, there["w"], there["mixture"])
    )


def density(state):
    return state["p"] / (state["gas"]["R"] * state["T"])


def draw(engine, speed, state, there):
    return filling(engine, speed, state, there) * density(state) * swept_flow(engine, speed)


def fuel_air_efficiency(r, phi):
    held = np.clip(phi, RICHNESS[0], RICHNESS[-1])
    rows = [np.interp(held, RICHNESS, row) for row in EXPONENTS]
    eta = 1 - r ** -np.interp(r, RATIOS, rows)
    return eta * (RICHNESS[-1] / phi) ** 1.2 if phi > RICHNESS[-1] else eta


def spark_share(retard):
    d = min(abs(degrees(retard)), 60)
    return 1 - 2.4e-4 * d**2 + 1.3e-6 * d**3


def burnt(engine, air, state, there, mixed):
    """Share of what could burn that does, in a charge diluted by residual and water."""
    x = 0.632 * mixed["phi"] * (state["p"] / there["p_e"]) ** -0.74 / engine["compression_ratio"]
    x = min(x, 0.25)
    late = liquids.late_alcohol(engine, mixed)
    Y = x + (1 - x) * (1.9 * air["w"] + sum(late.values())) / (1 + air["w"] + mixed["f"])
    way = min(max((Y - 0.25) / 0.15, 0.0), 1.0)
    return 1 - way**2 * (3 - 2 * way)


def kept(engine, mixed):
    """Share of the work that late evaporation leaves."""
    released = mixed["heat"] * (1 - heat.unburnt(mixed["phi"]))
    late = liquids.late_alcohol(engine, mixed)
    lost = 0.5 * sum(drops * liquids.LATENT[name] for name, drops in late.items())
    return max(0.0, 1 - lost / released)


def indicated(engine, air, state, there, mixed, retard):
    eta = fuel_air_efficiency(engine["compression_ratio"], mixed["phi"])
    eta *= burnt(engine, air, state, there, mixed) * kept(engine, mixed) * spark_share(retard)
    return engine["combustion"]["real_cycle_factor"] * eta * mixed["heat"] * there["dry"]


def rubbing_pressure(engine, speed):
    """Rubbing mean effective pressure with hot oil and without boost."""
    friction = engine["friction"]
    return friction["base"] + friction["per_piston_speed"] * piston_speed(engine, speed)


def rubbing(engine, speed, p, p_air, thickness):
    friction = engine["friction"]
    mean = thickness * rubbing_pressure(engine, speed) + friction["gas_load"] * (p - p_air)
    return friction["scale"] * mean * swept_flow(engine, speed)


def pumping(engine, speed, state, p_exhaust):
    valves, S = engine["valves"], piston_speed(engine, speed)
    sizes = density(state) / 1.184 / valves["intake_ratio"] ** 4
    sizes += p_exhaust / 101325 / valves["exhaust_ratio"] ** 4
    loss = valves["flow_loss"] * 4.12 * S**2 / valves["per_side"] ** 2 * sizes
    return (p_exhaust - state["p"] + loss) * swept_flow(engine, speed)


def accessories(engine, speed):
    driven = engine["accessories"]
    return (driven["torque"] + driven["fan_torque"] * (speed / driven["fan_speed"]) ** 2) * speed


def appetite(lam):
    return 2 * abs(14.604 * lam - 14.0)


def damping(w):
    """Octane numbers that water vapour is worth."""
    return 390 * w / (1 + w / 0.040)


def requirement(engine, speed, state, there, w, retard):
    """Octane number that the point needs, by the octane rule from its anchor."""
    a = engine["knock_anchor"]
    colder = liquids.colder_before_knock(engine, state, w, there["mixture"])
    return (
        a["octane_number"]
        + 5 * (engine["compression_ratio"] - a["compression_ratio"])
        + 30 * log(state["p"] / a["manifold_pressure"])
        + (state["T"] - colder - a["charge_temperature"]) / 7
        + (there["T_h"] - a["head_temperature"]) / 10
        - degrees(retard - a["retard"])
        + (there["p_e"] - a["exhaust_pressure"]) / 30e3
        - (appetite(1 / there["mixture"]["phi"]) - appetite(a["lambda"]))
        - (speed - a["engine_speed"]) * 30 / pi / 1000
        - (damping(w) - damping(a["humidity_ratio"]))
    )


def octane_index(engine, fuel, mixed):
    ron, mon = fuel["research_octane"], fuel["motor_octane"]
    K = engine["octane_sensitivity_weight"]
    from_gas = liquids.alcohol_from_gas(engine, mixed)
    K += max(0.0, 1 - K) * from_gas * alcohol_by_molecules(blend(fuel)["shares"])
    return ron - K * (ron - mon)


def given_retard(engine, speed):
    table = engine["spark"]["table"]
    return float(np.interp(speed, table["engine_speed"], table["retard"]))


TABLE = {"octane_number": 92, "compression_ratio": 8, "manifold_pressure": 100e3}


def wanted_margin(engine):
    """Half of what the anchor is known to: as stated, else 5, or 10 where a table stands in."""
    anchor, stated = engine["knock_anchor"], engine["spark"]["margin"]
    heard = any(anchor[key] != value for key, value in TABLE.items())
    known_to = anchor["known_to"] or (5 if heard else 10)
    return 0.5 * known_to if stated is None else stated


def richest_at(engine):
    """The retard at which the mixture is as rich as it will be, rad."""
    richer = max(0.0, engine["lambda"] - engine["spark"]["richest"])
    return radians(RICHER_FROM + richer / 0.017)


def enrichment(engine, retard):
    """Taken off lambda once a late spark alone costs more."""
    wanted = 0.017 * (degrees(retard) - RICHER_FROM)
    return min(max(0.0, wanted), max(0.0, engine["lambda"] - engine["spark"]["richest"]))
