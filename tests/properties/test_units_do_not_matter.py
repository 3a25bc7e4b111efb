"""The same vehicle written in other units is the same vehicle, bit for bit."""

import json
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

import windwall as ww

SCENARIO = Path(__file__).parents[2] / "scenarios" / "village_microcar.json"

# Decimal spellings of one and the same quantity; scaling is exact before the one rounding.
SPELLINGS = {
    "body/mass": ["412.5 kg", "412500 g"],
    "body/drag_area": ["0.615 m2", "6150 cm2", "615000 mm2"],
    "engine/bore": ["86.4 mm", "8.64 cm", "0.0864 m"],
    "engine/stroke": ["84 mm", "8.4 cm", "0.084 m"],
    "day/temperature": ["303.15 K", "30 degC", "86 degF"],
    "day/pressure": ["98.4 kPa", "98400 Pa", "984 hPa", "984 mbar"],
}


@settings(max_examples=25, deadline=None)
@given(st.data())
def test_any_spelling_gives_the_same_digest_and_the_same_speed(data):
    car = ww.load(SCENARIO)
    chosen = {a: data.draw(st.sampled_from(texts), label=a) for a, texts in SPELLINGS.items()}
    first = {address: texts[0] for address, texts in SPELLINGS.items()}
    one, other = car.set(first), car.set(chosen)
    assert one.digest == other.digest
    assert one.top_speed().speed == other.top_speed().speed


@settings(max_examples=25, deadline=None)
@given(st.floats(300, 500), st.floats(0.4, 0.9))
def test_saved_text_reads_back_to_the_same_vehicle(mass, drag_area):
    car = ww.load(SCENARIO).set({"body/mass": mass, "body/drag_area": drag_area})
    again = ww.loads(car.text())
    assert again.get("body/mass") == mass
    assert again.get("body/drag_area") == drag_area
    assert again.digest == car.digest
    assert ww.loads(again.text()).text() == again.text()


@pytest.mark.parametrize("units", ["metric", "us"])
def test_the_system_people_read_in_changes_no_number(units):
    text = json.loads(SCENARIO.read_text())
    text["units"] = units
    car = ww.loads(json.dumps(text))
    assert car.top_speed().speed == ww.load(SCENARIO).top_speed().speed
