"""The file that says what the columns of a log are: read, refused with its place, written again."""

import json
from pathlib import Path

import pytest

import windwall as ww
from windwall.errors import ScenarioError
from windwall.logs.mapping import Mapped, Mapping, read_mapping
from windwall.logs.places import Places

SCENARIOS = Path(__file__).parents[2] / "scenarios"
RPM = {"address": "engine/speed", "unit": "rpm"}


@pytest.fixture(scope="module")
def cyclecar():
    return ww.load(SCENARIOS / "airfield_cyclecar.json")


def mapping(**columns):
    return {"format": "windwall-log/1", "columns": columns or {"RPM": RPM}}


def complaints(document, car):
    text = document if isinstance(document, str) else json.dumps(document, indent=1)
    with pytest.raises(ScenarioError) as refused:
        read_mapping(text, car)
    return refused.value.problems


@pytest.mark.parametrize("path", sorted((SCENARIOS / "logs").glob("*.mapping.json")), ids=str)
def test_what_ships_is_written_as_it_is_read(path, cyclecar):
    text = path.read_text("utf-8")
    assert read_mapping(text, cyclecar).text() == text


def test_everything_comes_back(cyclecar):
    made = Mapping(
        (Mapped("RPM", "engine/speed", "rpm", "0.1 s", "20 rpm", "called so"),),
        {"column": "t", "unit": "ms"},
        {"delimiter": ";", "decimal": ","},
        {"temperature": "31 degC", "pressure": "98.2 kPa"},
        "made by hand",
    )
    assert read_mapping(made.text(), cyclecar) == made


@pytest.mark.parametrize(
    "columns, address, said",
    [
        ({"B": {"address": "manifold/bost", "unit": "kPa"}}, "columns/B/address",
         'did you mean "manifold/boost"?'),
        ({"M": {"address": "body/mass", "unit": "kg"}}, "columns/M/address", "is an input"),
        ({"X": {"address": "rpm", "unit": "rpm"}}, "columns/X/address", "there is no result"),
        ({"R": {"address": "engine/speed", "unit": "km/h"}}, "columns/R/unit", "km/h"),
        ({"R": {"address": "engine/speed"}}, "columns/R", '"unit" is missing: in what?'),
        ({"R": {"unit": "rpm"}}, "columns/R", '"address" is missing'),
        ({"P": {"address": "manifold/pressure", "unit": "psi"}}, "columns/P/unit", "psia"),
        ({"R": RPM | {"lag": "three"}}, "columns/R/lag", "three"),
        ({"R": RPM | {"sigma": "0 rpm"}}, "columns/R/sigma", "above zero"),
        ({"R": RPM | {"adress": "x"}}, "columns/R/adress", 'did you mean "address"?'),
        ({"R": RPM, "S": RPM}, "columns/S/address", '"R" is mapped onto engine/speed already'),
        ({"R": 3}, "columns/R", "an object is expected"),
        ({"R": RPM | {"lag": 3}}, "columns/R/lag", "a text is expected"),
    ],
)  # fmt: skip
def test_a_wrong_column_is_refused_with_its_place(columns, address, said, cyclecar):
    (problem, *_) = complaints(mapping(**columns), cyclecar)
    assert problem.address == address
    assert said in problem.message
    assert problem.line > 2
    assert problem.column > 1


def test_all_that_is_wrong_is_said_at_once_and_in_order(cyclecar):
    document = mapping(A={"address": "manifold/bost", "unit": "kPa"}, B=RPM | {"lag": "x"})
    document |= {"format": "other", "clock": {"unit": "kg"}, "day": {"temperature": "warm"},
                 "reading": {"decimal": "!"}, "colour": "red"}  # fmt: skip
    problems = complaints(document, cyclecar)
    assert {one.address for one in problems} == {
        "format", "clock/unit", "day/temperature", "reading/decimal", "colour",
        "columns/A/address", "columns/B/lag",
    }  # fmt: skip
    assert [one.line for one in problems] == sorted(one.line for one in problems)


def test_what_is_no_json_is_said_with_its_place(cyclecar):
    (problem,) = complaints('{"format": "windwall-log/1",\n "columns": {', cyclecar)
    assert problem.message.startswith("this is not JSON")
    assert problem.line == 2


def test_a_key_that_stands_twice_is_refused(cyclecar):
    text = json.dumps(mapping()).replace('"unit": "rpm"', '"unit": "rpm", "unit": "rpm"')
    (problem,) = complaints(text, cyclecar)
    assert problem.message == "stands twice in one object"


def test_places_are_those_of_the_text():
    text = '{\n  "a": [1, {"b": "x"}],\n  "é": null\n}'
    places = Places(text)
    assert places.of("a") == (2, 8)
    assert places.of("a", "2", "b") == (2, 18)
    assert places.of("é") == (3, 8)
    assert places.of("a", "2", "missing") == (2, 12)
