"""Which upgrade gains most, under a number that nobody can defend: how late a spark may be."""

from pathlib import Path

import pytest

import windwall as ww
from windwall.report.wording.ranking import first

CYCLECAR = Path(__file__).parents[2] / "scenarios/airfield_cyclecar.json"
# Those that gain half a km/h and more, and what may be fitted beside none of them.
MENU = ["small_pulley", "large_blower", "gearing", "fairing", "hard_tyres", "race_fuel", "spray"]
CAPS = (15, 25, 35)


@pytest.fixture(scope="module")
def capped():
    car = ww.load(CYCLECAR)
    late = {cap: car.set({"engine/spark/most_retard": f"{cap} deg"}) for cap in CAPS}
    return {cap: ww.rank(one, upgrades=MENU, progress=False) for cap, one in late.items()}


def test_first_place_does_not_hang_on_how_late_a_spark_may_be(capped):
    for anchor in range(3):
        places = {cap: first(ranking, anchor).id for cap, ranking in capped.items()}
        assert len(set(places.values())) == 1, places


def test_the_cap_is_felt_all_the_same(capped):
    """So that the above could fail: at the earliest cap the pulley's spark is too early for it."""
    gains = [capped[cap].upgrades["small_pulley"].alone[1] * 3.6 for cap in CAPS]
    assert gains[0] < gains[1] - 0.5
    assert gains[1] == pytest.approx(gains[2], abs=0.05)
