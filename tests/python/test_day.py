"""What another day does: the model beside the published factors, and a table of weather."""

import json

import numpy as np
import pytest

import windwall as ww
from python.samples import CURVE
from windwall.cli.command import run_command
from windwall.errors import ScenarioError
from windwall.study.day import factors, on_day, weather

COOL = {"temperature": "12 degC", "pressure": "102 kPa"}
CAR = "scenarios/airfield_cyclecar.json"
HIGH = "scenarios/lakebed_streamliner.json"


@pytest.fixture(scope="module")
def car():
    return ww.load(CAR)


@pytest.fixture(scope="module")
def found(car):
    return car.corrected(COOL, speed="118 km/h")


def test_each_day_is_the_vehicle_on_that_day(car, found):
    assert found.before.speed == car.brief_top_speed().goal_speed
    other = car.set({f"day/{key}": value for key, value in COOL.items()})
    assert found.after.speed == other.brief_top_speed().goal_speed
    curve = other.full_throttle_curve()
    assert found.after.power.value == curve["engine/power"].max()
    assert found.after.torque.value == curve["engine/torque"].max()


def test_what_was_seen_moves_by_the_ratio_of_the_model(found):
    assert found.expected == pytest.approx(
        118 / 3.6 * found.after.speed / found.before.speed, rel=1e-12
    )


def test_there_and_back_is_where_one_was(car, found):
    back = car.corrected({}, from_day=COOL, speed=ww.si(found.expected))
    assert back.expected == pytest.approx(118 / 3.6, rel=1e-12)
    assert back.power_ratio == pytest.approx(1 / found.power_ratio, rel=1e-12)
    assert [one.power_ratio for one in back.factors] == pytest.approx(
        [1 / one.power_ratio for one in found.factors], rel=1e-12
    )


def test_a_day_like_the_files_own_changes_nothing(car):
    same = car.corrected({"temperature": "33 degC"}, speed="118 km/h")
    assert (same.speed_ratio, same.power_ratio) == (1, 1)
    assert same.expected == pytest.approx(118 / 3.6, rel=1e-12)


@pytest.mark.published
def test_the_factors_of_two_days(car):
    """By hand: 33 degC, 98.4 kPa, 35 % of 5.034 kPa (ASHRAE's table of saturation), 96.64 kPa dry;
    J1349 1.18 (99/96.64) sqrt(306/298) - 0.18 = 1.0450.
    """
    air = weather(car)
    assert air.dry_pressure == pytest.approx(98.4e3 - 0.35 * 5034, rel=1e-4)
    j1349, iso, din = factors(air, weather(on_day(car, COOL)))
    assert j1349.before == pytest.approx(1.0450, abs=1e-4)
    assert iso.before == pytest.approx((99 / 96.64) ** 1.2 * (306 / 298) ** 0.6, abs=2e-4)
    assert din.before == pytest.approx(1013 / 984 * np.sqrt(306 / 293), abs=1e-4)


@pytest.mark.published
def test_without_a_blower_the_model_follows_j1349():
    """An engine on a carburettor; SAE J1349 (1990) takes friction as 15 % of what the pistons
    give. On one temperature, since the standard's engine is as warm on both days and this one is
    not: its oil follows the air. 0.5 %: friction of this engine is its own.
    """
    car = ww.load("scenarios/village_microcar.json")
    low = {"temperature": "25 degC", "pressure": "94 kPa"}
    found = car.corrected(low | {"pressure": "102 kPa"}, from_day=low)
    j1349 = found.factors[0].power_ratio
    assert 1.09 < j1349 < 1.11
    assert found.power_ratio == pytest.approx(j1349, rel=0.005)
    warm = car.corrected(low | {"temperature": "0 degC"}, from_day=low)
    assert 1 < warm.power_ratio < warm.factors[0].power_ratio


def test_a_torque_curve_moves_by_j1349_alone():
    """As docs/physics/engine.md has it; what is left is the plate's pressure loss. 0.5 %."""
    car = ww.loads(json.dumps(CURVE))
    found = car.corrected({"temperature": "5 degC", "pressure": "101 kPa"})
    assert found.power_ratio == pytest.approx(found.factors[0].power_ratio, rel=0.005)
    assert found.before.knock_margin is None
    assert found.before.retard is None
    assert not found.late_spark


def test_iso_1585_is_left_where_it_does_not_hold():
    found = ww.load(HIGH).corrected(COOL)  # from 1200 m of height
    iso = found.factors[1]
    assert iso.before > 1.07
    assert iso.valid is False
    assert "outside the 0.93 to 1.07" in found.summary()
    assert ww.load(CAR).corrected(COOL).factors[1].valid


def test_every_factor_stands_with_its_limits_or_that_they_were_not_read(found):
    sae, iso, din = (
        next(one for one in found.sentences if one.startswith(f"By {name}"))
        for name in ("SAE J1349", "ISO 1585", "DIN 70020")
    )
    assert "within the 0.93 to 1.07" in iso
    assert "was not read" in sae
    assert "was not read" in din


def test_blower_and_late_spark_are_said(found):
    said = " ".join(found.sentences)
    assert "no blower" in said
    assert "spark is late" in said
    plain = ww.load("scenarios/village_microcar.json").corrected(COOL)
    assert "no blower" not in " ".join(plain.sentences)


def test_a_pressure_stands_instead_of_a_height():
    high = ww.load(HIGH)
    moved = on_day(high, {"pressure": "98 kPa"})
    assert (moved.get("day/altitude"), moved.get("day/pressure")) == (None, 98e3)
    back = on_day(moved, {"altitude": "1200 m"})
    assert back.get("day/pressure") is None
    assert weather(high).pressure == pytest.approx(87.7e3, rel=1e-3)


@pytest.mark.parametrize(
    "day, says",
    [({"wether": "fine"}, "a day has no wether"), ({"temperature": "900 degC"}, "temperature")],
)
def test_a_wrong_day_is_refused(car, day, says):
    with pytest.raises(ScenarioError, match=says):
        car.corrected(day)


def test_a_day_without_an_answer_says_so(car):
    steep = car.set({"goal/grade": "20 %", "body/mass": "2000 kg"})
    none = steep.corrected(COOL, speed="50 km/h")
    assert not none.answered
    assert none.expected is None
    assert "There is no answer on the first day" in none.summary()


@pytest.fixture(scope="module")
def table(car):
    return car.forecast(["0 degC", "30 degC"], ["95 kPa", "99 kPa", "103 kPa"])


def test_a_forecast_is_a_table_of_days(car, table):
    assert table.speed.shape == (2, 3)
    one = car.set({"day/temperature": "30 degC", "day/pressure": "103 kPa"})
    assert table.speed[1, 2] == pytest.approx(one.brief_top_speed().goal_speed, rel=1e-9)
    assert table.table.loc[303.15, 103e3] == table.speed[1, 2]
    assert table.dataset["speed"].dims == ("temperature", "pressure")
    text = table.summary()
    assert "0 degC" in text
    assert "103.0 kPa" in text
    made = json.loads(json.dumps(table.to_dict()))
    assert made["speed"][1][2] == table.speed[1, 2]


def test_a_forecast_of_a_high_place_takes_the_pressure():
    high = ww.load(HIGH).forecast(["10 degC"], ["88 kPa", "100 kPa"])
    assert np.isfinite(high.speed).all()


def test_forecast_as_a_plot(table):
    matplotlib = pytest.importorskip("matplotlib")
    matplotlib.use("Agg")
    ax = ww.plot.forecast(table)
    lines = ax.get_lines()
    assert len({(one.get_linestyle(), one.get_marker()) for one in lines}) == 3
    assert ax.get_xlabel() == "Air temperature, degC"
    assert ax.get_ylabel() == "Speed, km/h"
    assert lines[2].get_ydata()[1] == pytest.approx(table.speed[1, 2] * 3.6)


def test_the_command(capsys):
    asked = ["day", CAR, "--temperature", "12 degC", "--pressure", "102 kPa", "--speed", "118 km/h"]
    assert run_command(asked) == 0
    assert "would have been" in capsys.readouterr().out
    assert run_command([*asked, "--from", "temperature=5 degC", "--json"]) == 0
    made = json.loads(capsys.readouterr().out)
    assert made["first"]["weather"]["temperature"] == pytest.approx(278.15)
    assert made["expected"] == pytest.approx(118 / 3.6 * made["speed_ratio"])
    assert run_command(["day", CAR, "--temperature", "0 degC", "30 degC", "--json"]) == 0
    assert len(json.loads(capsys.readouterr().out)["speed"]) == 2
    assert run_command(["day", CAR, "--from", "colour=red"]) == 2
    assert "a day has no colour" in capsys.readouterr().err
