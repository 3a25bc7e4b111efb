"""Python that is typed wrongly teaches as a wrong file does."""

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
