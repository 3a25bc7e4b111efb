"""What is told of a drive that was made up, and of one that broke off."""

import copy
import json
import re

import numpy as np

import windwall as ww
from python.samples import DOCUMENT
from python.two_runs import RUNS, scenario
from windwall.results.drive import Drive, Outing
from windwall.results.drive_summary import Mark


def fake(**changes):
    """A drive made up of two moments, one of them without an engine."""
    nan = float("nan")
    columns = {
        "time": [0.0, 150.0],
        "distance": [0.0, 30.0],
        "fuel_used": [0.0, 0.002],
        "liquid_used": [0.0, 0.5],
        "knock/margin": [nan, nan],
        "road/speed": [0.0, 10.0],
        "engine/head/temperature": [300.0, 310.0],
    }
    energy = dict.fromkeys(("driveline", "clutch", "tyres", "air", "rolling", "grade"), 0.0)
    energy |= {"fuel": 9e4, "crank": 3e4, "brakes": 0.0, "kinetic": 3e4, "changes": 0.0}
    numbers = {
        "ended": "no_answer",
        "status": "not_converged",
        "worst": "throttle",
        "addresses": list(columns),
        "columns": [np.array(column) for column in columns.values()],
        "phase": ["standing", "driving"],
        "events": [
            {"what": "leg_begins", "time": 0.0, "distance": 0.0, "road_speed": 0.0, "leg": 1}
            | {"gear": 1, "engine_speed": 100.0, "about": ""}
        ],
        "marks": [],
        "energy": energy,
    }
    info = scenario(RUNS).drive(progress=False).scenario_info
    return Drive(numbers | changes, info, Outing("made_up", "", ("launch",), (), "0" * 64))


def test_slip_that_no_crank_speed_agrees_with_is_no_fault_of_the_engine():
    said = fake(worst="slip").ended.sentence
    assert "at no speed of the crank do belts and tyres slip by what its torque asks for" in said
    assert "engine" not in said


def test_what_broke_off_says_where_and_why():
    drive = fake()
    assert not drive.answered
    assert drive.ended.sentence == (
        "It breaks off in leg 1, launch, at 36.0 km/h and 2 min 30 s after setting out: no state "
        "of the engine was found (not_converged, throttle). What stands here was driven until then."
    )
    text = drive.text()
    assert "STOPPED EARLY (no_answer)" in text
    assert "Liquid sprayed: 0.500 kg" in " ".join(text.split())
    assert "Knock" not in text  # nothing is known of it
    assert drive.summary.nearest_knock is None
    json.dumps(drive.to_dict(), allow_nan=True)


def test_runs_beyond_four_stand_in_further_tables():
    marks = [Mark(run, 50.0, None, 5.0 + run, 50.0, 12.0)._asdict() for run in (1, 2, 3, 4, 5)]
    moving = [0.0, 10.0] * 5
    drive = fake(
        ended="legs_done",
        marks=marks,
        addresses=["time", "road/speed"],
        columns=[np.arange(10.0), np.array(moving)],
        phase=["standing", "driving"] * 5,
    )
    text = drive.text()
    assert text.count("Runs, each counted") == 2
    assert re.search(r"over 50 m +10\.00 s", text)
    assert max(map(len, text.splitlines())) <= 100


def test_a_drive_that_broke_off_nowhere_has_no_status_of_a_failure():
    assert fake(ended="legs_done").ended["status"] == "solved"
    assert fake().ended["status"] == "not_converged"


def test_what_is_so_from_the_first_moment_is_not_said_to_come_after_no_time():
    document = copy.deepcopy(DOCUMENT) | {"outings": [copy.deepcopy(RUNS)]}
    document["limits"] = {"engine/head_temperature": {"max": "60 degC", "why": "a try"}}
    text = " ".join(ww.loads(json.dumps(document)).drive(progress=False).text().split())
    assert "max 60 degC: first passed at the start, standing; at worst" in text
    assert re.search(r"behind airbox +[\d.]+ degC at the start", text)
    assert "after 0.0 s" not in text


def test_what_was_burnt_is_no_share_of_what_the_crank_gave():
    text = fake(ended="legs_done").text()
    assert re.search(r"burnt in the fuel +90.00\n", text)
    assert re.search(r"given by the crank +30.00 +100.0\n", text)
    assert "Fuel from the tank: 0.00200 kg, of whose energy the crank gave 33 %." in text


def test_of_next_to_nothing_there_are_no_shares():
    """Down a hill the slope gives what the air takes, and the crank is dragged along."""
    whole = fake(ended="legs_done").summary.energy
    for crank in (-91.0, 0.0, 4e4):
        down = whole | {"crank": crank, "grade": -4.4e8, "air": 4e8}
        text = fake(ended="legs_done", energy=down).text()
        assert "%" not in text.partition("Energy of the whole")[2].partition("Care")[0]
        assert re.search(r"drag of the air +400000\n", text)
    uphill = whole | {"grade": 5e4, "kinetic": -2e4}
    assert re.search(r"slope +50.00 +166.7\n", fake(ended="legs_done", energy=uphill).text())


def test_an_event_without_end_is_cut_short():
    one = fake()._numbers["events"][0]
    text = fake(events=[one] * 70).text()
    assert "And 10 more; `events` has them all." in text


def test_what_takes_hold_is_called_by_its_kind():
    at_once = {"time": 0.0, "distance": 0.0, "road_speed": 0.0, "leg": 1, "engine_speed": 200.0}
    told = at_once | {"what": "clutch_grips", "gear": 3}
    for kind, said in (
        ("clutch", "the clutch grips at 1910 rpm, in gear 3"),
        ("centrifugal_clutch", "the centrifugal clutch grips at 1910 rpm, in gear 3"),
        ("belt_cvt", "the belt grips at 1910 rpm, in gear 3"),
        ("", "crank and wheels turn together at 1910 rpm, in gear 3"),
    ):
        assert fake(events=[told | {"about": kind}]).happened[0].sentence == said


def test_a_crank_that_the_road_turns_beyond_its_limit_passes_one():
    document = copy.deepcopy(DOCUMENT)
    document["engine"]["rev_limit"] = "4000 rpm"
    columns = {"distance": "m", "grade": "%", "headwind": "m/s"}
    down = {"columns": columns, "rows": [[0, -20, -20], [2000, -20, -20]]}
    legs = [{"kind": "full_throttle", "for_distance": "2 km"}]
    document["outings"] = [{"id": "down", "road": down, "legs": legs}]
    drive = ww.loads(json.dumps(document)).drive(progress=False)
    passed = next(one for one in drive.passed if one.address == "engine/speed")
    assert passed.why == "the rev limit of the engine"
    assert passed.worst > passed.max
    text = " ".join(drive.text().split())
    assert "engine/speed, max 4000 rpm: first passed after" in text
    assert "the released pedal does not hold it back" in text
