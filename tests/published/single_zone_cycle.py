"""A four-stroke cycle computed by Cantera: one zone, equilibrium products, a wall law, a burn.

Nothing of the core is in it: gas data and equilibrium are Cantera's, the heat to the walls is the
law of Hohenberg (SAE 790825; its constants from memory). It gives work, heat to the walls and the
temperature behind the exhaust valves for a spark of one's choice.
"""

from functools import cache
from math import cos, exp, log, pi, radians, sin, sqrt

import cantera as ct
import numpy as np

FROZEN_BELOW = 1740  # K: products keep the water-gas equilibrium of this temperature
PRODUCTS = ("O2", "N2", "CO2", "H2O", "CO", "H2", "OH", "H", "O", "NO")
TEMPERATURES = np.arange(250.0, 3301.0, 25.0)
PRESSURES = np.array([2e5, 1e6, 4e6, 8e6])
RESIDUAL = 0.05


class Charge:
    """Energy and gas constant of a mixture before and after it burns, as tables."""

    def __init__(self, phi):
        species = {s.name: s for s in ct.Species.list_from_file("nasa_gas.yaml")}
        fuel = next(name for name in species if "C8H18" in name and "iso" in name.lower())
        products = ct.Solution(thermo="ideal-gas", species=[species[n] for n in PRODUCTS])
        fresh = ct.Solution(thermo="ideal-gas", species=[species[n] for n in (*PRODUCTS, fuel)])
        fresh.TPX = 300, 1e5, {fuel: phi, "O2": 12.5, "N2": 12.5 * 3.773}
        self.fuel = fresh[fuel].Y[0] * (1 - RESIDUAL)
        oxygen = (25 - 8 * phi) / 2
        atoms = {"CO": 8 * phi, "H2": 9 * phi, "O2": oxygen, "N2": 12.5 * 3.773}
        products.TPX = FROZEN_BELOW, 1e6, atoms
        products.equilibrate("TP")
        burnt = products.Y.copy()
        unburnt = fresh.Y * (1 - RESIDUAL)
        for k, name in enumerate(fresh.species_names):
            if name in products.species_names:
                unburnt[k] += RESIDUAL * burnt[products.species_index(name)]
        self.before = self._table(fresh, unburnt, [1e6], False)
        self.after = self._table(products, burnt, PRESSURES, True)
        self.enthalpy = self.after[0][0] + self.after[1][0] * TEMPERATURES

    @staticmethod
    def _table(gas, shares, pressures, equilibrium):
        energy = np.empty((len(pressures), len(TEMPERATURES)))
        constant = np.empty_like(energy)
        for i, p in enumerate(pressures):
            for j, T in enumerate(TEMPERATURES):
                gas.TPY = T, p, shares
                if equilibrium and T > FROZEN_BELOW:
                    gas.equilibrate("TP")
                energy[i, j] = gas.int_energy_mass
                constant[i, j] = ct.gas_constant / gas.mean_molecular_weight
        return energy, constant

    def at(self, T, p, burnt):
        """Energy in J/kg and gas constant in J/(kg K) with a share burnt."""
        where = np.interp(log(p), np.log(PRESSURES), np.arange(len(PRESSURES)))
        i = min(len(PRESSURES) - 2, int(where))
        w = where - i
        made = []
        for before, after in zip(self.before, self.after, strict=True):
            low, high = (np.interp(T, TEMPERATURES, after[k]) for k in (i, i + 1))
            cold = np.interp(T, TEMPERATURES, before[0])
            made.append((1 - burnt) * cold + burnt * ((1 - w) * low + w * high))
        return made


@cache
def charge(phi):
    return Charge(phi)


def share_burnt(angle, start, duration):
    z = (angle - start) / duration
    return 0.0 if z <= 0 else min(1.0, (1 - exp(-5 * z**3)) / (1 - exp(-5)))


def step_on(gas, mass, energy, state, volumes, burnt):
    """(J, K, Pa, gas constant) at the second volume, from (K, Pa) at the first."""
    (hot, p), (v, then) = state, volumes
    ahead = p
    for _ in range(12):
        left = energy - 0.5 * (p + ahead) * (then - v)
        for _ in range(20):
            u, R = gas.at(hot, ahead, burnt)
            change = (left / mass - u) / ((gas.at(hot + 2, ahead, burnt)[0] - u) / 2)
            hot += change
            if abs(change) < 1e-4:
                break
        meets = mass * R * hot / then
        if abs(meets / ahead - 1) < 1e-7:
            break
        ahead = meets
    return left, hot, ahead, R


def cycle(phi, start, duration, pressure, temperature, rpm):
    """(work J, temperature behind the valves K) of one cylinder of 87 x 84 mm, ratio 9."""
    gas, bore, stroke, ratio, wall, behind = charge(phi), 0.087, 0.084, 9.0, 470.0, 1.05e5
    crank, rod, area = stroke / 2, 1.75 * stroke, pi / 4 * bore**2
    clearance, swept = area * stroke / (ratio - 1), area * stroke

    def volume(t):
        return clearance + area * (
            crank * (1 - cos(t)) + rod - sqrt(rod**2 - (crank * sin(t)) ** 2)
        )

    T, p, t, step = temperature, pressure, -pi, radians(1.0)
    u, R = gas.at(T, p, 0.0)
    mass = p * volume(t) / (R * T)
    energy, work = mass * u, 0.0
    while t < pi - 1e-9:
        v, then = volume(t), volume(t + step)
        burnt = share_burnt(t / radians(1) + 1, start, duration)
        film = 130 * v**-0.06 * (p / 1e5) ** 0.8 * T**-0.4 * (stroke * rpm / 30 + 1.4) ** 0.8
        surface = 2.2 * area + pi * bore * v / area
        lost = film * surface * (T - wall) * step / (rpm * pi / 30)
        left, hot, ahead, R = step_on(gas, mass, energy - lost, (T, p), (v, then), burnt)
        work += 0.5 * (p + ahead) * (then - v)
        energy, T, p, t = left, hot, ahead, t + step
    kept_hot = T * (behind / p) ** (0.28 / 1.28)
    kept = behind * clearance / (R * kept_hot)
    kept_energy = kept * np.interp(kept_hot, TEMPERATURES, gas.after[0][0])
    enthalpy = (energy - kept_energy + behind * swept) / (mass - kept)
    return work, float(np.interp(enthalpy, gas.enthalpy, TEMPERATURES))


def over_spark(retards, **held):
    """(start of the best burn, [(work, exhaust) at each retard in degrees after it])."""
    starts = np.arange(-40.0, -9.0, 3.0)
    works = [cycle(start=start, **held)[0] for start in starts]
    k = int(np.argmax(works))
    a, b, c = works[k - 1 : k + 2]
    best = starts[k] + 1.5 * (a - c) / (a - 2 * b + c)
    return best, [cycle(start=best + late, **held) for late in retards]
