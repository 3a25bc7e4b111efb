"""A small vehicle that the tests change as they like, and the command as people start it."""

import copy
import json
import os
import subprocess
import sys

import pytest

import windwall as ww

DOCUMENT = {
    "format": "windwall-scenario/1",
    "title": "Garden roadster, blown twin",
    "goal": {"speed": "150 km/h", "run_up": "1500 m"},
    "day": {"temperature": "28 degC", "pressure": "99 kPa", "relative_humidity": "40 %"},
    "body": {"mass": "340 ± 5 kg", "drag_area": "0.55 ± 0.05 m2"},
    "charge_path": [
        {"id": "airbox", "kind": "filter", "drop": "0.6 kPa", "at_flow": "25 g/s"},
        {"id": "butterfly", "kind": "throttle", "bore": "36 mm"},
        {
            "id": "roots",
            "kind": "positive_blower",
            "displacement": "230 cm3",
            "drive_ratio": 1.35,
            "leak_area": "9 ± 2 mm2",
        },
        {"id": "log", "kind": "plenum", "volume": "3.5 L"},
    ],
    "engine": {
        "kind": "cylinder",
        "cylinders": 2,
        "bore": "80 mm",
        "stroke": "70 mm",
        "compression_ratio": 8.0,
        "rev_limit": "6000 rpm",
    },
    "fuel": {},
    "driveline": [
        {"id": "box", "kind": "gearbox", "ratios": [3.2, 2.0, 1.45, 1.1]},
        {"id": "sprockets", "kind": "chain", "teeth_front": 15, "teeth_rear": 42},
    ],
    "tyres": {"size": "155/80 R13 79T"},
    "observed": [{"what": "top speed", "speed": "122 ± 2 km/h", "gear": 4, "boost": "38 ± 4 kPa"}],
    "upgrades": [
        {
            "id": "intercooler",
            "title": "Air-to-air charge cooler",
            "cost": "260 EUR",
            "hours": 12,
            "insert": [
                {
                    "after": ["roots"],
                    "part": {
                        "id": "core",
                        "kind": "charge_cooler",
                        "conductance": "90 W/K",
                        "at_charge_flow": "40 g/s",
                        "at_cooling_flow": "300 g/s",
                        "face_area": "400 cm2",
                    },
                }
            ],
            "add": {"body/mass": "4 kg"},
        },
        {
            "id": "small_pulley",
            "title": "Smaller blower pulley",
            "cost": "45 EUR",
            "hours": 2,
            "set": {"charge_path/roots/drive_ratio": 1.6},
        },
        {
            "id": "fairing",
            "title": "Nose fairing",
            "cost": "120 EUR",
            "hours": 20,
            "scale": {"body/drag_area": 0.9},
        },
    ],
}


@pytest.fixture
def document():
    """The file as dicts and lists, to be changed."""
    return copy.deepcopy(DOCUMENT)


@pytest.fixture(scope="session")
def car():
    return ww.loads(json.dumps(DOCUMENT))


@pytest.fixture(scope="session")
def best(car):
    return car.top_speed()


@pytest.fixture(scope="session")
def ranking(car):
    return ww.rank(car, progress=False)


@pytest.fixture(scope="session")
def stuck():
    """A vehicle that no gear moves: the road is too steep."""
    return ww.loads(json.dumps(DOCUMENT)).set({"goal/grade": "20 %", "body/mass": "2000 kg"})


@pytest.fixture
def file(tmp_path, document):
    path = tmp_path / "car.json"
    path.write_text(json.dumps(document, ensure_ascii=False, indent=1), encoding="utf-8")
    return path


@pytest.fixture
def windwall():
    """Runs the command in a process of its own."""

    def run(*arguments, **options):
        return subprocess.run(
            [sys.executable, "-m", "windwall", *map(str, arguments)],
            capture_output=True,
            text=True,
            encoding="utf-8",
            timeout=100,
            env=os.environ | {"PYTHONIOENCODING": "utf-8"},
            check=False,
            **options,
        )

    return run
