"""Arguments are texts, or numbers that say they are SI."""

import pytest

import windwall as ww
from windwall.report.wording.scenario import conditions
from windwall.scenario.info import scenario_info


def test_a_bare_number_is_asked_back(car):
    with pytest.raises(ww.ScenarioError, match=r'4200 what.*"4200 rpm".*si\(4200\)'):
        car.operating_point(4200)


def test_si_and_text_mean_the_same(car):
    by_text = car.operating_point("4200 rpm", road_speed="90 km/h")
    by_number = car.operating_point(ww.si(by_text.engine.speed), road_speed=ww.si(25.0))
    assert by_number.engine.torque == pytest.approx(by_text.engine.torque, rel=1e-9)


def test_an_opening_is_a_share(car):
    half = car.operating_point("3000 rpm", opening="50 %")
    assert half.engine.torque == pytest.approx(
        car.operating_point("3000 rpm", opening=0.5).engine.torque, rel=1e-12
    )
    with pytest.raises(ww.ScenarioError, match=r"outside 0 to 100 %"):
        car.operating_point("3000 rpm", opening=2)


@pytest.mark.parametrize("speed", ["-5 rpm", "90000 rpm", "4200 km", "fast"])
def test_wrong_speeds_are_refused(car, speed):
    with pytest.raises(ww.ScenarioError, match="engine_speed"):
        car.operating_point(speed)


def test_the_conditions_are_repeated_in_words(car):
    assert (
        conditions(scenario_info(car))
        == "28 degC, 99 kPa, humidity 40 %, headwind 0 m/s, level road"
    )
    hill = car.set({"day/pressure": None, "day/altitude": "800 m", "goal/grade": "2 %"})
    assert "altitude 800 m" in conditions(scenario_info(hill))
    assert "grade 2 %" in conditions(scenario_info(hill))
