"""Engines of the published tables as files: what one writes who knows the descriptors only.

Assumptions, fixed before the first comparison:

* the five words as the table has them; a throttle body that injects counts as a carburettor, an
  empty cell as unknown;
* bore, stroke, cylinders and compression ratio as printed; rows without one of them are left out,
  and so are blown ones, which are other engines before their blower;
* gross where the table says so, net elsewhere; the day of DIN 70020 (20 degC, 101.325 kPa) where
  DIN is printed, else that of SAE J1349;
* torque and power are compared at the speeds that were printed for them;
* a car of 1993 is a square engine of its litres, liquid cooled, road, ported injection, muffled, of
  unknown chamber, at a ratio of 9, the middle of what was sold: the table prints none of these.
"""

import csv
import json
from functools import cache
from pathlib import Path

import numpy as np

import windwall as ww
from published.engine_ratings import engine_ratings

CARS_1993 = Path(__file__).parent / "data" / "cars93.csv"
RATIO_1993 = 9.0
HORSEPOWER = 0.745699872  # kW
ANY = 100  # of a figure: so badly known that it moves nothing
FIGURES = {"torque": ("torque_nm", "torque_rpm", "N m"), "power": ("power_kw", "power_rpm", "kW")}
MIXTURE = {
    "carburettor": "carburettor",
    "ported injection": "ported_injection",
    "throttle body injection": "carburettor",
}
OTHER_DAYS = {
    "DIN": {"temperature": "20 degC", "pressure": "101.325 kPaa"},
    "SAE gross": {"temperature": "60 degF", "pressure": "101.325 kPaa"},
}
ROOM = {
    "format": "windwall-scenario/1",
    "day": {"temperature": "25 degC", "pressure": "99 kPa"},
    "body": {"mass": "500 kg", "drag_area": "0.6 m2"},
    "charge_path": [{"id": "plate", "kind": "throttle", "bore": "60 mm"}],
    "driveline": [{"id": "box", "kind": "gearbox", "ratios": [9.0, 5.0]}],
    "tyres": {"size": "145/80 R13"},
}


def atmospheric():
    """The rows that can be compared."""
    needed = ("bore_mm", "stroke_mm", "compression_ratio", "power_kw")
    return [
        row
        for row in engine_ratings()
        if row["induction"] == "atmospheric" and all(row[key] for key in needed)
    ]


def printed(row):
    """What the maker printed, N m and kW, by figure."""
    return {
        key: float(row[value])
        for key, (value, speed, _) in FIGURES.items()
        if row[value] and row[speed]
    }


def design(row):
    words = {
        "chamber": row["chamber"],
        "cooling": row["cooling"],
        "duty": row["duty"],
        "mixture": MIXTURE[row["intake"]],
        "exhaust": row["exhaust"],
    }
    return {key: word for key, word in words.items() if word}


def rated(row, given):
    made = {"compression_ratio": float(row["compression_ratio"])}
    if row["rating"] == "gross":
        made["as"] = "gross"
    made |= OTHER_DAYS.get(row["standard"], {})
    for key, value in printed(row).items():
        _, speed, unit = FIGURES[key]
        spread = "" if key in given else f" ± {ANY * value:.6g}"
        made |= {key: f"{value:.6g}{spread} {unit}", f"{key}_speed": f"{row[speed]} rpm"}
    return made


def sizes(row):
    """Of the cylinders, as a file has them."""
    return {
        "kind": "cylinder",
        "cylinders": int(row["cylinders"]),
        "bore": f"{row['bore_mm']} mm",
        "stroke": f"{row['stroke_mm']} mm",
        "compression_ratio": float(row["compression_ratio"]),
    }


def document(row):
    """The file of one engine, without its figures."""
    rev_limit = f"{1.1 * float(row['power_rpm']):.6g} rpm"
    engine = sizes(row) | {"rev_limit": rev_limit, "design": design(row)}
    return ROOM | {"engine": engine}


def figures(row, given=(), made=None):
    """Each figure over what was printed: by the class alone, and with the given ones met."""
    made = made or document(row)
    made["engine"]["rated"] = rated(row, given)
    fit = ww.loads(json.dumps(made)).rated_fit
    return {
        one["key"]: (one["before"] / one["rated"], one["met"] / one["rated"])
        for one in fit["figures"]
    }


@cache
def by_class():
    """By row: each figure over what was printed, from descriptors alone."""
    return {
        row["id"]: {key: ratios[0] for key, ratios in figures(row).items()} for row in atmospheric()
    }


@cache
def by_other_figure():
    """Power with torque given, and torque with power given, over what was printed."""
    both = [row for row in atmospheric() if len(printed(row)) == 2]
    return {
        row["id"]: {
            "power": figures(row, ("torque",))["power"][1],
            "torque": figures(row, ("power",))["torque"][1],
        }
        for row in both
    }


def stated_sigma(row, key, print_error=0.025):
    """Relative sigma of a figure by the class alone: every value of the class by its own, and what
    a printed figure is known to."""
    car = ww.loads(json.dumps(document(row)))
    at_class = figures(row)[key][0]
    squares = print_error**2
    for value in car.class_values:
        if value["stated"] or value["sigma"] == 0:
            continue
        moved = car.set({value["address"]: ww.si(value["value"] + value["sigma"])})
        squares += (figures(row, made=moved.document())[key][0] / at_class - 1) ** 2
    return np.sqrt(squares)


def cars_of_1993():
    """Rows of Cars93 in the columns of the table of ratings."""
    lines = CARS_1993.read_text(encoding="utf-8").splitlines()
    made = []
    for car in csv.DictReader(line for line in lines if not line.startswith("#")):
        if not car["cylinders"].isdigit():
            continue
        cylinders = int(car["cylinders"])
        bore = (4 / np.pi * float(car["litres"]) * 1e6 / cylinders) ** (1 / 3)
        made.append(
            {
                "id": f"{car['manufacturer']} {car['model']}",
                "cylinders": cylinders,
                "bore_mm": f"{bore:.6g}",
                "stroke_mm": f"{bore:.6g}",
                "compression_ratio": RATIO_1993,
                "chamber": "",
                "cooling": "liquid",
                "duty": "road",
                "intake": "ported injection",
                "exhaust": "muffled",
                "rating": "net",
                "standard": "SAE J1349",
                "power_kw": f"{HORSEPOWER * float(car['horsepower']):.6g}",
                "power_rpm": car["rpm"],
                "torque_nm": "",
                "torque_rpm": "",
            }
        )
    return made
