"""Texts that no file can hold, but a Python program can: half of a surrogate pair."""

import pytest

import windwall as ww

HALF = "\ud800"


@pytest.fixture(scope="module")
def text() -> str:
    return ww.load("scenarios/airfield_cyclecar.json").text()


def test_a_lone_surrogate_in_a_file_is_a_problem_with_its_place(text):
    with pytest.raises(ww.ScenarioError, match="this is not JSON") as told:
        ww.loads(text.replace('"title"', f'"ti{HALF}tle"', 1))
    assert ":3:" in str(told.value) or ":2:" in str(told.value)


def test_a_lone_surrogate_in_an_address_or_a_value_is_a_problem(text):
    car = ww.loads(text)
    for attempt in (
        lambda: car.get(f"body/{HALF}"),
        lambda: car.set({f"body/{HALF}": 1.0}),
        lambda: car.set({"body/mass": f"300 {HALF}"}),
        lambda: car.install(HALF),
    ):
        with pytest.raises(ww.ScenarioError) as told:
            attempt()
        str(told.value).encode()  # fit to be printed


def test_problems_beyond_the_first_two_hundred_are_counted(text):
    menu = ", ".join(f'"key{at}": 1' for at in range(300))
    with pytest.raises(ww.ScenarioError, match=r"and 1\d\d more problems"):
        ww.loads(text.replace('"title"', f'{menu}, "title"', 1))
