"""A top speed is where the vehicle's own full-throttle curve stops accelerating."""

from pathlib import Path

import pytest

import windwall as ww

CYCLECAR = Path(__file__).parents[2] / "scenarios" / "airfield_cyclecar.json"
PARTS = ("large_blower", "fairing", "diet", "exhaust", "hard_tyres", "shroud", "bypass")


def tall_cyclecar(octane):
    """Late spark holds its knock margin at low engine speed, a nearly shut rear plate above."""
    tall = {"driveline/final_chain/teeth_rear": 27, "engine/spark/most_retard": "28 deg"}
    car = ww.load(CYCLECAR).install(*PARTS, "rear_throttle").set(tall)
    return car.set({"engine/knock_anchor/octane_number": octane})


@pytest.mark.parametrize("octane", [100, 102, 103, 105])
def test_nothing_is_left_above(octane):
    car = tall_cyclecar(octane)
    best = car.top_speed()
    curve = car.full_throttle_curve(points=120)
    above = curve[curve["road/speed"] > best.speed * 1.005]
    assert not (above["road/surplus"] > 0).any()
    if best.limited_by == "drag":
        assert abs(best.point.road.surplus) < 1e-6 * best.point.road.thrust
