"""Times from standstill, how far a driven run falls short, and gearing for a time."""

import json

import pytest

import windwall as ww
from python.samples import CURVE
from python.test_best_gearing import geared


@pytest.fixture(scope="module")
def car():
    return geared(teeth=36)


def test_times_grow_with_what_is_asked(car):
    speeds = [car.time_to(f"{speed} km/h") for speed in (30, 60, 90)]
    distances = [car.time_over(f"{distance} m") for distance in (50, 100, 402.336)]
    assert 0 < speeds[0] < speeds[1] < speeds[2]
    assert 0 < distances[0] < distances[1] < distances[2]


def test_a_run_takes_what_an_outing_takes(car):
    quick = car.time_to("90 km/h", shift_time="0 s")
    assert quick < car.time_to("90 km/h", shift_time="1 s") - 0.9


def test_a_speed_that_is_never_reached_has_no_time(car):
    with pytest.raises(ww.NoAnswer, match="gets no faster"):
        car.time_to("400 km/h")
    with pytest.raises(ww.NoAnswer, match="road ends"):
        car.time_over("402.336 m", road_length="200 m")


@pytest.mark.parametrize("ask", ["time_to", "time_over"])
@pytest.mark.parametrize("mark", ["3 kg", 100, "0 m"])
def test_what_is_no_mark(car, ask, mark):
    with pytest.raises(ww.ScenarioError, match="no distance or speed"):
        getattr(car, ask)(mark)


def test_a_speed_is_no_distance(car):
    with pytest.raises(ww.ScenarioError, match="time_over"):
        car.time_to("400 m")
    with pytest.raises(ww.ScenarioError, match="time_to"):
        car.time_over("100 km/h")


def test_a_bad_key_of_the_outing_is_said(car):
    with pytest.raises(ww.ScenarioError, match="shift_speed"):
        car.time_to("60 km/h", shift_sped="5000 rpm")


def test_outings_of_the_file_are_left_alone(car):
    legs = [{"kind": "idle", "time": "10 s"}]
    document = car.document() | {"outings": [{"id": "morning", "legs": legs}]}
    named = ww.loads(json.dumps(document))
    assert named.time_to("60 km/h") == car.time_to("60 km/h")


def test_without_shifts_and_heat_it_ends_as_the_quick_answer_says():
    """No time is lost in a change, and a torque curve does not know that it is warm: what is left
    between the two is the quadrature of the one and the clutch of the other."""
    one = geared(teeth=36).shortfall(shift_time="0 s")
    assert one.speed == pytest.approx(0.0, abs=2e-3 * one.quick)


def test_shifts_end_it_slower():
    car = geared(teeth=24, run_up="300 m")
    one = car.shortfall(shift_time="1.5 s")
    assert one.run_up == 300
    assert one.speed > car.shortfall(shift_time="0 s").speed + 0.1
    assert one.driven == pytest.approx(one.quick - one.speed)
    assert "over 300 m" in one.sentence
    assert "below the" in one.sentence


def test_without_a_road_it_runs_until_it_gets_no_faster():
    one = geared(run_up=None).shortfall()
    assert one.run_up is None
    assert one.run.ended == "no_more_speed"
    assert one.speed == pytest.approx(0.0, abs=2e-3 * one.quick)
    assert "until it gets no faster" in one.sentence


def test_gearing_for_a_time_is_the_quickest_of_all_teeth(car):
    best = ww.best_gearing(car, mark="402.336 m", reach=1.25)
    times = {
        teeth: geared(teeth=teeth).time_over("402.336 m")
        for teeth in (int(best.best.value) + step for step in (-1, 0, 1))
    }
    assert min(times, key=times.get) == best.best.value
    assert best.best.merit == pytest.approx(times[best.best.value], rel=1e-9)
    assert best.gain == pytest.approx(best.now.merit - best.best.merit)
    assert "to 402.336 m" in best.sentence
    assert best.curve.columns[1] == "time"
    assert best.to_dict()["mark"] == {"speed": None, "distance": 402.336}


def test_it_starts_in_the_gear_that_is_quickest():
    chain = {"id": "last", "kind": "chain", "teeth_front": 15, "teeth_rear": 30}
    box = {"id": "box", "kind": "gearbox", "ratios": [20.0, 4.5, 2.5]}
    creeping = ww.loads(json.dumps(CURVE | {"driveline": [box, chain]}))
    best = ww.best_gearing(creeping, mark="50 km/h", reach=1.01)
    assert best.launch_gear == 2
    assert creeping.time_to("50 km/h", launch_gear=2) < creeping.time_to("50 km/h", launch_gear=1)
    with pytest.raises(ww.ScenarioError, match=r"launch_gear: 9 is outside 1 to 3, the gears"):
        creeping.time_over("402.336 m", launch_gear=9)
