"""The example with a menu that is ranked in no time."""

import json
from pathlib import Path

import windwall as ww

CAR = "scenarios/airfield_cyclecar.json"
KEPT = ("small_pulley", "fairing", "gearing", "diet")


def few_upgrades(**titles):
    """Four of its upgrades, none of which excludes another; with other titles, by their ids."""
    document = json.loads(Path(CAR).read_text(encoding="utf-8"))
    document["upgrades"] = [
        {key: one[key] for key in one if key != "excludes"}
        | ({"title": titles[one["id"]]} if one["id"] in titles else {})
        for one in document["upgrades"]
        if one["id"] in KEPT
    ]
    return ww.loads(json.dumps(document))
