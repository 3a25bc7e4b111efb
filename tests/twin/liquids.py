"""docs/physics/engine.md, "Where liquids evaporate": fuel injected at the port of a dry charge."""

from math import sqrt

from twin.gas import heat_capacity, mixture

# J/kg, J/(kg K)
LATENT = {"methanol": 1168e3, "ethanol": 919e3, "petrol": 349e3}
LIQUID = {"methanol": 2530.0, "ethanol": 2440.0, "petrol": 2010.0}
VAPOUR = {
    "methanol": mixture({"methanol": 1.0}),
    "ethanol": mixture({"ethanol": 1.0}),
    "petrol": mixture({"isooctane": 0.6749, "toluene": 0.3251}),
}
USUAL = {"before_closing": 0.3, "before_knock": 0.8, "port_vapour": 0.05, "port_film": 0.85}


def at_valve(shares, fuel):
    """Of each liquid: (from the gas before the valve, from metal, as drops)."""
    early, film = shares["port_vapour"], shares["port_film"]
    return {
        name: (early * f, film * (1 - early) * f, (1 - film) * (1 - early) * f)
        for name, f in fuel.items()
        if f > 0
    }


def petrol(phi):
    return at_valve(USUAL, {"petrol": phi / 14.604})


def evaporated(state, w, liquid, share):
    """K of cooling, and the room of the vapour over that of the gas."""
    T, gas = state["T"], state["gas"]
    latent = volume = 0.0
    capacity = (1 + w) * heat_capacity(gas, T)
    for name, (early, metal, flying) in liquid.items():
        cools = early + share * flying
        vapour = cools + metal
        latent += cools * LATENT[name]
        capacity += vapour * heat_capacity(VAPOUR[name], T)
        capacity += (early + metal + flying - vapour) * LIQUID[name]
        volume += vapour * VAPOUR[name]["R"]
    return min(latent / capacity, 0.2 * T), volume / (gas["R"] * (1 + w))


def filling_share(engine, state, w, mixed):
    def gain(liquid, share):
        cooling, displaced = evaporated(state, w, liquid, share)
        return sqrt(state["T"] / (state["T"] - cooling)) / (1 + displaced)

    shares = engine["evaporation"]
    here = gain(at_valve(shares, mixed["port"]), shares["before_closing"])
    return here / gain(petrol(mixed["phi"]), USUAL["before_closing"])


def colder_before_knock(engine, state, w, mixed):
    def cooled(shares, liquid):
        early, _ = evaporated(state, w, liquid, shares["before_closing"])
        whole, _ = evaporated(state, w, liquid, shares["before_knock"])
        return early + 0.7 * max(0.0, whole - early)

    shares = engine["evaporation"]
    return cooled(shares, at_valve(shares, mixed["port"])) - cooled(USUAL, petrol(mixed["phi"]))


def alcohol_from_gas(engine, mixed):
    """Share of the alcohols that evaporates from the gas before knock."""
    shares = engine["evaporation"]
    alcohols = [v for name, v in at_valve(shares, mixed["port"]).items() if name != "petrol"]
    whole = sum(map(sum, alcohols))
    cools = sum(early + shares["before_knock"] * flying for early, _, flying in alcohols)
    return cools / whole if whole else 0.0


def late_alcohol(engine, mixed):
    """Drops of alcohol that evaporate in the flame, by name."""
    shares = engine["evaporation"]
    late = 1 - shares["before_knock"]
    drops = at_valve(shares, mixed["port"])
    return {name: late * v[2] for name, v in drops.items() if name != "petrol"}
