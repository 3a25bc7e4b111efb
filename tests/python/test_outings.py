"""Outings of a file, from Python: what there is, what is refused, and what saving keeps."""

import copy
import json

import pytest

import windwall as ww

RUN = {
    "id": "run",
    "title": "One run",
    "starts": "cold",
    "shift_speed": "5500 ± 50 rpm",
    "legs": [
        {"kind": "idle", "time": "5 min"},
        {"kind": "full_throttle", "for_distance": "400 m"},
        {"kind": "coast", "to_speed": "0 km/h"},
        {"kind": "idle", "time": "60 s"},
        {"kind": "hold_speed", "speed": "60 km/h", "for_time": "2 min"},
        {"kind": "stop", "time": "10 min", "engine": "off", "hood": "open"},
    ],
}


@pytest.fixture
def with_run(document):
    document["outings"] = [copy.deepcopy(RUN), copy.deepcopy(RUN) | {"id": "again", "title": ""}]
    return document


def test_outings_are_named(car, with_run):
    assert car.outings == {}
    outings = ww.loads(json.dumps(with_run)).outings
    assert {id: outing["title"] for id, outing in outings.items()} == {
        "run": "One run",
        "again": "",
    }


def test_outings_stay_with_upgrades_and_changes(with_run):
    car = ww.loads(json.dumps(with_run))
    for other in (car.install("fairing"), car.set({"body/mass": "300 kg"})):
        assert other.document()["outings"] == with_run["outings"]


def test_saving_keeps_them_as_typed(with_run):
    car = ww.loads(json.dumps(with_run))
    assert car.document()["outings"] == with_run["outings"]
    assert ww.loads(car.text()).text() == car.text()


def test_they_are_part_of_the_digest(car, with_run):
    driven = ww.loads(json.dumps(with_run))
    assert driven.digest != car.digest
    with_run["outings"][0]["title"] = "Another"
    with_run["outings"][0]["legs"][0]["time"] = "300 s"
    assert ww.loads(json.dumps(with_run)).digest == driven.digest
    with_run["outings"][0]["legs"][0]["time"] = "301 s"
    assert ww.loads(json.dumps(with_run)).digest != driven.digest


@pytest.mark.parametrize(
    "place, value, said",
    [
        (("starts",), "warm", 'outings/run/starts: "warm" is not known here'),
        (("launch_sped",), "3000 rpm", 'outings/run/launch_sped: .* mean "launch_speed"'),
        (("id",), "roots", 'outings/1/id: "roots" is the id of a part already'),
        (("id",), "fairing", 'outings/1/id: "fairing" is the id of an upgrade'),
        (("legs", 0, "kind"), "idel", 'outings/run/legs/1/kind: .* did you mean "idle"'),
        (("legs", 1, "for_time"), "5 s", "outings/run/legs/2/for_time: the leg ends with for_dist"),
        (("legs", 2, "to_speed"), "30 km/h", 'outings/run/legs/4/kind: "idle" begins at a stand'),
        (("legs", 4, "speed"), "60", "outings/run/legs/5/speed: 60 what"),
        (("launch_gear",), 9, "outings/run/launch_gear: 9 is outside 1 to 4, the gears of this"),
        (("legs", 5, "hood"), "up", "outings/run/legs/6/hood"),
    ],
)
def test_a_mistake_is_told_where_it_stands(with_run, place, value, said):
    del with_run["outings"][1]
    inside = with_run["outings"][0]
    for key in place[:-1]:
        inside = inside[key]
    inside[place[-1]] = value
    with pytest.raises(ww.ScenarioError, match=said) as wrong:
        ww.loads(json.dumps(with_run, indent=1))
    assert len(wrong.value.problems) == 1
    assert wrong.value.problems[0].line > 1


def test_the_schema_knows_them(with_run, oracle):
    validator = oracle("jsonschema").Draft202012Validator(ww.schema())
    assert [error.message for error in validator.iter_errors(with_run)] == []
    for change in ({"legs": []}, {"legs": [{"kind": "fly"}]}, {"starts": "warm"}, {"leg": []}):
        broken = with_run | {"outings": [RUN | change]}
        assert not validator.is_valid(broken), change
    assert not validator.is_valid(with_run | {"outings": [{"id": "run"}]})
