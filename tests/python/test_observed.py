"""The model against what was seen, and which single input would explain a difference."""

import json
from math import hypot

import pytest

import windwall as ww
from windwall.results.diagnosis import FAR_OFF, Fact
from windwall.study.diagnosis import FARTHEST


@pytest.fixture
def seen(document):
    """A scenario in which something else was observed."""

    def make(*observed):
        document["observed"] = list(observed)
        return ww.loads(json.dumps(document))

    return make


def top(**facts):
    return {"what": "top speed", **facts}


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
        ("speed", True), ("gear", True), ("knock", True),
        ("boost", False), ("charge_temperature", False), ("knock", False),
    ]  # fmt: skip
    point = car.operating_point("4000 rpm").point
    boost = car.against_observed()[3]
    assert boost.model == point.manifold.boost
    assert car.against_observed()[4].model == point.manifold.temperature


def test_knock_is_compared_at_the_spark_that_was_driven(seen):
    """An octane number for each degree: driven early enough, not hearing it contradicts."""
    one = seen(top(knock="not heard", retard="-20 deg")).against_observed()[0]
    margin = one.fact.model(seen().top_speed())
    assert margin == pytest.approx(seen().top_speed().knock.margin_at_best_spark - 20)
    assert one.off < -FAR_OFF
    assert seen(top(knock="not heard", retard="40 deg")).against_observed()[0].off == 0


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
    assert "CAUTION" not in car.top_speed().summary(car.diagnose())


def test_what_explains_it_does(seen, best):
    """Each named input, set to the value it is said to need, brings the model there."""
    target = 3.6 * best.goal_speed * 0.97
    car = seen(top(speed=f"{target:.2f} ± 0.5 km/h"))
    # A well known anchor leaves the observation alone to say how far off the model is.
    car = car.set({"engine/knock_anchor/octane_number": "92 ± 0.01"})
    (far,) = car.diagnose().explained
    assert abs(far.compared.off) > FAR_OFF
    assert 2 <= len(far.inputs) <= 3
    moves = [abs(one.deviations) for one in far.inputs]
    assert moves == sorted(moves)
    assert moves[-1] <= FARTHEST
    for one in far.inputs:
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
