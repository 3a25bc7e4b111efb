"""What a spray does to the engine while it begins, and once the pedal is released."""

from pathlib import Path

import numpy as np
import pytest

import windwall as ww


@pytest.fixture(scope="module")
def sprayed():
    root = Path(__file__).parents[2]
    return ww.load(root / "scenarios/lakebed_streamliner.json").drive(progress=False)


def test_a_released_pedal_makes_no_boost_however_wet_the_engine_is(sprayed):
    """The stop of an idle is set dry: a flooded engine is not opened until the switch of its pump
    finds boost again."""
    made = sprayed.dataset
    released = np.isin(made.phase, ["coasting", "braking", "standing"])
    assert made.manifold_boost.values[released].max() < 0
    used = made.liquid_used.values
    last = made.time.values[np.isin(made.phase, ["driving", "slipping", "shifting"])].max()
    assert np.ptp(used[made.time.values > last + 5]) < 1e-3 * used.max()
    assert used.max() > 0.1


def test_a_spray_that_begins_cools_the_exhaust(sprayed):
    """What the walls catch of it first has brought its heat to nobody yet."""
    made, events = sprayed.dataset, sprayed.events
    runs = events.time[events.what == "pump_runs"]
    assert len(runs) == 2
    exhaust = made.engine_exhaust_gas_temperature
    for begins in runs:
        before = float(exhaust.sel(time=begins, method="nearest"))
        behind = exhaust.sel(time=slice(begins, begins + 2))
        assert behind.max() < before + 20  # the engine is still speeding up
        assert float(behind[-1]) < before - 30
    assert np.nanmin(exhaust) > 373  # it is above boiling, drowned or not
