"""An engine that is stated by its measured torque."""

import copy
import json

import pytest

import windwall as ww
from python.samples import CURVE


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


def test_it_is_shown_without_cylinders():
    assert "625 cm3 by its measured torque, to 6000 rpm" in repr(ww.loads(changed()))


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
