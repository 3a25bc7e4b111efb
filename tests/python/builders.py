"""Synthetic builders: each has a vehicle that a description allows, sees it do things with the
errors that are stated, and learns from that. What is believed afterwards is held against the truth.
"""

import numpy as np
from scipy.special import ndtr
from scipy.stats import chi2

from windwall.study.calibrate import learn
from windwall.study.calibrate_facts import EAR, facts_of
from windwall.study.calibrate_model import Worlds
from windwall.study.worlds import world_speeds

INPUTS = ("body/drag_area", "charge_path/blower/leak_area", "engine/knock_anchor/octane_number")
RIVALS = (("cooler",), ("small_pulley",))  # whose difference in gain is asked for
SEEN = [
    {
        "what": "top speed",
        "speed": "122 ± 2 km/h",
        "gear": 4,
        "boost": "29 ± 4 kPa",
        "charge_temperature": "72 ± 4 degC",
        "knock": "not heard",
        "retard": "13 ± 2 deg",
    },
    {"what": "full throttle", "engine_speed": "3600 rpm", "boost": "25 ± 3 kPa"},
]


def shares_below(car, count, seed, progress=None):
    """By what was asked for, of each builder the share of what is believed that lies below the
    truth: (builders,), uniform where beliefs are right.
    """
    rng = np.random.default_rng(seed)
    worlds = Worlds(car, facts_of(car))
    about = worlds.circumstances()
    found = {name: [] for name in ("speed", *INPUTS, "gain difference")}
    worth = []
    for at in range(count):
        truth = rng.standard_normal((1, len(worlds.prior.addresses)))
        facts = seen(worlds, about, truth, rng)
        if facts is None:
            continue
        posterior = learn(car, facts)
        worth.append(posterior.equal_draws)
        for name, share in _shares(worlds, truth, posterior).items():
            found[name].append(share)
        if progress:
            progress(at + 1, found, worth)
    return {name: np.array(shares) for name, shares in found.items()}, np.array(worth)


def seen(worlds, about, truth, rng):
    """The facts of one builder; None where the vehicle has no answer."""
    answers = worlds.answers(truth)[0, :-1]
    if not np.all(np.isfinite(answers)):
        return None
    answers = answers + rng.standard_normal(len(about)) @ np.array([one.shifts for one in about])
    return [_read(fact, there, rng) for fact, there in zip(worlds.facts, answers, strict=True)]


def _read(fact, there, rng):
    if not fact.heard:
        return fact._replace(value=there + fact.sigma * rng.standard_normal())
    silent = rng.random() < ndtr(there / EAR)
    return fact._replace(heard="not heard" if silent else "heard", side=1 if silent else -1)


def _shares(worlds, truth, posterior):
    """Shares of the draws below the truth, by their weights."""
    own = worlds.answers(truth)[0, -1]
    counts = posterior.weights > 1e-4  # of one; the others change no share that is looked at
    weights, every = posterior.weights[counts], np.vstack([truth, posterior.draws[counts]])
    speeds = world_speeds(worlds.scenario, worlds.prior.to_values(every), RIVALS).speed
    gains = speeds[:, 0] - speeds[:, 1]
    made = {"speed": _below(own, posterior.speeds[counts], weights)}
    made |= {
        name: _below(every[0, i], every[1:, i], weights)
        for name in INPUTS
        for i in [worlds.prior.addresses.index(name)]
    }
    return made | {"gain difference": _below(gains[0], gains[1:], weights)}


def _below(truth, draws, weights):
    there = np.isfinite(draws)
    return float(np.sum(weights[there & (draws < truth)]) / np.sum(weights[there]))


def coverage(shares, inside):
    """The share of builders whose truth lies in the middle of what they believe."""
    return float(np.mean(np.abs(shares - 0.5) < inside / 2))


def uniform_chance(shares, bins=10):
    """The chance of ranks at least as uneven as these, where beliefs are right."""
    counts = np.histogram(shares, bins, (0, 1))[0]
    expected = len(shares) / bins
    return float(chi2.sf(np.sum((counts - expected) ** 2) / expected, bins - 1))
