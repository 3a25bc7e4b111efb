"""The pump of a spray: what its file may say, and what an upgrade may do to what it reads."""

import copy
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


def test_it_waits_for_all_that_its_trigger_names(document):
    car = sprayed(document, trigger={"pedal_above": "60 %", "engine_speed_above": "3000 rpm"})
    flows = [
        car.operating_point(f"{speed} rpm", opening=opening).charge_path.mist.liquid_flow
        for speed, opening in ((4500, 1), (4500, 0.5), (2500, 1))
    ]
    assert flows[0] > 0 == flows[1] == flows[2]
    assert car.get("charge_path/mist/trigger/pedal_above") == pytest.approx(0.6)
    assert ww.loads(json.dumps(car.document())).document() == car.document()


def test_a_trigger_that_nothing_meets_is_refused(document):
    said = complaint(document, trigger={"pedal_above": "60 %", "pedal_below": "50 %"})
    assert "charge_path/mist/trigger/pedal_below" in said
    assert "nothing is above the one and below the other" in said


def test_a_trigger_that_is_never_met_is_told(document):
    answer = sprayed(document, trigger={"engine_speed_above": "15000 rpm"}).top_speed()
    (untriggered,) = [one for one in answer.cautions if one.about == "untriggered_pump"]
    assert "what its `trigger` asks for" in untriggered.sentence


def test_pulses_that_miss_the_strokes_are_told(document):
    def held(**more):
        return sprayed(copy.deepcopy(document), **more).operating_point("4500 rpm")

    assert held().charge_path.mist.cycle_spread == 0
    fine, coarse = held(duty="50 %"), held(duty="50 %", valve_period="1000 ms")
    spread = coarse.charge_path.mist.cycle_spread
    assert 0 < fine.charge_path.mist.cycle_spread < spread
    (uneven,) = [one for one in coarse.cautions if one.about == "uneven_spray"]
    assert f"{100 * spread:.2g} %" in uneven.sentence
    assert "20 %" in uneven.sentence


def test_a_fuel_cut_leans_what_its_spray_does_not_make_up_for(document):
    plain = sprayed(copy.deepcopy(document)).operating_point("4500 rpm").engine["lambda"]
    cut = sprayed(document, fuel_cut="10 %").operating_point("4500 rpm")
    assert cut.engine["lambda"] == pytest.approx(plain / 0.9, rel=1e-6)


def test_a_pump_that_drowns_the_launch_is_named(document):
    flooded = SPRAY | {"rated_flow": "5000 cm3/min"}
    del flooded["starts_at"]
    document["charge_path"].insert(2, flooded)
    answer = ww.loads(json.dumps(document)).top_speed()
    assert not answer.answered
    assert "The pump puts the fire out" in answer.sentence
    assert "starts_at" in str(answer)
