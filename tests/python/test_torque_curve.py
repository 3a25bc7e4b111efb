"""An engine that is stated by its measured torque."""

import copy
import json

import pytest

import windwall as ww

CURVE = {
    "format": "windwall-scenario/1",
    "goal": {"run_up": "1500 m"},
    "day": {"temperature": "25 degC", "pressure": "99 kPa"},
    "body": {"mass": "340 kg", "drag_area": "0.6 m2"},
    "charge_path": [{"id": "plate", "kind": "throttle", "bore": "60 mm"}],
    "engine": {
        "kind": "torque_curve",
        "displacement": "625 cm3",
        "stroke": "70 mm",
        "rev_limit": "6000 rpm",
        "table": {
            "columns": {"engine_speed": "rpm", "torque": "N m"},
            "rows": [[2000, 44], [3500, 48], [5000, 44], [6000, 36]],
        },
    },
    "driveline": [{"id": "box", "kind": "gearbox", "ratios": [9.0, 5.0]}],
    "tyres": {"size": "145/80 R13"},
    "upgrades": [{"id": "diet", "cost": "50 EUR", "set": {"body/mass": "320 kg"}}],
}


def changed(**parts):
    return json.dumps(copy.deepcopy(CURVE) | parts)


def test_gives_the_measured_torque():
    point = ww.loads(changed()).operating_point(engine_speed="3500 rpm").point
    assert point.engine.torque == pytest.approx(48, rel=0.02)
    assert point.knock is None
    assert point.engine.head_temperature is None


def test_answers_top_speed_ranking_and_texts():
    car = ww.loads(changed())
    best = car.top_speed()
    assert 20 < best.speed < 60
    assert best.knock_band is None
    assert "says nothing of knock" in str(best)
    assert any("torque curve" in caution.sentence for caution in best.cautions)
    assert ww.rank(car)


def test_a_blower_beside_it_is_refused():
    blower = {
        "id": "roots",
        "kind": "positive_blower",
        "displacement": "230 cm3",
        "drive_ratio": 1.35,
        "leak_area": "9 mm2",
    }
    with pytest.raises(ww.ScenarioError, match="cannot answer what a blower does"):
        ww.loads(changed(charge_path=[*CURVE["charge_path"], blower]))


def test_an_upgrade_of_the_charge_path_is_refused():
    upgrade = {"id": "wide", "cost": "1 EUR", "set": {"charge_path/plate/bore": "62 mm"}}
    with pytest.raises(ww.ScenarioError, match="cannot answer what another one does"):
        ww.loads(changed(upgrades=[upgrade]))
