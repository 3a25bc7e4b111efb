"""The pump of a spray: what its file may say, and what an upgrade may do to what it reads."""

import json

import pytest

import windwall as ww

SPRAY = {
    "id": "mist",
    "kind": "evaporative_injection",
    "blend_by": "volume",
    "methanol": "0 %",
    "rated_flow": "100 cm3/min",
    "pump_pressure": "8 bar gauge",
    "starts_at": "1 kPa gauge",
}


def sprayed(document, **more):
    document["charge_path"].insert(2, SPRAY | more)
    return ww.loads(json.dumps(document))


def complaint(document, **more):
    with pytest.raises(ww.ScenarioError) as refused:
        sprayed(document, **more)
    return str(refused.value)


def test_it_starts_at_a_boost_in_the_manifold_from_ahead_of_the_blower(document):
    car = sprayed(document)
    wide, lifted = car.operating_point("4500 rpm"), car.operating_point("4500 rpm", opening=0.2)
    assert wide.manifold.boost > 1e3 > 0 > lifted.manifold.boost
    assert wide.charge_path.mist.liquid_flow > 0 == lifted.charge_path.mist.liquid_flow


def test_the_wrong_zero_point_teaches(document):
    said = complaint(document, starts_at="110 kPa absolute")
    assert "a pressure above the local air is expected" in said
    assert 'write for example "8.68 kPa gauge"' in said


def test_one_switch_counts_from_one_place(document):
    assert "not both" in complaint(document, starts_at_absolute="110 kPa absolute")


def test_it_reads_behind_a_part_that_is_there(document):
    assert 'did you mean "roots"?' in complaint(document, starts_where="rots")


def test_an_upgrade_may_not_take_away_what_it_reads(document):
    document["upgrades"] = [
        {"id": "bare", "title": "No airbox", "cost": "0 EUR", "remove": ["airbox"]}
    ]
    assert '"mist/starts_where" names "airbox"' in complaint(document, starts_where="airbox")


def test_a_file_of_the_first_format_keeps_its_switch_at_the_nozzle(document):
    document["format"] = "windwall-scenario/1"
    car = sprayed(document, starts_at="-5 kPa")
    assert car.get("charge_path/mist/starts_where") == "mist"
    assert car.document()["format"] == "windwall-scenario/2"


def test_a_pump_that_never_runs_is_told(document):
    answer = sprayed(document, starts_at="200 kPa gauge").top_speed()
    (idle,) = [one for one in answer.cautions if one.about == "idle_pump"]
    assert "The pump never runs" in idle.sentence
    assert idle.address == "charge_path/mist/liquid_flow"


def test_a_pump_that_drowns_the_launch_is_named(document):
    flooded = SPRAY | {"rated_flow": "5000 cm3/min"}
    del flooded["starts_at"]
    document["charge_path"].insert(2, flooded)
    answer = ww.loads(json.dumps(document)).top_speed()
    assert not answer.answered
    assert "The pump puts the fire out" in answer.sentence
    assert "starts_at" in str(answer)
