"""Several held speeds in a line each, what no gear holds, and where a belt stands."""

from pathlib import Path

import pytest

import windwall as ww
from windwall.report.text.part_load import several_text
from windwall.report.text_layout import as_text
from windwall.results.part_load import BeyondGears

ROOT = Path(__file__).parents[2]


@pytest.fixture(scope="module")
def lake():
    return ww.load(ROOT / "scenarios/lakebed_streamliner.json")


def said(answer):
    return " ".join(answer.summary().split())


def test_several_speeds_have_a_line_each(windwall, file, car):
    speeds = ("50 km/h", "70 km/h", "500 km/h")
    found = windwall("hold", file, *speeds)
    assert found.returncode == 1
    lines = found.stdout.splitlines()
    assert len(lines) < 40
    for speed in speeds[:2]:
        held = car.hold_speed(speed)
        (line,) = [one for one in lines if one.strip().startswith(speed.replace(" ", ".0 "))]
        hour, distance = 3600 * held.petrol, 1e5 * held.petrol / held.road_speed
        assert f"  {held.gear}  " in line
        assert f"{hour:.2g} kg/h" in line
        assert f"{distance:.3g} kg for 100 km" in line
    (line,) = [one for one in lines if one.strip().startswith("500 km/h")]
    assert line.endswith("no pedal")
    assert "in any gear" in found.stdout
    assert "Charge, station by station" not in found.stdout


def test_of_several_speeds_a_belt_stands_in_its_column(lake):
    answers = [lake.hold_speed(speed) for speed in ("80 km/h", "120 km/h")]
    text = as_text(several_text(answers))
    assert max(map(len, text.splitlines())) <= 100
    for one in answers:
        assert f"  {one.point.variator.ratio:#.3g} to 1  " in text


def test_a_caution_of_several_speeds_is_told_once(windwall, file, car):
    both = [car.hold_speed(speed).cautions for speed in ("40 km/h", "50 km/h")]
    seals = [one for each in both for one in each if one.about == "inlet_depression"]
    assert len(seals) == 2
    text = " ".join(windwall("hold", file, "40 km/h", "50 km/h").stdout.split())
    assert text.count("unvented seals") == 1
    assert "at 50.0 km/h: The blower's inlet is" in text


def test_one_speed_is_told_in_full(windwall, file):
    assert "Charge, station by station" in windwall("hold", file, "50 km/h").stdout


def test_its_sentence_has_the_fuel_for_the_road(car, lake):
    held = car.hold_speed("60 km/h")
    assert held.fuel_per_metre == pytest.approx(held.petrol * 3.6 / 60)
    assert f", {1e5 * held.fuel_per_metre:.3g} kg for 100 km." in held.sentence
    assert "lb for 100 mi" in car.shown_in("us").hold_speed("40 mph").sentence
    assert car.idle().fuel_per_metre is None


@pytest.mark.parametrize(("speed", "gear"), [("300 km/h", 4), ("2 km/h", 1)])
def test_without_a_gear_asked_for_the_nearest_is_named(car, speed, gear):
    held = car.hold_speed(speed)
    assert isinstance(held, BeyondGears)
    assert held["gear"] == gear
    assert f"in any gear: there is no pedal to hold it. Nearest comes gear {gear}." in held.sentence
    asked = car.hold_speed(speed, gear=2)
    assert not isinstance(asked, BeyondGears)
    assert "in gear 2: there is no pedal" in asked.sentence


def test_of_a_belt_it_is_said_where_it_stands(lake):
    held = lake.hold_speed("100 km/h")
    assert f"of the pedal with the belt at {held.point.variator.ratio:#.3g} to 1:" in held.sentence
    assert "gear" not in held.sentence
    assert "gear" not in lake.hold_speed("3 km/h").sentence
