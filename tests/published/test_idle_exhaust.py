"""Exhausts of idling aircraft engines against those of the same engines climbing, as their probes
recorded 33 flights of the National General Aviation Flight Information Database (a set of 2019).

What an engine did, and what a probe reads of a gas, was put down before an exhaust was looked at
(tests/published/data/idle_exhaust.md), and a third was kept sealed until nothing was changed.
"""

import csv
import json
from functools import cache
from pathlib import Path

import numpy as np
import pytest
from scipy.optimize import brentq

import windwall as ww
from windwall import si

pytestmark = pytest.mark.published

TABLE = Path(__file__).parent / "data" / "idle_exhaust.csv"
FUEL = 3.785e-3 * 720 / 3600  # kg/s for a gallon of aviation petrol an hour


def flights():
    with TABLE.open(encoding="utf-8") as text:
        return list(csv.DictReader(line for line in text if not line.startswith("#")))


@cache
def engine(retard):
    """The flat four on a bench, its spark so many degrees after the best."""
    table = {
        "columns": {"engine_speed": "rpm", "retard": "deg"},
        "rows": [[300, retard], [9000, retard]],
    }
    document = {
        "format": "windwall-scenario/2",
        "day": {"temperature": "25 degC", "pressure": "100 kPa"},
        "body": {"mass": "300 kg", "drag_area": "0.6 m2"},
        "charge_path": [{"id": "plate", "kind": "throttle", "bore": "120 mm"}],
        "engine": {
            "kind": "cylinder",
            "cylinders": 4,
            "bore": "130.2 mm",
            "stroke": "111.1 mm",
            "compression_ratio": 8.5,
            "rev_limit": "2700 rpm",
            "lambda": 0.80,
            "design": {
                "chamber": "two_valve_hemispherical",
                "exhaust": "open",
                "cooling": "air",
            },
            "spark": {"policy": "as_given", "table": table},
        },
        "driveline": [{"id": "box", "kind": "gearbox", "ratios": [9.0, 5.0]}],
        "tyres": {"size": "145/80 R13"},
    }
    return ww.loads(json.dumps(document))


def standing(flight):
    """Throttled to the fuel that it burnt."""
    held = {"engine_speed": f"{flight['standing_rpm']} rpm", "road_speed": si(8.0)}
    fuel = float(flight["standing_gph"]) * FUEL

    def beyond(opening):
        return engine(10).operating_point(**held, opening=si(opening)).point.engine.fuel_flow - fuel

    opening = brentq(beyond, 0.004, 0.6, xtol=1e-5)
    return engine(10).operating_point(**held, opening=si(opening)).point.engine


def climbing(flight):
    held = {"engine_speed": f"{flight['climb_rpm']} rpm", "road_speed": si(38.0)}
    return engine(0).operating_point(**held).point.engine


def falls(some):
    """K from the climb to standing, ours less the probes'."""
    off = []
    for flight in some:
        ours = climbing(flight).exhaust_gas_temperature - standing(flight).exhaust_gas_temperature
        theirs = float(flight["climb_exhaust_c"]) - float(flight["standing_exhaust_c"])
        print(f"{flight['flight']}: {ours:.0f} K, probes {theirs:.0f} K")
        off.append(ours - theirs)
    return np.array(off)


def test_an_exhaust_falls_from_the_climb_to_standing():
    """At 660 to 1070 rpm and a third of the charge it falls by 130 to 300 K. Before what is lost in
    the exhaust stroke was counted ours fell 82 K less in the middle.

    A probe behind one port reads the mean over time, and the more below the gas the less flows, so
    that a fall may be short of it: by 50 K here. 45 K between flights: mixture and spark of each
    are not known.
    """
    for sealed in ("no", "yes"):
        off = falls([flight for flight in flights() if flight["sealed"] == sealed])
        print(f"off by {np.median(off):.0f} K, from {off.min():.0f} to {off.max():.0f}")
        assert -50 < np.median(off) < 15
        assert off.std() < 45


def test_an_idling_exhaust_is_above_its_probe_as_a_climbing_one_is():
    """An instrument maker has 100 degF between the gas of several cylinders and a probe behind one.
    25 K either way for the mixture.
    """
    for what, answer in (("climb", climbing), ("standing", standing)):
        above = [
            answer(flight).exhaust_gas_temperature - 273.15 - float(flight[f"{what}_exhaust_c"])
            for flight in flights()
        ]
        print(f"{what}: {np.median(above):.0f} K above the probes")
        assert np.median(above) == pytest.approx(100 / 1.8, abs=25)
