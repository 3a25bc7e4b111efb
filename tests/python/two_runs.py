"""A vehicle that is driven twice over a quarter mile."""

import copy
import json

import windwall as ww
from python.samples import DOCUMENT

RUNS = {
    "id": "two_runs",
    "title": "Twice over the quarter mile",
    "legs": [
        {"kind": "idle", "time": "30 s"},
        {"kind": "full_throttle", "for_distance": "450 m"},
        {"kind": "stop", "time": "20 s", "engine": "off", "hood": "open"},
        {"kind": "full_throttle", "to_speed": "90 km/h"},
        {"kind": "coast", "to_speed": "0 km/h"},
    ],
}


def scenario(*outings, **changes):
    """The usual vehicle with these outings."""
    made = copy.deepcopy(DOCUMENT) | {"outings": list(outings)} | changes
    return ww.loads(json.dumps(made))
