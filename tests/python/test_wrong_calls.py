"""Python that is typed wrongly teaches as a wrong file does."""

import numpy as np
import pytest

import windwall as ww
from windwall.errors import ScenarioError

CAR = "scenarios/airfield_cyclecar.json"
MASS = "body/mass"


@pytest.fixture(scope="module")
def car():
    return ww.load(CAR)


@pytest.mark.parametrize("call", [ww.rank, ww.best_gearing, ww.driven_gains])
def test_a_file_s_name_is_no_scenario(call):
    with pytest.raises(TypeError, match=rf'{call.__name__}\(load\("{CAR}"\)\)'):
        call(CAR)


def test_nothing_else_is_one_either():
    with pytest.raises(TypeError, match="sweep wants a scenario, and this is a dict"):
        ww.sweep({}, {MASS: ["330 kg"]})


@pytest.mark.parametrize("outing", [[{"kind": "full_throttle"}], {"id": "run"}, 3])
def test_what_is_no_name_of_an_outing_is_told_how_one_goes_in(car, outing):
    kind = type(outing).__name__
    said = f"wants the id or the title of an outing of the file, and this is a {kind}; there are "
    with pytest.raises(TypeError, match=said) as told:
        car.drive(outing)
    taught = str(told.value).partition("goes in first: ")[2]
    assert eval(taught, {"car": car}).outing.id == "run"


def test_a_text_is_no_list(car):
    with pytest.raises(ScenarioError, match=r'a list is wanted here, such as \["348 kg"\]'):
        ww.sweep(car, {MASS: "330 kg"})
    with pytest.raises(ScenarioError, match=r"found the text 'manifold/boost'"):
        ww.sweep(car, {MASS: ["330 kg"]}, "manifold/boost")
    with pytest.raises(ScenarioError, match=r"found the text 'cooler'"):
        ww.rank(car, upgrades="cooler")


def test_a_list_is_no_number(car):
    with pytest.raises(ScenarioError, match="one value is a text by itself"):
        car.set({MASS: ["330 kg"]})


def test_a_misspelt_address_is_told_what_was_meant(car):
    with pytest.raises(ScenarioError, match='did you mean "manifold/boost"'):
        ww.sweep(car, {MASS: ["330 kg"]}, ["manifold/bost"])
    point = car.top_speed().point
    with pytest.raises(KeyError, match="did you mean 'boost'"):
        point["manifold/bost"]
    with pytest.raises(KeyError, match="There are"):
        point["zzz"]
    assert point.get("zzz") is None


def test_a_bare_number_is_asked_for_its_unit(car):
    with pytest.raises(ScenarioError, match=r'50 what\? Write "50 km/h", or si\(50\) for 50 m/s'):
        car.hold_speed(50)
    with pytest.raises(ScenarioError, match="330 what"):
        car.set({MASS: "330"})


@pytest.mark.parametrize("number", [140, 140.0, np.float64(140.0)])
def test_a_bare_speed_far_beyond_the_one_that_stands_there_is_read_both_ways(car, number):
    said = r"140 what\? As m/s it is 504 km/h, far beyond the 138 km/h here; "
    with pytest.raises(ScenarioError, match=rf"^set goal/speed: {said}write \"140 km/h\", or si"):
        car.set({"goal/speed": number})
    with pytest.raises(ScenarioError, match=said):
        ww.sweep(car, {"goal/speed": ["130 km/h", number]}, progress=False)
    us = car.shown_in("us")
    with pytest.raises(ScenarioError, match=r'313.2 mph, far beyond the 85.75 mph.*"140 mph"'):
        us.set({"goal/speed": number})


def test_all_that_is_wrong_with_bare_speeds_is_said_at_once(car):
    with pytest.raises(ScenarioError) as told:
        car.set({"goal/speed": 140.0, "tyres/speed_limit": 120.0, MASS: 330.0})
    assert [one.address for one in told.value.problems] == ["goal/speed", "tyres/speed_limit"]


@pytest.mark.parametrize(
    "speed, taken", [(20.0, 20), (76.0, 76), (ww.si(140), 140), ("140 m/s", 140), ("504 km/h", 140)]
)
def test_a_speed_that_is_likely_or_says_its_unit_is_taken(car, speed, taken):
    assert car.get("goal/speed") == pytest.approx(138 / 3.6)
    assert car.set({"goal/speed": speed}).get("goal/speed") == pytest.approx(taken)


def test_a_wind_is_shown_in_si_and_has_no_second_reading(car):
    assert car.set({"day/headwind": 20.0}).get("day/headwind") == 20.0


@pytest.fixture
def small():
    """Its file states no goal."""
    made = ww.load("scenarios/village_microcar.json")
    assert made.get("goal/speed") is None
    return made


def test_where_no_speed_stands_there_the_bound_is_what_the_vehicle_reaches(small):
    reached = small.brief_top_speed().speed
    said = rf"As m/s it is 216 km/h, far beyond the {3.6 * reached:.2f} km/h that this vehicle"
    with pytest.raises(ScenarioError, match=said):
        small.set({"goal/speed": 60})
    with pytest.raises(ScenarioError, match=said):
        ww.sweep(small, {"goal/speed": ["90 km/h", 60.0]}, progress=False)


@pytest.mark.parametrize("ask", [
    lambda small: small.set({"goal/speed": 40.0}),
    lambda small: ww.sweep(small, {"goal/speed": [30.0, 40.0]}, progress=False),
])  # fmt: skip
def test_a_bare_speed_that_nothing_bears_out_is_told_as_it_is_read(small, ask):
    said = r'goal/speed: 40 is read as 40 m/s, which is 144 km/h; write "40 km/h" or si\(40\)'
    with pytest.warns(UserWarning, match=said) as told:
        ask(small)
    assert [one.filename for one in told] == [__file__]


@pytest.mark.parametrize("speed", [ww.si(40), "40 m/s"])
def test_what_says_its_unit_is_taken_without_a_word(small, speed):
    assert small.set({"goal/speed": speed}).get("goal/speed") == 40.0


def test_where_no_vehicle_moves_the_bound_is_that_of_all(small):
    stuck = small.set({"body/rolling_resistance": 0.1, "body/mass": "5000 kg"})
    assert not stuck.brief_top_speed().answered
    with pytest.raises(ScenarioError, match=r'95 what\? As m/s it is 342 km/h; write "95 km/h"'):
        stuck.set({"goal/speed": 95.0})
