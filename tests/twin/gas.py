"""docs/physics/air_and_gas.md, orifice.md and fuels.md: the air of the day and the fuel."""

from math import exp, log, sqrt

from scipy.optimize import brentq

RU = 8.314462618
G = 9.80665
TOP, BOTTOM = 1000.0, 200.0

MOLAR_MASS = {
    "nitrogen": 28.0134e-3,
    "oxygen": 31.9988e-3,
    "argon": 39.948e-3,
    "carbon_dioxide": 44.0095e-3,
    "water": 18.01528e-3,
    "methanol": 32.04186e-3,
    "ethanol": 46.06844e-3,
    "isooctane": 114.22852e-3,
    "toluene": 92.13842e-3,
}
NASA = {
    "nitrogen": (
        3.53100528,
        -1.23660987e-4,
        -5.02999437e-7,
        2.43530612e-9,
        -1.40881235e-12,
        -1046.97628,
    ),
    "oxygen": (
        3.78245636,
        -2.99673415e-3,
        9.847302e-6,
        -9.68129508e-9,
        3.24372836e-12,
        -1063.94356,
    ),
    "argon": (2.5, 0, 0, 0, 0, -745.375),
    "carbon_dioxide": (
        2.35677352,
        8.98459677e-3,
        -7.12356269e-6,
        2.45919022e-9,
        -1.43699548e-13,
        -48371.9697,
    ),
    "water": (
        4.19864056,
        -2.0364341e-3,
        6.52040211e-6,
        -5.48797062e-9,
        1.77197817e-12,
        -30293.7267,
    ),
    "methanol": (
        5.71539582,
        -1.52309129e-2,
        6.52441155e-5,
        -7.10806889e-8,
        2.61352698e-11,
        -25642.7656,
    ),
    "ethanol": (
        4.85868178,
        -3.7400674e-3,
        6.95550267e-5,
        -8.86541147e-8,
        3.5168443e-11,
        -29996.1309,
    ),
    "isooctane": (
        0.815737338,
        7.32643959e-2,
        1.78300688e-5,
        -6.9358962e-8,
        3.21629382e-11,
        -30477.2862,
    ),
    "toluene": (
        1.611914,
        2.11188902e-2,
        8.53221453e-5,
        -1.32566876e-7,
        5.59406109e-11,
        4096.51976,
    ),
}
BY_MOLE = {"nitrogen": 0.78084, "oxygen": 0.20946, "argon": 0.00934, "carbon_dioxide": 0.00036}


def mixture(by_mass):
    """A gas: R and the coefficients of cp and h, all per kilogram."""
    R = sum(share * RU / MOLAR_MASS[name] for name, share in by_mass.items())
    a = [
        sum(share * RU / MOLAR_MASS[name] * NASA[name][k] for name, share in by_mass.items())
        for k in range(6)
    ]
    return {"R": R, "a": a}


M_AIR = sum(share * MOLAR_MASS[name] for name, share in BY_MOLE.items())
AIR_BY_MASS = {name: share * MOLAR_MASS[name] / M_AIR for name, share in BY_MOLE.items()}
DRY_AIR = mixture(AIR_BY_MASS)


def moist_air(w):
    by_mass = {name: share / (1 + w) for name, share in AIR_BY_MASS.items()}
    return mixture(by_mass | {"water": w / (1 + w)})


def heat_capacity(gas, T):
    T = min(max(T, BOTTOM), TOP)
    a = gas["a"]
    return a[0] + T * (a[1] + T * (a[2] + T * (a[3] + T * a[4])))


def enthalpy(gas, T):
    near = min(max(T, BOTTOM), TOP)
    a = gas["a"]
    rise = a[0] + near * (a[1] / 2 + near * (a[2] / 3 + near * (a[3] / 4 + near * a[4] / 5)))
    return a[5] + near * rise + heat_capacity(gas, near) * (T - near)


def gamma(gas, T):
    cp = heat_capacity(gas, T)
    return cp / (cp - gas["R"])


def temperature(gas, h, lost=0.0, base=0.0):
    """Where the enthalpy, and a loss of `lost` J/(kg K) against `base` beside it, come to h."""
    over = lambda T: enthalpy(gas, T) + lost * (T - base) - h  # noqa: E731
    for end, beyond in ((BOTTOM, over(BOTTOM) > 0), (TOP, over(TOP) < 0)):
        if beyond:
            return end - over(end) / (heat_capacity(gas, end) + lost)
    return brentq(over, BOTTOM, TOP, xtol=1e-12, rtol=1e-14)


LIQUID = (-5.8002206e3, 1.3914993, -4.8640239e-2, 4.1764768e-5, -1.4452093e-8, 0.0, 6.5459673)
ICE = (-5.6745359e3, 6.3925247, -9.677843e-3, 6.2215701e-7, 2.0747825e-9, -9.4840240e-13, 4.1635019)


def saturation_pressure(T):
    T = min(max(T, 173.15), 473.15)
    a, b, c, d, e, f, g = LIQUID if T >= 273.16 else ICE
    return exp(a / T + b + c * T + d * T**2 + e * T**3 + f * T**4 + g * log(T))


def station_pressure(day):
    if day["pressure"] is not None:
        return day["pressure"]
    p0, T0, L, r, k = 101325.0, 288.15, 0.0065, 6356766.0, G / (287.05287 * 0.0065)
    H = r * day["altitude"] / (r + day["altitude"])
    H += (1 - (day["sea_level_pressure"] / p0) ** (1 / k)) * T0 / L
    return p0 * (1 - L * H / T0) ** k


def weather(day):
    """Pressure, temperature, humidity ratio and density of the day, and its gas."""
    p, T = station_pressure(day), day["temperature"]
    vapour = min(day["relative_humidity"] * saturation_pressure(T), 0.95 * p)
    w = MOLAR_MASS["water"] / M_AIR * vapour / (p - vapour)
    gas = moist_air(w)
    density = (p - vapour) / (DRY_AIR["R"] * T) + vapour * MOLAR_MASS["water"] / (RU * T)
    return {"p": p, "T": T, "w": w, "gas": gas, "density": density}


def flow_function(r, g):
    """Psi of an isentropic jet, its slope bounded above a ratio of 0.9995."""
    critical = (2 / (g + 1)) ** (g / (g - 1))
    if r >= 1:
        return 0.0
    if r > 0.9995:
        joint = flow_function(0.9995, g)
        k = (g - 1) / g
        slope = joint * (1 / g - k * 0.9995**k / (2 * (1 - 0.9995**k))) / 0.9995
        s, x = -0.0005 * slope, (1 - r) / 0.0005
        return x * (1.5 * joint - 0.5 * s + 0.5 * (s - joint) * x**2)
    r = max(r, critical)
    return sqrt(2 * g / (g - 1) * (r ** (2 / g) - r ** ((g + 1) / g)))


def jet(area, p, T, behind, gas):
    """Flow from p, T to the pressure behind, kg/s, never backwards."""
    return area * p / sqrt(gas["R"] * T) * flow_function(behind / p, gamma(gas, T))


TANK_MOLAR_MASS = {"petrol": 105.97e-3, "ethanol": 46.06844e-3, "methanol": 32.04186e-3}
# kg/m3, kg of air for a kilogram, J/kg
LIQUIDS = {
    "petrol": {"density": 745.0, "air": 14.604, "heating": 43.4e6},
    "ethanol": {"density": 785.0, "air": 9.005, "heating": 26.813e6},
    "methanol": {"density": 787.0, "air": 6.474, "heating": 19.936e6},
}


def blend(fuel):
    """Stoichiometric ratio and lower heating value of the fuel in the tank; alcohols by volume."""
    by_volume = {"ethanol": fuel["ethanol"], "methanol": fuel["methanol"]}
    by_volume["petrol"] = 1 - sum(by_volume.values())
    mass = {name: share * LIQUIDS[name]["density"] for name, share in by_volume.items()}
    computed = {
        key: sum(mass[name] * LIQUIDS[name][key] for name in mass) / sum(mass.values())
        for key in ("air", "heating")
    }
    stated = {"air": fuel["stoichiometric_ratio"], "heating": fuel["heating_value"]}
    shares = {name: share / sum(mass.values()) for name, share in mass.items()}
    return {key: stated[key] or computed[key] for key in computed} | {"shares": shares}


def alcohol_by_molecules(shares):
    moles = {name: share / TANK_MOLAR_MASS[name] for name, share in shares.items()}
    return 1 - moles["petrol"] / sum(moles.values())
