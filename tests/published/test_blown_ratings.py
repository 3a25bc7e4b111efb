"""Blown engines against what their makers printed (data/engine_ratings.csv, sources row by row),
descriptors only; what stands for the blower is said in blown_engines, and was fixed before the
first comparison of November 2026. Nothing in the model was chosen on these rows.
"""

import numpy as np
import pytest

from published.blown_engines import all_ratios, blown
from published.engine_ratings import half, sealed

pytestmark = pytest.mark.published
KINDS = ("on 98 octane", "where nothing knocks")
# The targets are those of engines without a blower. On the petrol of the pump the turbocharged ones
# lose a seventh to knock that their makers had, a fifth before knock under boost was looked at
# again; with knock taken away those with a charge cooler read a quarter high. Nine tenths on 98
# octane went from 0.199 to 0.213 as ports came to keep more of large flows, by a published film.
HELD = {"on 98 octane": (0.04, 0.145, 0.22), "where nothing knocks": (0.085, 0.08, 0.27)}


def errors(kind, key):
    return [
        (sealed(row), ratio[kind] - 1)
        for row in blown()
        for key_of, ratio in all_ratios()[row["id"]].items()
        if key_of == key
    ]


@pytest.mark.parametrize("kind", [0, 1], ids=["pump", "no_knock"])
def test_blown_engines_by_descriptors(kind, evidence, distribution):
    found = [one for key in ("torque", "power") for one in errors(kind, key)]
    for closed in (False, True):
        some = [error for where, error in found if where is closed]
        distribution(f"Blown engines {KINDS[kind]}", half(closed), some, within=0.08)
    sizes = np.abs([error for _, error in found])
    name = f"figures of blown engines {KINDS[kind]}"
    held = HELD[KINDS[kind]]
    middle = np.median([error for _, error in found])
    evidence.at_most(f"{name}: median error", abs(middle), 0.04, held[0])
    evidence.at_most(f"{name}: median size", np.median(sizes), 0.08, held[1])
    evidence.at_most(f"{name}: nine tenths within", np.quantile(sizes, 0.9), 0.18, held[2])


def test_enough_of_them(evidence):
    figures = sum(len(one) for one in all_ratios().values())
    evidence.at_least("figures of blown engines", figures, 10)
