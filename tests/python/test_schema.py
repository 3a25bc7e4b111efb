"""The schema says the same as the reader wherever a schema can."""

import copy
import json
import re
from pathlib import Path

import pytest

import windwall as ww
from windwall.scenario.schema import whole_schema

SKIPPED = {"$ref", "$defs"}
ROOT = Path(__file__).parents[2]
SCENARIOS = sorted((ROOT / "scenarios").glob("*.json"))
DELETE = object()

# Where, and what to put there: each is wrong for the reader and for the schema.
BROKEN = {
    "no unit": ("body/mass", "340"),
    "bare number": ("body/mass", 340),
    "wrong dimension": ("engine/bore", "80 psi"),
    "ambiguous pressure": ("day/pressure", "14.3 psi"),
    "no such unit": ("body/mass", "340 kgs"),
    "two signs of spread": ("body/mass", "340 ± 5 ± 2 kg"),
    "a formula": ("body/mass", "300+40 kg"),
    "null": ("body/mass", None),
    "a list": ("body/mass", ["340 kg"]),
    "a flag": ("engine/cylinders", True),
    "misspelt key": ("body/mas", "340 kg"),
    "missing key": ("body/drag_area", DELETE),
    "missing group": ("body", DELETE),
    "missing engine": ("engine", DELETE),
    "missing format": ("format", DELETE),
    "unknown format": ("format", "windwall-scenario/999"),
    "unknown kind": ("charge_path/2/kind", "rotary_blower"),
    "no kind": ("charge_path/2/kind", DELETE),
    "no id": ("charge_path/2/id", DELETE),
    "bad id": ("charge_path/2/id", "The Blower"),
    "unknown word": ("units", "imperial"),
    "empty list": ("driveline/0/ratios", []),
    "a word in a list": ("driveline/0/ratios", [3.2, "two"]),
    "text too long": ("body/mass", "340 kg" + " " * 80),
    "an upgrade without id": ("upgrades/0/id", DELETE),
    "an id beside the one that is taken over": (
        "upgrades/0/replace",
        {"blower": {"id": "other", "kind": "plenum", "volume": "2 L"}},
    ),
    "an unknown verb": ("upgrades/1/sett", {"body/mass": "3 kg"}),
    "cost without currency": ("upgrades/1/cost", "45"),
}


@pytest.fixture(scope="module")
def validator(oracle):
    jsonschema = oracle("jsonschema")
    schema = ww.schema()
    jsonschema.Draft202012Validator.check_schema(schema)
    return jsonschema.Draft202012Validator(schema)


def test_it_names_its_draft():
    assert ww.schema()["$schema"] == "https://json-schema.org/draft/2020-12/schema"


@pytest.mark.parametrize("path", SCENARIOS, ids=lambda path: path.stem)
def test_the_scenarios_are_valid(validator, path):
    assert [error.message for error in validator.iter_errors(json.loads(path.read_text()))] == []
    ww.load(path)


def test_what_is_saved_is_valid(validator, car):
    for scenario in (car, car.install("intercooler"), car.set({"body/mass": "300 ± 4 kg"})):
        assert validator.is_valid(scenario.document())


def test_a_file_of_mistakes_is_not(validator):
    text = (ROOT / "scenarios/invalid/ten_mistakes.json").read_text()
    assert not validator.is_valid(json.loads(text))


def put(document, place, value):
    *way, last = place.split("/")
    for key in way:
        document = document[int(key) if isinstance(document, list) else key]
    if value is DELETE:
        del document[last]
    else:
        document[last] = value


@pytest.mark.parametrize("name", BROKEN)
def test_both_refuse_what_is_broken(validator, document, name):
    broken = copy.deepcopy(document)
    put(broken, *BROKEN[name])
    with pytest.raises(ww.ScenarioError):
        ww.loads(json.dumps(broken))
    assert not validator.is_valid(broken)


@pytest.mark.parametrize(
    "place, value",
    [
        ("body/mass", "750 lb"),
        ("body/mass", "340 +/- 5 kg"),
        ("body/mass", "340 kg ± 2 %"),
        ("day/pressure", "14.3 psia"),
        ("engine/compression_ratio", "8.0 ± 0.2"),
        ("engine/compression_ratio", 8),
        ("driveline/0/ratios", [3]),
        ("upgrades/0/cost", "300 ± 40 EUR"),
        ("upgrades/0/hours", "90 min"),
        ("units", "us"),
    ],
)
def test_both_accept_what_is_right(validator, document, place, value):
    put(document, place, value)
    ww.loads(json.dumps(document))
    assert [error.message for error in validator.iter_errors(document)] == []


def test_what_stands_twice_is_said_once(windwall):
    """Each reference stands for what is written out where nothing is shared."""
    short, whole = ww.schema(), whole_schema()
    assert resolved(short, short["$defs"]) == without_origins(resolved(whole, whole["$defs"]))
    assert len(windwall("schema").stdout.encode()) < 120_000


def without_origins(node, key=""):
    """Without where a usual value comes from, an example beside it, a kind's own sentence."""
    if isinstance(node, list):
        return [without_origins(one) for one in node]
    if not isinstance(node, dict):
        return node
    dropped = {"description"} if key == "kind" and "const" in node else set()
    dropped |= {"examples"} if "default" in node else set()
    left = {name: without_origins(one, name) for name, one in node.items() if name not in dropped}
    if isinstance(left.get("description"), str):
        left["description"] = re.sub(r"(Usually [^()]*) \(.*\)\.", r"\1.", left["description"])
    return left


def resolved(node, definitions):
    """A schema with its references written out; what stands beside one goes over it."""
    if isinstance(node, list):
        return [resolved(one, definitions) for one in node]
    if not isinstance(node, dict):
        return node
    beside = {key: resolved(one, definitions) for key, one in node.items() if key not in SKIPPED}
    if isinstance(beside.get("required"), list):
        beside["required"] = sorted(beside["required"])
    if "$ref" not in node:
        return beside
    there = resolved(definitions[node["$ref"].removeprefix("#/$defs/")], definitions)
    if "required" in beside:
        beside["required"] = sorted({*there.get("required", ()), *beside["required"]})
    if "properties" in beside:
        both = there["properties"] | beside["properties"]
        beside["properties"] = {key: one for key, one in both.items() if one != {"not": {}}}
    return there | beside


def test_a_part_that_takes_a_place_needs_no_id(validator, document):
    fitted = {"kind": "plenum", "volume": "2 L"}
    document["upgrades"][0]["replace"] = {"blower": fitted}
    assert validator.is_valid(document)
    document["charge_path"].append(fitted)
    assert not validator.is_valid(document)


def test_numbers_are_as_round_as_people_state_them():
    assert not re.search(r"\d\.\d{7,}", json.dumps(whole_schema()))
    assert '"60 psi"' in json.dumps(ww.schema())
