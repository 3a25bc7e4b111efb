"""Signs of the whole vehicle, each derived from what it does to thrust or to the road load."""

from pathlib import Path

from hypothesis import given, settings
from hypothesis import strategies as st

import windwall as ww

SCENARIOS = Path(__file__).parents[2] / "scenarios"


def speed(car) -> float:
    return car.top_speed().speed


@settings(max_examples=15, deadline=None)
@given(st.floats(0.45, 0.9), st.floats(1.001, 1.3))
def test_more_drag_area_is_never_faster(drag_area, factor):
    """Drag rises at every speed and thrust does not."""
    car = ww.load(SCENARIOS / "airfield_cyclecar.json")
    slim = speed(car.set({"body/drag_area": drag_area}))
    assert speed(car.set({"body/drag_area": drag_area * factor})) <= slim * (1 + 1e-9)


@settings(max_examples=15, deadline=None)
@given(st.floats(280, 420), st.floats(1.001, 1.3))
def test_more_mass_is_never_faster_while_the_tyres_grip(mass, factor):
    """Rolling rises and acceleration falls; only grip could gain from weight."""
    car = ww.load(SCENARIOS / "airfield_cyclecar.json").set({"tyres/grip": 1.4})
    light = speed(car.set({"body/mass": mass}))
    assert speed(car.set({"body/mass": mass * factor})) <= light * (1 + 1e-9)


@settings(max_examples=15, deadline=None)
@given(st.floats(-6, 6), st.floats(0.1, 6))
def test_more_headwind_is_never_faster(wind, more):
    """Drag goes with the square of the air speed, which a headwind adds to."""
    car = ww.load(SCENARIOS / "village_microcar.json")
    before = speed(car.set({"day/headwind": wind}))
    assert speed(car.set({"day/headwind": wind + more})) <= before * (1 + 1e-9)


@settings(max_examples=10, deadline=None)
@given(st.floats(88, 100), st.floats(0.5, 8))
def test_more_octane_is_never_slower(octane, more):
    """A larger fuel index needs no more retard at any point, and retard only costs torque."""
    car = ww.load(SCENARIOS / "airfield_cyclecar.json")
    before = speed(car.set({"fuel/research_octane": octane}))
    assert speed(car.set({"fuel/research_octane": octane + more})) >= before * (1 - 1e-6)
