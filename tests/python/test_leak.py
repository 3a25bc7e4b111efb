"""A hole in the charge path, and the upgrades that make it and close it."""

import json

import pytest

import windwall as ww

HOLE = {"id": "hole", "kind": "leak", "area": "60 mm2"}


def test_a_hole_comes_and_goes_with_upgrades(document):
    document["upgrades"] = [
        {
            "id": "hose_off",
            "title": "Hose off",
            "cost": "0 EUR",
            "insert": [{"after": ["roots"], "part": HOLE}],
        }
    ]
    sound = ww.loads(json.dumps(document))
    holed = sound.install("hose_off")
    document["charge_path"].insert(3, HOLE)
    document["upgrades"] = [
        {"id": "clip", "title": "A new clip", "cost": "2 EUR", "remove": ["hole"]}
    ]
    broken = ww.loads(json.dumps(document))
    assert broken.top_speed().speed == holed.top_speed().speed < sound.top_speed().speed
    assert broken.install("clip").top_speed().speed == sound.top_speed().speed


def test_it_says_how_much_leaves(document):
    document["charge_path"].insert(3, HOLE)
    answer = ww.loads(json.dumps(document)).top_speed()
    (told,) = [one for one in answer.cautions if one.about == "leak"]
    lost = answer.point.charge_path.hole.lost
    assert told.found == pytest.approx(lost)
    assert f"{1e3 * lost:.2g} g/s of the charge" in told.sentence
