"""docs/physics/heat.md: what head and oil come to in a long pull."""

from math import degrees, exp, log, sqrt

from twin import engine as cylinder
from twin.gas import DRY_AIR, enthalpy

METAL = 897.0  # J/(kg K), of aluminium


def cooling(engine, air, held):
    """Flow of the cooling air over that of the known point, and its temperature here and there."""
    known, there = engine["cooling"], engine["cooling"]["known_air_temperature"]
    here = air["T"] + known["warm_air_share"] * (held["around"] - air["T"])
    if known["by"] == "liquid":
        return 1.0, known["coolant_temperature"], known["coolant_temperature"]
    densities = (air["p"] / here) / (101325 / there)
    if known["by"] == "fan":
        ratio = held["engine_speed"] / known_speed(engine) * densities
    else:
        ratio = held["wind"] / known["known_road_speed"] * densities
    return max(ratio, 0.1), here, there


def known_speed(engine):
    return engine["cooling"]["known_engine_speed"] or engine["rev_limit"]


def known_flow(engine):
    """Charge flow at the known point."""
    speed, known = known_speed(engine), engine["cooling"]
    T = known["known_charge_temperature"]
    filling = engine["breathing"]["peak_efficiency"] * cylinder.by_speed(engine, speed)
    filling *= cylinder.by_mach(engine, speed, 346.0)
    filling *= sqrt(T / engine["breathing"]["reference_temperature"])
    density = known["known_manifold_pressure"] / (DRY_AIR["R"] * T)
    return filling * density * cylinder.swept_flow(engine, speed)


def gas_that_heats(engine, T, phi):
    known = engine["cooling"]["gas_temperature"]
    known += 0.45 * (T - 298.15) - 700 * ((phi - 1.1) ** 2 - 0.07**2)
    return min(max(known, 400.0), 1300.0)


def around_the_head(engine, air, held, state, m, phi):
    """(W/K, K) of the gas that warms it and of the air that cools it."""
    known = engine["cooling"]
    T_h1 = engine["head_temperature"] or known["known_head_temperature"]
    there = gas_that_heats(engine, known["known_charge_temperature"], 1.17)
    c, T_a, T_a1 = cooling(engine, air, held)
    flow = max(m / known_flow(engine), 1e-3)
    Y = (T_h1 - T_a1) / (there - T_h1) * flow**0.57 * c**-0.58
    through = (1 - engine["oil"]["wall_share"]) * engine["walls"]["share"]
    through *= known_flow(engine) * 1.17 * 2.972e6 * (1 - unburnt(1.17))
    G = through / (T_h1 - T_a1) * c**0.58
    return (G * Y, gas_that_heats(engine, state["T"], phi)), (G, T_a)


def head(engine, air, held, state, m, phi):
    known = engine["cooling"]
    (warms, gas), (cools, T_a) = around_the_head(engine, air, held, state, m, phi)
    rest = (warms * gas + cools * T_a) / (warms + cools)
    if known["pull_time"] is None:
        return rest
    left = exp(-known["pull_time"] * (warms + cools) / (known["head_mass"] * METAL))
    return rest + left * (known["temperature_before"] - rest)


def oil_from_walls(engine, dry, mixed):
    walls = engine["walls"]["share"] * (1 - unburnt(mixed["phi"])) * mixed["heat"] * dry
    return engine["oil"]["wall_share"] * walls


def unburnt(phi):
    """Share of the fuel's energy left in carbon monoxide and hydrogen."""
    if phi <= 1:
        return 0.0
    K, O = 3.577, max(1.0, 3.125 / phi)
    linear = O + K * (2.125 - O)
    a = (-linear + sqrt(linear**2 + 4 * (K - 1) * (O - 1))) / (2 * (K - 1))
    b = O - 1 - a
    return ((1 - a) * 283.0 + (1.125 - b) * 241.8) / 637.5


def exhaust(vehicle, held, balanced, retard):
    """Temperature behind the port, from what enters and leaves the cylinders."""
    _, hot, loss = burnt_gas(vehicle, held, balanced, retard)
    return balanced["T_h"] + exp(-loss) * (hot - balanced["T_h"])


def to_the_walls(vehicle, held, balanced, retard, T_h):
    """W that chamber and port take with the head at a temperature."""
    chamber, hot, loss = burnt_gas(vehicle, held, balanced, retard)
    left = lambda T: 1013 * T + 0.2755 / 2 * T**2  # noqa: E731
    flow = balanced["m"] + balanced["mixture"]["f"] * balanced["dry"]
    return chamber + flow * (left(hot) - left(T_h + exp(-loss) * (hot - T_h)))


def burnt_gas(vehicle, held, balanced, retard):
    """W to the chamber, K behind the valves, and the transfer units of the way out."""
    air, engine, mixed = vehicle["air"], vehicle["engine"], balanced["mixture"]
    state, dry, speed = balanced["stations"][-1][1], balanced["dry"], held["engine_speed"]
    walls, mouth = engine["walls"], balanced["mouth"]
    share = cylinder.burnt(engine, air, state, balanced, mixed)
    released = share * (1 - unburnt(mixed["phi"])) * mixed["heat"] * dry
    late = min(max(degrees(retard), 0.0), 45.0)
    chamber = 0.55 * walls["share"] * released * exp(-0.0125 * late + 9e-5 * late**2)
    chamber *= (speed / known_speed(engine)) ** -0.32
    chamber *= (state["p"] / 101325) ** -0.245
    brought = balanced["m"] * (enthalpy(state["gas"], state["T"]) - enthalpy(air["gas"], mouth))
    work = cylinder.indicated(engine, air, state, balanced, mixed, retard)
    pumped = cylinder.pumping(engine, speed, state, balanced["p_e"])
    behind_valve = released + brought + pumped - work - chamber
    h = behind_valve / (balanced["m"] + mixed["f"] * dry)
    h += air["T"] * (1013 + 0.2755 / 2 * air["T"])
    hot = (sqrt(1013**2 + 2 * 0.2755 * h) - 1013) / 0.2755
    return chamber, hot, on_the_way_out(engine, balanced["m"], speed)


def on_the_way_out(engine, m, speed):
    """Transfer units in the cylinder while the exhaust valve is open, and in the port."""
    known, full = known_speed(engine), known_flow(engine)
    filled = full / (1.184 * cylinder.swept_flow(engine, known))
    flow, slow = max(m / full, 1e-3), max(speed / known, 0.1)
    stroke = 0.165 * 0.55 * engine["walls"]["share"] * filled**-1.1
    port = max(0.0, -log(engine["walls"]["port_keeps"]) - stroke)
    return stroke * slow**-0.32 * (flow / slow) ** -1.1 + port * flow**-0.25


def to_the_oil(engine, speed, dry, phi, heating):
    friction = cylinder.rubbing_pressure(engine, speed) * engine["friction"]["scale"]
    walls = engine["walls"]["share"] * (1 - unburnt(phi)) * heating * dry
    return friction * cylinder.swept_flow(engine, speed) + engine["oil"]["wall_share"] * walls


def around_the_oil(engine, air, held, dry, mixed):
    """W into it, W/K out of it, and the temperature of the air that they go to."""
    c, T_a, T_a1 = cooling(engine, air, held)
    known = to_the_oil(engine, known_speed(engine), known_flow(engine), 1.17, 1.17 * 2.972e6)
    here = to_the_oil(engine, held["engine_speed"], dry, mixed["phi"], mixed["heat"])
    return here, known / (engine["oil"]["known_temperature"] - T_a1) * c**0.58, T_a


def oil(engine, air, held, dry, mixed):
    here, cools, T_a = around_the_oil(engine, air, held, dry, mixed)
    T = T_a + here / cools
    return min(max(T, 273.15 - 20), 273.15 + 250)


def thickness(engine, T):
    """Friction of the oil's films over that with hot oil."""
    fahrenheit = lambda T: (T - 273.15) * 1.8 + 32  # noqa: E731
    viscosity = lambda T: exp(1360 / (fahrenheit(T) + 95))  # noqa: E731
    oil = engine["oil"]
    return (viscosity(T) / viscosity(oil["hot_temperature"])) ** oil["viscosity_exponent"]
