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

# Blown to where its spark is late; a throttle behind a faster blower ends its answers in a gear.
LATE = {
    "format": "windwall-scenario/2",
    "title": "Blown cyclecar with a late spark",
    "units": "metric",
    "goal": {"speed": "140 km/h", "run_up": "1600 m"},
    "day": {
        "temperature": "33 ± 1 degC",
        "pressure": "98.4 ± 0.3 kPa",
        "relative_humidity": "35 ± 5 %",
        "headwind": "0 ± 1 m/s",
    },
    "body": {
        "mass": "348 ± 5 kg",
        "drag_area": "0.70 ± 0.05 m2",
        "rolling_resistance": "0.018 ± 0.002",
    },
    "charge_path": [
        {"id": "filter", "kind": "filter", "drop": "0.6 kPa", "at_flow": "25 g/s"},
        {"id": "throttle", "kind": "throttle", "bore": "30 mm", "shaft": "8 mm"},
        {
            "id": "blower",
            "kind": "positive_blower",
            "displacement": "230 cm3",
            "drive_ratio": 1.35,
            "built_in_ratio": 1.0,
            "leak_area": "9 ± 2 mm2",
            "rated_speed": "12000 rpm",
            "rated_pressure_ratio": 1.8,
        },
        {"id": "plenum", "kind": "plenum", "volume": "3.5 L"},
    ],
    "engine": {
        "kind": "cylinder",
        "cylinders": 2,
        "bore": "76 mm",
        "stroke": "68.8 mm",
        "compression_ratio": "7.6 ± 0.1",
        "rev_limit": "5000 rpm",
        "head_temperature": "195 ± 10 degC",
        "valves": {"intake_ratio": 0.43, "exhaust_ratio": 0.37},
        "breathing": {"peak_efficiency": "0.72 ± 0.04", "best_speed": "2900 ± 200 rpm"},
        "exhaust": {"back_pressure": "12 ± 3 kPa"},
        "knock_anchor": {
            "octane_number": "96 ± 5",
            "compression_ratio": 7.6,
            "engine_speed": "3000 rpm",
            "manifold_pressure": "99 kPa",
            "charge_temperature": "40 degC",
            "head_temperature": "185 degC",
            "lambda": 0.9,
        },
        "cooling": {
            "known_air_temperature": "33 degC",
            "known_engine_speed": "4600 rpm",
            "known_manifold_pressure": "128 kPa",
            "known_charge_temperature": "72 degC",
        },
    },
    "fuel": {"research_octane": 95, "motor_octane": 85, "ethanol": "10 %"},
    "driveline": [
        {"id": "primary", "kind": "chain", "teeth_front": 26, "teeth_rear": 52},
        {"id": "clutch", "kind": "clutch", "capacity": "140 N m"},
        {"id": "gearbox", "kind": "gearbox", "ratios": [3.2, 2.0, 1.45, 1.1]},
        {"id": "final_chain", "kind": "chain", "teeth_front": 18, "teeth_rear": 30},
    ],
    "tyres": {"size": "135/80 R13 70T", "weight_on_driven_axle": "55 ± 2 %"},
    "limits": {
        "charge_path/blower/outlet/temperature": {
            "max": "150 degC",
            "why": "the coating of the rotors peels",
        },
        "engine/piston_speed": {"max": "13 m/s", "why": "cast pistons"},
    },
    "observed": [
        {
            "what": "top speed",
            "speed": "122 ± 2 km/h",
            "gear": 4,
            "boost": "29 ± 4 kPa",
            "knock": "not heard",
            "retard": "13 ± 2 deg",
        }
    ],
    "upgrades": [
        {
            "id": "small_pulley",
            "title": "Smaller blower pulley",
            "cost": "45 EUR",
            "set": {"charge_path/blower/drive_ratio": 1.55},
        },
        {
            "id": "fairing",
            "title": "Cycle wings faired in and a tail",
            "cost": "130 ± 20 EUR",
            "scale": {"body/drag_area": "0.88 ± 0.03"},
            "add": {"body/mass": "6 ± 1 kg"},
        },
        {
            "id": "race_fuel",
            "title": "Fuel of 102 octane for the day",
            "cost": "60 EUR",
            "set": {"fuel/research_octane": 102, "fuel/motor_octane": 90, "fuel/ethanol": "0 %"},
        },
        {
            "id": "hard_tyres",
            "title": "Tyres at 3.4 bar",
            "cost": "0 EUR",
            "scale": {"body/rolling_resistance": "0.88 ± 0.04"},
        },
        {
            "id": "spray",
            "title": "Water and methanol sprayed ahead of the blower",
            "cost": "190 ± 30 EUR",
            "insert": [
                {
                    "before": ["blower"],
                    "part": {
                        "id": "spray",
                        "kind": "evaporative_injection",
                        "blend_by": "volume",
                        "methanol": "20 %",
                        "rated_flow": "100 cm3/min",
                        "rated_pressure": "7 bar",
                        "pump_pressure": "8 bar",
                        "starts_at": "10 kPa gauge",
                    },
                }
            ],
            "add": {"body/mass": "6 ± 1 kg"},
        },
        {
            "id": "bypass",
            "title": "Bypass valve round the blower",
            "cost": "70 EUR",
            "insert": [
                {
                    "after": ["cooler", "blower"],
                    "part": {"id": "bypass", "kind": "bypass", "area": "300 mm2"},
                }
            ],
            "add": {"body/mass": "1 kg"},
        },
        {
            "id": "rear_throttle",
            "title": "Throttle moved behind the blower",
            "cost": "40 EUR",
            "requires": ["bypass"],
            "remove": ["throttle"],
            "insert": [
                {
                    "before": ["plenum"],
                    "part": {
                        "id": "rear_throttle",
                        "kind": "throttle",
                        "bore": "30 mm",
                        "shaft": "8 mm",
                    },
                }
            ],
        },
    ],
}


def top(**facts):
    """Something observed at top speed."""
    return {"what": "top speed", **facts}
