"""All four strokes of a cycle at rest: the single zone of `single_zone_cycle`, with what stays
behind mixed into the next charge, and heat to the walls also while the exhaust valve is open.

The films are those of Hohenberg, Woschni and Annand, their constants from memory. Nothing of the
core is in it.
"""

from dataclasses import dataclass
from math import cos, exp, pi, radians, sin, sqrt

import numpy as np

from published.single_zone_cycle import TEMPERATURES, charge, share_burnt, step_on

BORE, STROKE, RATIO, BEHIND, DRAWN = 0.087, 0.084, 9.0, 1.05e5, 330.0
AREA = pi / 4 * BORE**2
SWEPT, CLEARANCE = AREA * STROKE, AREA * STROKE / (RATIO - 1)
LAWS = ("Hohenberg", "Woschni", "Annand")
STEP = radians(1.0)


@dataclass
class Cycle:
    work: float  # J, of compression and expansion
    chamber: float  # J to the walls with the valves shut
    open: float  # J to the walls while the piston pushes the exhaust out
    released: float  # J
    fresh: float  # kg
    residual: float  # share of all gas
    enthalpy: float  # J/kg of all gas that leaves, before the port
    behind: float  # K of that

    @property
    def to_the_walls(self):
        return (self.chamber + self.open) / self.released


def film(law, p, T, speed, V, open_=False, burning=0.0):
    """W/(m2 K); `burning` is what burning adds to Woschni's velocity."""
    if law == "Hohenberg":
        return 130 * V**-0.06 * (p / 1e5) ** 0.8 * T**-0.4 * (speed + 1.4) ** 0.8
    if law == "Woschni":
        velocity = (6.18 if open_ else 2.28) * speed + burning
        return 3.26 * BORE**-0.2 * (p / 1e3) ** 0.8 * T**-0.55 * velocity**0.8
    viscosity = 4.7e-7 * T**0.645
    conductivity, reynolds = viscosity * 1250 / 0.72, p / (287 * T) * speed * BORE / viscosity
    return 0.5 * conductivity / BORE * reynolds**0.7


def surface(V):
    return 2.2 * AREA + pi * BORE * V / AREA


def volume(t):
    crank, rod = STROKE / 2, 1.75 * STROKE
    return CLEARANCE + AREA * (crank * (1 - cos(t)) + rod - sqrt(rod**2 - (crank * sin(t)) ** 2))


class Gas:
    """The charge with a share of residual."""

    def __init__(self, phi, residual):
        self.of, self.residual = charge(phi), residual
        self.low = [table[0] for table in self.of.after]
        made = zip(self.of.before, self.low, strict=True)
        self.fresh = [(before[0] - 0.05 * low) / 0.95 for before, low in made]

    def at(self, T, p, burnt):
        """Energy in J/kg and gas constant."""
        hot = self.of.at(T, p, 1.0)
        pairs = zip(self.fresh, self.low, hot, strict=True)
        return [
            (1 - burnt)
            * (
                (1 - self.residual) * np.interp(T, TEMPERATURES, f)
                + self.residual * np.interp(T, TEMPERATURES, low)
            )
            + burnt * h
            for f, low, h in pairs
        ]

    def drawn(self):
        """Enthalpy of what is drawn in, J/kg."""
        energy, constant = (np.interp(DRAWN, TEMPERATURES, table) for table in self.fresh)
        return energy + constant * DRAWN


def exhaust_stroke(law, T, R, wall, rpm, steps=180):
    """(J lost, K of what stays behind) from gas of that temperature at the bottom."""
    speed, seconds, lost = STROKE * rpm / 30, pi / steps / (rpm * pi / 30), 0.0
    for i in range(steps):
        V = volume(pi + (i + 0.5) * pi / steps)
        through = film(law, BEHIND, T, speed, V, open_=True) * surface(V) * seconds
        capacity = BEHIND * V / (R * T) * (1013 + 0.2755 * T)
        cooler = (T - wall) * (1 - exp(-through / capacity))
        lost, T = lost + through * (T - wall), T - cooler
    return lost, T


def shut_valves(law, gas, T, p, start, duration, rpm, wall):
    """(work, heat to the walls, K, Pa, gas constant) from bottom to bottom."""
    speed, seconds, first = STROKE * rpm / 30, STEP / (rpm * pi / 30), (T, p)
    t, (u, R) = -pi, gas.at(T, p, 0.0)
    mass = p * volume(t) / (R * T)
    energy, work, lost = mass * u, 0.0, 0.0
    while t < pi - 1e-9:
        V, then = volume(t), volume(t + STEP)
        burnt, burning = share_burnt(t / radians(1) + 1, start, duration), t / radians(1) > start
        motored = first[1] * (volume(pi) / V) ** 1.3
        swirl = 3.24e-3 * SWEPT * first[0] / (first[1] * volume(pi)) * max(p - motored, 0) * burning
        flux = film(law, p, T, speed, V, burning=swirl) * (T - wall)
        if law == "Annand" and burning:
            flux += 4.3e-9 * (T**4 - wall**4)
        heat = flux * surface(V) * seconds
        left, hot, ahead, R = step_on(gas, mass, energy - heat, (T, p), (V, then), burnt)
        work, lost = work + 0.5 * (p + ahead) * (then - V), lost + heat
        energy, T, p, t = left, hot, ahead, t + STEP
    return work, lost, T, p, R


def drawn_charge(gas, pressure, stays, T_left):
    """K at the bottom, of what stays behind and what is drawn in over it."""
    u_left = np.interp(T_left, TEMPERATURES, gas.low[0])

    def over(T):
        u, R = gas.at(T, pressure, 0.0)
        mass = pressure * volume(pi) / (R * T)
        brought = stays * u_left + (mass - stays) * gas.drawn() - pressure * SWEPT
        return mass * u - brought

    low, high = 250.0, 900.0
    for _ in range(60):
        middle = (low + high) / 2
        low, high = (low, middle) if over(low) * over(middle) <= 0 else (middle, high)
    return middle


def whole_cycle(law, phi, start, duration, pressure, rpm, wall=440.0, rounds=5):
    """`start` in degrees after the top, `duration` in degrees, or what makes it of the residual."""
    residual, T_left = 0.1, 1100.0
    for _ in range(rounds):
        gas = Gas(phi, residual)
        stays = BEHIND * CLEARANCE / (gas.at(T_left, BEHIND, 1.0)[1] * T_left)
        T = drawn_charge(gas, pressure, stays, T_left)
        mass = pressure * volume(pi) / (gas.at(T, pressure, 0.0)[1] * T)
        residual = stays / mass
        lasts = duration(residual) if callable(duration) else duration
        work, chamber, hot, p, R = shut_valves(law, gas, T, pressure, start, lasts, rpm, wall)
        inside = hot * min(1.0, BEHIND / p) ** (0.28 / 1.28)
        lost, T_left = exhaust_stroke(law, inside, R, wall, rpm)
    fresh = mass - stays
    leaves = fresh * gas.drawn() - work - (pressure - BEHIND) * SWEPT - chamber - lost
    released = fresh * (gas.drawn() - np.interp(298.15, TEMPERATURES, gas.of.enthalpy))
    behind = temperature_of(phi, leaves / fresh)
    return Cycle(work, chamber, lost, released, fresh, residual, leaves / fresh, behind)


def temperature_of(phi, enthalpy):
    """K of burnt gas that has so many J/kg."""
    return float(np.interp(enthalpy, charge(phi).enthalpy, TEMPERATURES))


def lasting(residual):
    """Degrees from first to last burnt, slowed by what stayed behind: docs/physics/engine.md."""
    return 60 * ((1 - 2.1 * 0.05) / max(0.2, 1 - 2.1 * residual)) ** 0.85
