"""What each upgrade is worth in a driven run."""

import json

import pytest

import windwall as ww
from python.samples import CURVE

MENU = [
    {"id": "ballast", "title": "A bag of sand", "add": {"body/mass": "60 kg"}},
    {"id": "diet", "title": "Seats left at home", "add": {"body/mass": "-60 kg"}},
    {"id": "nose", "title": "A long nose", "scale": {"body/drag_area": 0.8}},
    {
        "id": "tail",
        "title": "A tail behind it",
        "requires": ["nose"],
        "scale": {"body/drag_area": 0.9},
    },
    {"id": "sail", "title": "A sail", "set": {"body/drag_area": "4 m2"}},
]


@pytest.fixture(scope="module")
def car():
    priced = [{"cost": "50 EUR"} | one for one in MENU]
    return ww.loads(json.dumps(CURVE | {"upgrades": priced}))


@pytest.fixture(scope="module")
def by_time(car):
    return ww.driven_gains(car, "80 km/h")


def test_what_saves_most_comes_first(by_time):
    changes = [one.change for one in by_time.gains if one.change is not None]
    assert changes == sorted(changes)
    assert by_time.gains[0].id == "diet"
    assert {one.id: one.change > 0 for one in by_time.gains[:4]} == {
        "diet": False,
        "nose": False,
        "tail": False,
        "ballast": True,
    }


def test_each_is_the_difference_of_two_runs(car, by_time):
    found = {one.id: one for one in by_time.gains}
    assert by_time.stock == car.time_to("80 km/h")
    assert found["diet"].before == by_time.stock
    assert found["diet"].fitted == car.install("diet").time_to("80 km/h")


def test_what_is_required_is_there_before(car, by_time):
    found = {one.id: one for one in by_time.gains}
    assert found["tail"].before == found["nose"].fitted
    assert found["tail"].fitted == car.install("nose", "tail").time_to("80 km/h")


def test_a_run_that_does_not_get_there_is_last_and_says_why(by_time):
    last = by_time.gains[-1]
    assert (last.id, last.fitted, last.change) == ("sail", None, None)
    assert "gets no faster" in last.refusal
    assert "sail: There is no such time" in by_time.summary()


def test_by_the_speed_of_a_driven_run(car):
    by_speed = ww.driven_gains(car)
    assert by_speed.stock == car.shortfall().driven
    changes = [one.change for one in by_speed.gains]
    assert changes == sorted(changes, reverse=True)
    assert by_speed.gains[-1].id == "sail"
    assert "at the end of 1500 m" in by_speed.summary()


def test_keys_of_an_outing_are_passed_on(car):
    slow = ww.driven_gains(car, "80 km/h", shift_time="2 s")
    assert slow.stock > car.time_to("80 km/h") + 1


def test_frame_and_document(by_time):
    assert list(by_time.frame.columns) == ["title", "before", "fitted", "change"]
    assert by_time.frame.attrs["units"]["change"] == "s"
    document = json.loads(json.dumps(by_time.to_dict()))
    assert document["gains"][0]["id"] == "diet"
    assert document["units"]["before"] == "s"
