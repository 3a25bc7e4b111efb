"""Small vehicles of the tests, as their files."""

DOCUMENT = {
    "format": "windwall-scenario/2",
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

# The engine by its measured torque.
CURVE = {
    "format": "windwall-scenario/2",
    "goal": {"run_up": "1500 m"},
    "day": {"temperature": "25 degC", "pressure": "99 kPa"},
    "body": {"mass": "340 kg", "drag_area": "0.6 m2"},
    "charge_path": [{"id": "plate", "kind": "throttle", "bore": "60 mm"}],
    "engine": {
        "kind": "torque_curve",
        "displacement": "625 cm3",
        "stroke": "70 mm",
        "rev_limit": "6000 rpm",
        "table": {
            "columns": {"engine_speed": "rpm", "torque": "N m"},
            "rows": [[2000, 44], [3500, 48], [5000, 44], [6000, 36]],
        },
    },
    "driveline": [{"id": "box", "kind": "gearbox", "ratios": [9.0, 5.0]}],
    "tyres": {"size": "145/80 R13"},
    "upgrades": [{"id": "diet", "cost": "50 EUR", "set": {"body/mass": "320 kg"}}],
}
