"""The model against what was seen, where and how it was driven."""

import json
from math import hypot, pi

import numpy as np
import pytest

import windwall as ww
from python.samples import top
from windwall.results.diagnosis import FAR_OFF, MISREAD, Fact
from windwall.scenario.inputs import SLIPS
from windwall.study.diagnosis import FARTHEST


def test_each_kind_of_fact_has_its_place(seen):
    pull = {"what": "full throttle", "engine_speed": "4000 rpm"}
    car = seen(
        top(speed="122 ± 2 km/h", gear=4, knock="not heard", retard="9 deg"),
        pull
        | {"boost": "12 ± 1 kPa", "charge_temperature": "62 ± 3 degC"}
        | {"knock": "heard", "retard": "2 deg"},
    )
    compared = [(one.key, one.fact.at_top_speed) for one in car.against_observed()]
    assert compared == [
        ("speed", True), ("gear", True), ("knock", True), ("retard", True),
        ("boost", False), ("charge_temperature", False), ("knock", False), ("retard", False),
    ]  # fmt: skip
    point = car.operating_point("4000 rpm").point
    boost = car.against_observed()[4]
    assert boost.model == point.manifold.boost
    assert car.against_observed()[5].model == point.manifold.temperature


def driven(car, retard):
    return car.set({"engine/spark/policy": "as_given", "engine/spark/retard": retard})


def test_knock_is_compared_at_the_spark_that_was_driven(seen):
    """Driven early enough, not hearing it contradicts."""
    one = seen(top(knock="not heard", retard="-20 deg")).against_observed()[0]
    assert one.model == driven(seen(), "-20 deg").top_speed().knock.margin
    assert one.off < -FAR_OFF
    assert seen(top(knock="not heard", retard="40 deg")).against_observed()[0].off == 0


def test_the_model_has_the_spark_and_the_engine_speed_that_were_driven(seen):
    facts = {"speed": "110 ± 2 km/h", "gear": 4, "boost": "30 ± 4 kPa", "retard": "14 ± 2 deg"}
    car = seen(top(**facts, charge_temperature="70 ± 5 degC", knock="not heard"))
    held = {one.key: one for one in car.against_observed()}
    late = driven(car, "14 deg")
    pull = late.full_throttle_curve(4)
    turns = np.interp(110 / 3.6, pull["road/speed"], pull["engine/speed"])
    point = late.operating_point(ww.si(turns), road_speed="110 km/h").point
    assert held["boost"].model == pytest.approx(point.manifold.boost, rel=1e-3)
    assert held["charge_temperature"].model == pytest.approx(point.manifold.temperature, rel=1e-4)
    assert held["knock"].model == pytest.approx(point.knock.margin, abs=0.01)
    assert held["boost"].engine_speed == pytest.approx(turns, rel=1e-4)
    assert held["boost"].model < 0.97 * late.top_speed().point.manifold.boost
    assert held["speed"].model == late.top_speed().goal_speed
    assert held["speed"].model < car.top_speed().goal_speed - 0.1
    # What it chooses itself stands beside what was chosen, at that engine speed too.
    own = car.operating_point(ww.si(held["retard"].engine_speed), road_speed="110 km/h")
    assert held["retard"].model == pytest.approx(own.point.knock.retard, rel=1e-6)
    ends = [abs(driven(car, f"{way} deg").top_speed().goal_speed - held["speed"].model)
            for way in (12, 16)]  # fmt: skip
    assert held["speed"].model_sigma == pytest.approx(max(ends))
    text = " ".join(car.top_speed().summary(car.diagnose()).split())
    assert "The model has the spark that was driven, 14 deg late, and for boost and charge" in text
    assert f"{turns * 30 / pi:.0f} rpm: 110 km/h in gear 4" in text


def test_an_engine_speed_that_was_read_goes_before_speed_and_gear(seen):
    car = seen(top(speed="110 km/h", gear=4, engine_speed="4321 rpm", boost="30 ± 4 kPa"))
    boost = car.against_observed()[-1]
    assert boost.engine_speed == pytest.approx(4321 * pi / 30)
    assert "4321 rpm as it was read" in car.top_speed().summary(car.diagnose())


def test_a_gear_that_the_vehicle_does_not_have_holds_nothing(seen):
    car = seen(top(speed="110 km/h", gear=9, boost="30 ± 4 kPa"))
    assert car.against_observed()[-1].model == car.top_speed().point.manifold.boost


def test_a_spark_that_the_file_states_is_what_was_driven(document):
    columns = {"engine_speed": "rpm", "retard": "deg"}
    table = {"columns": columns, "rows": [[1000, 9], [6000, 9]]}
    document["engine"]["spark"] = {"policy": "as_given", "table": table}
    document["observed"] = [top(boost="30 ± 4 kPa", retard="2 deg")]
    car = ww.loads(json.dumps(document))
    assert car.against_observed()[0].model == car.top_speed().point.manifold.boost


def test_knock_says_nothing_of_a_spark_nobody_states(seen):
    car = seen(top(knock="not heard", gear=4))
    assert [one.key for one in car.against_observed()] == ["gear"]
    text = " ".join(car.top_speed().summary(car.diagnose()).split())
    assert 'knock in observed/1 ("not heard") says nothing until its retard is stated' in text


def test_both_spreads_count(car):
    speed = car.against_observed()[0]
    anchor = "engine/knock_anchor/octane_number"
    here, spread = car.get(anchor), car.knock_sigma
    moved = [car.set({anchor: f"{here + way * spread} ± {spread}"}) for way in (-1, 1)]
    ends = [one.top_speed().goal_speed for one in moved]
    base = car.top_speed().goal_speed
    assert speed.model_sigma == max(abs(end - base) for end in ends) > 0
    assert speed.off == pytest.approx((base - 122 / 3.6) / hypot(2 / 3.6, speed.model_sigma))


@pytest.mark.parametrize(
    ("word", "margin", "above"),
    [
        ("heard", 4, 4), ("heard", -4, 0), ("not heard", 4, 0), ("not heard", -4, -4),
        ("at the edge", 4, 4), ("at the edge", -4, -4),
    ],
)  # fmt: skip
def test_what_was_heard_of_knock_bounds_the_margin(word, margin, above):
    assert Fact({}, "knock", word, None).above(margin) == above


def test_near_enough_is_no_caution(seen, best):
    car = seen(top(speed=f"{3.6 * best.goal_speed:.1f} ± 2 km/h"))
    assert car.diagnose().explained == ()
    text = car.top_speed().summary(car.diagnose())
    assert "CAUTION" not in text
    assert "CHALLENGED" not in text


@pytest.mark.parametrize(("off", "word"), [(0.8, ""), (1.5, "CHALLENGED"), (2.5, "CAUTION")])
def test_beyond_one_standard_deviation_the_model_is_challenged(seen, best, off, word):
    car = seen().set({"engine/knock_anchor/octane_number": "92 ± 0.01"})
    speed = 3.6 * car.top_speed().goal_speed
    car = seen(top(speed=f"{speed - 2 * off:.6f} ± 2 km/h"))
    car = car.set({"engine/knock_anchor/octane_number": "92 ± 0.01"})
    assert car.against_observed()[0].off == pytest.approx(off, abs=1e-3)
    found = car.diagnose()
    assert bool(found.explained) == bool(word)
    text = car.top_speed().summary(found)
    assert [one for one in ("CHALLENGED", "CAUTION") if one in text] == ([word] if word else [])


def test_what_explains_it_does(seen, best):
    """Each named input, set to the value it is said to need, brings the model there."""
    target = 3.6 * best.goal_speed * 0.97
    car = seen(top(speed=f"{target:.2f} ± 0.5 km/h"))
    # A well known anchor leaves the observation alone to say how far off the model is.
    car = car.set({"engine/knock_anchor/octane_number": "92 ± 0.01"})
    (far,) = car.diagnose().explained
    assert abs(far.compared.off) > FAR_OFF
    assert len(far.inputs) >= 2
    moves = [abs(one.deviations) for one in far.inputs]
    assert moves == sorted(moves)
    assert moves[-1] <= FARTHEST
    for one in (each for each in far.inputs if each.input.sentence not in (MISREAD, SLIPS)):
        sigma = car.known_to(one.input.address)
        assert one.value == pytest.approx(car.get(one.input.address) + one.deviations * sigma)
        speed = car.set({one.input.address: one.value}).top_speed().goal_speed
        assert abs(3.6 * speed - target) < 0.1 * 0.5  # a tenth of what the speed was read to
    text = car.top_speed().summary(car.diagnose())
    assert all(one.input.address in text for one in far.inputs)
    assert text.index("CAUTION") < text.index("balance speed")


def test_the_ranking_is_headed_by_the_same(car, ranking):
    found = car.diagnose()
    text, speed = ranking.summary(found), car.top_speed().summary(found)
    start = speed.index("Held against")
    held = speed[start : speed.index("\n\n", start)]
    assert held in text
    assert "CAUTION" in held
    assert text.index("CAUTION") < text.index("as it is")
    assert ranking.to_dict(found)["observed"] == car.top_speed().to_dict(found)["observed"]


def test_nothing_explains_the_impossible(seen):
    car = seen(top(speed="300 ± 1 km/h"))
    (far,) = car.diagnose().explained
    assert far.inputs == []
    assert "No single input" in " ".join(car.top_speed().summary(car.diagnose()).split())


def test_full_throttle_without_engine_speed_is_said_not_to_be_compared(seen):
    car = seen({"what": "full throttle", "boost": "12 ± 1 kPa"})
    assert car.against_observed() == []
    assert "observed/1 is not compared" in car.top_speed().summary(car.diagnose())
