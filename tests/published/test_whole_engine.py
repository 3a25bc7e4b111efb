"""The whole engine against what is published of whole engines.

Source: Dziubak and Karczewski, Energies 15 (2022) 3285, a review: each further kilopascal of
pressure drop at the air filter costs a spark-ignition engine 1 to 1.5 % of its power.
"""

import json

import pytest

import windwall as ww

pytestmark = pytest.mark.published

ENGINE = {
    "format": "windwall-scenario/2",
    "day": {"temperature": "25 degC", "pressure": "100 kPa"},
    "body": {"mass": "400 kg", "drag_area": "0.7 m2"},
    "charge_path": [
        {"id": "airbox", "kind": "filter", "drop": "1 kPa", "at_flow": "20 g/s"},
        {"id": "plate", "kind": "throttle", "bore": "40 mm"},
    ],
    "engine": {
        "kind": "cylinder",
        "cylinders": 2,
        "bore": "76 mm",
        "stroke": "68.8 mm",
        "compression_ratio": 8,
        "rev_limit": "6000 rpm",
    },
    "driveline": [{"id": "box", "kind": "gearbox", "ratios": [9.0, 5.0]}],
    "tyres": {"size": "145/80 R13"},
}


@pytest.mark.parametrize("engine_speed", ["3000 rpm", "4500 rpm", "6000 rpm"])
def test_a_kilopascal_at_the_filter(engine_speed, evidence):
    clean = ww.loads(json.dumps(ENGINE)).operating_point(engine_speed=engine_speed)
    dirty = (
        ww.loads(json.dumps(ENGINE))
        .set({"charge_path/airbox/drop": "2 kPa"})
        .operating_point(engine_speed=engine_speed)
    )
    drops = [
        point.charge_path.airbox.inlet.pressure - point.charge_path.airbox.outlet.pressure
        for point in (clean, dirty)
    ]
    further = (drops[1] - drops[0]) / 1000
    lost = 100 * (1 - dirty.engine.power / clean.engine.power)
    claim = f"per cent of power for a kilopascal at the filter, at {engine_speed}"
    evidence.near(lost / further, 1.25, 0.25, claim)
