"""Facts that are not read at one engine speed, and those of further gauges, beside the model."""

import json
from math import sqrt

import numpy as np
import pytest

import windwall as ww
from python.samples import top
from windwall.study.apart import coast_speeds, scatter


def coasting(rows, **further):
    table = {"columns": {"time": "s", "speed": "km/h"}, "rows": rows}
    return {"what": "coast-down", "coasting": table} | further


def compared(car):
    return {one.key: one for one in car.against_observed()}


def test_each_gauge_has_its_result(seen):
    pull = {"what": "full throttle", "engine_speed": "4000 rpm"}
    car = seen(
        pull
        | {"inlet_depression": "1 ± 0.2 kPa", "head_temperature": "200 ± 8 degC"}
        | {"exhaust_temperature": "900 ± 30 degC", "lambda": "0.9 ± 0.02"}
    )
    point = car.operating_point("4000 rpm").point
    found = compared(car)
    assert found["inlet_depression"].model == point.charge_path.roots.inlet_depression
    assert found["head_temperature"].model == point.engine.head_temperature
    assert found["exhaust_temperature"].model == point.engine.exhaust_gas_temperature
    assert found["lambda"].model == point.engine["lambda"]


def test_fuel_of_a_held_speed_is_that_of_its_pedal(seen):
    held = {"what": "held speed", "speed": "60 km/h", "gear": 4, "fuel_used": "2 ± 0.1 L"}
    per_hour = compared(seen(held | {"time": "1 h"}))["fuel_used"]
    per_distance = compared(seen(held | {"distance": "60 km"}))["fuel_used"]
    car = seen()
    mass = 3600 * car.hold_speed("60 km/h", gear=4).petrol
    assert per_hour.model == pytest.approx(mass / 745, rel=2e-3)  # kg/m3 of petrol without alcohol
    assert per_distance.model == pytest.approx(per_hour.model, rel=1e-9)


def test_times_from_standstill_are_driven(seen):
    over = {"what": "standing start", "time": "20 ± 0.3 s", "distance": "402.336 m"}
    to = {"what": "standing start", "time": "15 ± 0.3 s", "speed": "80 km/h"}
    car = seen(over, to)
    first, second = car.against_observed()
    assert first.model == pytest.approx(car.time_over("402.336 m"), rel=1e-9)
    assert second.model == pytest.approx(car.time_to("80 km/h"), rel=1e-9)
    text = car.top_speed().summary(car.diagnose())
    assert "time over 402.3 m" in text
    assert "time to 80 km/h" in text


def test_a_nozzle_gives_by_the_root_of_its_pressure(document):
    spray = {"id": "spray", "kind": "evaporative_injection", "pump_pressure": "8 bar"}
    spray |= {
        "blend_by": "mass",
        "methanol": "0 %",
        "rated_flow": "100 cm3/min",
        "rated_pressure": "7 bar",
    }
    document["charge_path"].insert(1, spray)
    document["upgrades"] = []
    tried = {"what": "nozzle into a jar", "part": "spray", "pressure": "4 bar"}
    document["observed"] = [tried | {"caught": "150 ± 5 cm3", "time": "120 s"}]
    (one,) = ww.loads(json.dumps(document)).against_observed()
    assert one.model == pytest.approx(2 * 100e-6 * sqrt(4 / 7), rel=1e-12)
    assert one.sigma == pytest.approx(5e-6)


def test_a_coast_down_is_the_models_own_both_ways(seen):
    rolled = seen().coast_down("90 km/h", "50 km/h", headwind="2 m/s", points=9)
    rows = [[t, 3.6 * v] for t, v in zip(rolled["time"], rolled["speed"], strict=True)]
    car = seen(coasting(rows), coasting(rows, way="back")).set({"day/headwind": "2 m/s"})
    there, back = car.against_observed()
    assert there.model == pytest.approx(rolled["time"].iloc[-1], rel=1e-5)
    assert back.model > 1.05 * there.model  # the wind pushes
    speeds = coast_speeds(there.fact.situation.apart, car)
    np.testing.assert_allclose(3.6 * speeds, [v for _, v in rows], rtol=1e-6)


def test_the_scatter_of_a_table_is_that_of_its_readings():
    time = np.linspace(0, 40, 2000)
    noise = np.random.default_rng(5).normal(0, 0.4, len(time))
    assert scatter({"time": time, "speed": 30 - 0.3 * time + noise}) == pytest.approx(0.4, rel=0.05)
    assert scatter({"time": [0, 1, 2], "speed": [30, 29, 28]}) == pytest.approx(0.2 / 3.6)


def test_a_top_speed_is_not_shaken_by_what_stands_beside_it(seen):
    alone = seen(top(speed="122 ± 2 km/h"))
    beside = seen(top(speed="122 ± 2 km/h"), coasting([[0, 80], [5, 75], [10, 71]]))
    assert beside.against_observed()[0] == alone.against_observed()[0]
