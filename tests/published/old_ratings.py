"""Cars of 1970 to 1982 (Auto MPG) and of 1974 (mtcars) as engines, and what gross power is worth.

Assumptions, fixed before the first comparison:

* neither table prints bore, stroke, ratio or speed: a car is a square engine of its cubic inches,
  liquid cooled, road, two-valve wedge, carburettor, muffled, at a ratio of 8.5, the middle of what
  was sold; its power is the highest of mean piston speeds from 9 to 17 m/s;
* rows of 3 cylinders (rotary) and diesels are left out; of rows with one engine the first stays;
* both tables are net, whatever is said of them. The help page of mtcars calls its power gross, and
  cars of 1970 and 1971 were sold by gross figures; but where both were printed for 1971
  (GROSS_NET) the tables have the net one: 150 for 318 cubic inches, 140 for 302;
* gross figures were corrected to 60 degF and 29.92 inHg, net ones to 77 degF and 99 kPa
  (experts123.com, What is the difference between net and gross horsepower).
"""

import csv
from functools import cache
from pathlib import Path

import numpy as np

from published.rated_engines import HORSEPOWER, figures

TABLE = Path(__file__).parent / "data" / "cars_1970s.csv"
CUBIC_INCH = 25.4**3  # mm3
PISTON_SPEEDS = range(9, 18, 2)  # m/s
# Horsepower gross and net of one engine, cylinders and cubic inches: brochure of 1971 in
# curbsideclassic.com, How Many "Real" Horsepower; boards.straightdope.com/t/941767 (1971); engines
# of 1984 and 1986 at mrmr2engine.kuchinawa.com.
GROSS_NET = [(230, 155, 8, 318), (210, 150, 8, 302), (130, 120, 4, 96.8)]


def old_cars():
    """Rows of both tables in the columns of the table of ratings, without a speed."""
    lines = TABLE.read_text(encoding="utf-8").splitlines()
    return [as_engine(car) for car in csv.DictReader(line for line in lines if line[0] != "#")]


def as_engine(car):
    cylinders = int(car["cylinders"])
    bore = (4 / np.pi * float(car["cubic_inches"]) * CUBIC_INCH / cylinders) ** (1 / 3)
    return {
        "id": f"{car['table']} {car['name']} {car['year']} {car['horsepower']}",
        "table": car["table"],
        "cylinders": cylinders,
        "bore_mm": f"{bore:.6g}",
        "stroke_mm": f"{bore:.6g}",
        "compression_ratio": 8.5,
        "chamber": "two_valve_wedge",
        "cooling": "liquid",
        "duty": "road",
        "intake": "carburettor",
        "exhaust": "muffled",
        "rating": "net",
        "standard": "SAE J1349",
        "power_kw": f"{HORSEPOWER * float(car['horsepower']):.6g}",
        "torque_nm": "",
        "torque_rpm": "",
    }


def highest(engine):
    """The model's highest power over what was printed."""
    rpm = [3e4 * speed / float(engine["stroke_mm"]) for speed in PISTON_SPEEDS]
    return max(figures(engine | {"power_rpm": f"{one:.6g}"})["power"][0] for one in rpm)


@cache
def by_rule():
    return {engine["id"]: highest(engine) for engine in old_cars()}


def net_over_gross(cylinders, cubic_inches):
    """By the model, of one car's engine."""
    car = {"cylinders": cylinders, "cubic_inches": cubic_inches, "horsepower": 100}
    engine = as_engine(car | {"table": "", "name": "", "year": ""})
    gross = {"rating": "gross", "standard": "SAE gross"}
    return highest(engine) / highest(engine | gross)
