"""Parts of the driveline that slip are all named, with what arrives and what they hold there."""

import json
from pathlib import Path

import pytest

import windwall as ww

CAR = Path(__file__).parents[2] / "scenarios/airfield_cyclecar.json"


def slipping(document):
    answer = ww.loads(json.dumps(document)).top_speed()
    return {one.address: one for one in answer.cautions if one.about == "slip"}


@pytest.fixture
def document():
    return json.loads(CAR.read_text(encoding="utf-8"))


def test_a_clutch_behind_a_primary_is_compared_at_its_own_shaft(document):
    """The primary doubles the torque: what holds the flywheel's does not hold that."""
    document["driveline"][1]["capacity"] = "60 N m"
    (clutch,) = slipping(document).values()
    most = ww.loads(json.dumps(document)).full_throttle_curve(points=40)["engine/torque"].max()
    assert most < 60
    assert clutch.high == pytest.approx(60)
    assert clutch.found == pytest.approx(2 * most, rel=0.05)
    said = clutch.sentence
    assert "60.0 N m" in said
    assert "arrive at its shaft" in said


def test_every_part_that_slips_is_named(document):
    document["driveline"][1]["capacity"] = "60 N m"
    document["upgrades"] = []
    document["driveline"][3] = {
        "id": "final_belt",
        "kind": "belt",
        "diameter_front": "120 mm",
        "diameter_rear": "200 mm",
        "tension": "150 N",
    }
    found = slipping(document)
    assert set(found) == {"driveline/clutch", "driveline/final_belt"}
    belt = found["driveline/final_belt"]
    assert 0 < belt.high < belt.found


def test_what_holds_is_not_named(document):
    assert slipping(document) == {}


def test_a_missing_group_of_which_nothing_alone_is_needed_is_told_in_a_whole_sentence(document):
    del document["tyres"]
    with pytest.raises(ww.ScenarioError) as wrong:
        ww.loads(json.dumps(document))
    said = str(wrong.value)
    assert "tyres: is missing" in said
    assert "it needs \n" not in said
    assert not any(line.rstrip().endswith("it needs") for line in said.splitlines())
