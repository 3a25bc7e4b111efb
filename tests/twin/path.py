"""docs/physics/charge_path.md: one function for each part, from the gas before to behind it.

A state is a dict with p, T and gas; m is the flow of gas, kg/s.
More than a part can pass raises TooMuchError.
"""

from math import asin, cos, exp, log, pi, sqrt

import numpy as np
from scipy.optimize import brentq
from scipy.special import gammainc

from twin.gas import DRY_AIR, enthalpy, gamma, heat_capacity, jet, temperature

FULL = 2 * pi * 10000 / 60  # rotor speed at which losses of a blower are stated, rad/s


class TooMuchError(Exception):
    """No pressure behind the part lets so much through."""


def density(state):
    return state["p"] / (state["gas"]["R"] * state["T"])


def less(p, drop):
    """Pressure behind a loss."""
    x = drop / p
    return p * (1 - x) if x <= 0.5 else p / (4 * x)


def filter_outlet(part, state, m):
    x, a = m / part["at_flow"], part["linear_share"]
    drop = part["drop"] * part["at_density"] / density(state) * (a * x + (1 - a) * x * abs(x))
    return state | {"p": less(state["p"], drop)}


def to_the_air(state, m, conductance, around):
    """Temperature behind walls that give heat to the air under the bodywork."""
    flow = max(m * heat_capacity(state["gas"], state["T"]), 1e-9)
    return around + (state["T"] - around) * exp(-conductance / flow)


def past_metal(state, m, conductance, around, films, metal):
    """Behind walls of a temperature of their own, with the W they take; films inside, outside."""
    T, gas = state["T"], state["gas"]
    flow = max(m * heat_capacity(gas, T), 1e-9)
    inside, outside = films
    at_rest = to_the_air(state, m, conductance, around)
    taken = m * (enthalpy(gas, T) - enthalpy(gas, at_rest))
    rest = around + taken / conductance * inside / (inside + outside)
    from_charge = flow * (1 - exp(-conductance * (inside + outside) / outside / flow))
    less = from_charge * (rest - metal)
    given = {"taken": taken + less, "from_charge": from_charge}
    return state | {"T": at_rest - less / flow} | given


def plenum_surface(part):
    return 6 * part["volume"] ** (2 / 3)


PLENUM_FILM = 30.0  # W/(m2 K)


def plenum_conductance(part, outside):
    if part["conductance"] is not None:
        return part["conductance"]
    return plenum_surface(part) / (1 / PLENUM_FILM + 1 / outside)


def plenum_outlet(part, state, m, around, outside, metal=None):
    conductance = plenum_conductance(part, outside)
    if metal is None:
        return state | {"T": to_the_air(state, m, conductance, around)}
    films = PLENUM_FILM, outside
    return past_metal(state, m, conductance, around, films, metal)


def viscosity(T):
    return 1.458e-6 * T**1.5 / (T + 110.4)


def inside(Re, T, bore):
    """Film of the charge in a pipe, W/(m2 K)."""
    return viscosity(T) * 1006 / 0.71 / bore * (3.66 + 0.023 * Re**0.8 * 0.71**0.4)


def duct_outlet(part, state, m, around, outside):
    rho, bore = density(state), part["bore"]
    speed = m / (rho * pi * bore**2 / 4)
    Re = max(rho * abs(speed) * bore / viscosity(state["T"]), 0.001)
    f = churchill(Re, part["roughness"] / bore)
    loss = f * part["length"] / bore + part["loss_coefficient"]
    films = 1 / inside(Re, state["T"], bore) + 1 / outside
    conductance = pi * bore * part["length"] / films
    if part["conductance"] is not None:
        conductance = part["conductance"]
    return state | {
        "p": less(state["p"], loss * rho * speed * abs(speed) / 2),
        "T": to_the_air(state, m, conductance, around),
    }


def churchill(Re, rough):
    A = (2.457 * log(1 / ((7 / Re) ** 0.9 + 0.27 * rough))) ** 16
    B = (37530 / Re) ** 16
    return 8 * ((8 / Re) ** 12 + (A + B) ** -1.5) ** (1 / 12)


def throttle_area(part, opening):
    """Open area of the bore, m2."""
    closed = part["closed_angle"]
    angle = closed + opening * (pi / 2 - closed)
    k, a = cos(angle) / cos(closed), part["shaft"] / part["bore"]
    s = lambda x: x * sqrt(1 - x * x) + asin(x)  # noqa: E731
    share = 1 - k + 2 / pi * (k * s(a / k) - s(a)) if k > a else 1 - 2 / pi * s(a)
    return pi / 4 * part["bore"] ** 2 * share


def throttle_flow(part, state, behind, opening):
    p, T, gas = state["p"], state["T"], state["gas"]
    if part["linkage"] is not None:
        opening = float(
            np.interp(opening, part["linkage"]["pedal_travel"], part["linkage"]["plate_travel"])
        )
    jet_area = part["discharge_coefficient"] * throttle_area(part, opening)
    t = max(0.0, 2 * opening - 1)
    regained = t * t * (3 - 2 * t) * min(jet_area / (pi / 4 * part["bore"] ** 2), 0.9)
    throat = p - (p - behind) / (1 - regained) ** 2
    return jet(jet_area, p, T, throat, gas) + jet(part["leak_area"], p, T, behind, gas)


def throttle_outlet(part, state, m, opening):
    p = state["p"]
    short = lambda behind: throttle_flow(part, state, behind, opening) - m  # noqa: E731
    if short(0.0) < 0:
        raise TooMuchError
    return state | {"p": brentq(short, 0.0, p, xtol=1e-12 * p, rtol=1e-15)}


def bent(T):
    """Outside 150 to 1200 K an outlet temperature bends towards 100 and 1500 K."""
    if T > 1200:
        return 1200 + 300 * (T - 1200) / (T - 1200 + 300)
    return 150 - 50 * (150 - T) / (150 - T + 50) if T < 150 else T


def case_conductances(part, state, omega, outside):
    """From the charge to the case, and from there to the air."""
    size, T = part["displacement"] ** (1 / 3), state["T"]
    surface = part["case_area"] or 25 * size**2
    to_case, to_air = part["case_conductance"], part["case_to_air"]
    if to_case is None:
        Re = density(state) * omega * size / 2 * size / 2 / viscosity(T)
        to_case = part["case_exchange"] * surface * inside(Re, T, size / 2)
    return to_case, surface * outside if to_air is None else to_air


def case(part, state, omega, unused, around, outside, metal):
    """Conductance to what the case stands against, and the temperature of that."""
    to_case, to_air = case_conductances(part, state, omega, outside)
    held = part["case_temperature"] if metal is None else metal
    if held is not None:
        return to_case, held
    mount = part["mount_conductance"]
    outward = to_air + mount
    if to_case == 0 or outward == 0:
        return 0.0, around
    there = (to_air * around + mount * part["mount_temperature"] + unused) / outward
    return to_case * outward / (to_case + outward), there


def blower(part, state, m, p2, engine_speed, around, outside, metal=None):
    """Outlet temperature, powers and the flow there is room for, at one pressure behind."""
    p1, T1, gas = state["p"], state["T"], state["gas"]
    omega, v, Vd = part["drive_ratio"] * engine_speed, part["built_in_ratio"], part["displacement"]
    N, g = omega / (2 * pi), gamma(gas, T1)

    work = p1 * Vd * ((v ** (g - 1) - 1) / (g - 1) + p2 / p1 / v - 1)
    friction = omega * (part["friction_torque"] + part["friction_torque_per_speed"] * omega / FULL)
    shaft = N * work + friction
    crank = shaft / part["belt_efficiency"] if shaft > 0 else shaft * part["belt_efficiency"]

    made = N * work + part["friction_to_charge"] * friction
    unused = (1 - part["friction_to_charge"]) * friction
    G, T_base = case(part, state, omega, unused, around, outside, metal)
    m = max(m, 1e-9)
    # half of what the case takes goes with the outlet's temperature
    h = enthalpy(gas, T1) + (made - G * (T1 - T_base) / 2) / m
    T2 = bent(temperature(gas, h, G / 2 / m, T_base))

    lost = part["fill_loss"] * (omega / FULL) ** 2
    fill = 1 - lost if lost <= 0.5 else 1 / (4 * lost)
    if p2 > p1:
        leak = jet(part["leak_area"], p2, T2, p1, gas)
        taken = leak * T2
    else:
        leak = -jet(part["leak_area"], p1, T1, p2, gas)
        taken = leak * T1
    capacity = (p1 * Vd * N * fill / gas["R"] - taken) / T1
    powers = {"shaft": shaft, "crank": crank, "unused": unused}
    return powers | {"T2": T2, "capacity": capacity, "leak": leak}


def blower_outlet(part, state, m, *held):
    p1 = state["p"]
    room = lambda p2: blower(part, state, m, p2, *held)["capacity"] - m  # noqa: E731
    if room(1e-3 * p1) < 0:
        raise TooMuchError
    p2 = brentq(room, 1e-3 * p1, 50 * p1, xtol=1e-12 * p1, rtol=1e-15)
    answers = blower(part, state, m, p2, *held)
    return state | {
        "p": p2,
        "T": answers["T2"],
        "shaft": answers["shaft"],
        "crank": answers["crank"],
        "unused": answers["unused"],
    }


def effectiveness(NTU, Cr):
    """Cross-flow, both unmixed, Mason's series; its factors are incomplete gamma functions."""
    NTU, Cr = min(NTU, 60.0), min(max(Cr, 0.0), 1.0)
    if Cr * NTU < 1e-12:
        return 1 - exp(-NTU)
    n = np.arange(1, 400)
    return float(np.sum(gammainc(n, NTU) * gammainc(n, Cr * NTU)) / (Cr * NTU))


def cooler_outlet(part, state, m, air, air_speed):
    gas, T = state["gas"], state["T"]
    cold = air["T"] + part["under_hood_rise"]
    speed = max(part["installed_share"] * air_speed, 0.3) if part["installed_share"] else 0.0
    mc = air["density"] * part["face_area"] * speed
    T_out = T
    if mc > 0 and m > 0:
        hot_side = part["hot_side_share"]
        resistance = hot_side * (part["at_charge_flow"] / m) ** part["charge_exponent"]
        resistance += (1 - hot_side) * (part["at_cooling_flow"] / mc) ** part["cooling_exponent"]
        middle = (T + cold) / 2
        Ch, Cc = m * heat_capacity(gas, middle), mc * heat_capacity(DRY_AIR, middle)
        least, most = min(Ch, Cc), max(Ch, Cc)
        share = effectiveness(part["conductance"] / resistance / least, least / most) * least / Ch
        hot = enthalpy(gas, T)
        T_out = temperature(gas, hot - share * (hot - enthalpy(gas, cold)))
    rho = state["p"] / (gas["R"] * (T + T_out) / 2)
    x = m / part["at_charge_flow"]
    drop = part["drop"] * x ** part["drop_exponent"] * part["at_density"] / rho
    return state | {"p": less(state["p"], drop), "T": T_out}
