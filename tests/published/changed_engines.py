"""Engines of engine_changes.csv before and after their change.

Assumptions, fixed before the first comparison, beside those of blown_engines:

* a row is run where the change alone can be stated: rows that changed valves, cams or carburettors
  too, or that do not print boost or ratio, say so under `left_out`; a row with a number from memory
  is run and shown, and not counted;
* before the change the engine has its five words, its ratio and, where no blower stood before it,
  its printed power as a rated fact; the same inputs then serve the changed engine;
* the maker asks for 98 research octane numbers from a ratio of 9 upwards and for 91 below;
* a speed that is not printed is that of the other state; where neither is, the piston's mean speed
  is 12 m/s, or the engine turns 3600 rpm if made for work. Bore and stroke that are not printed are
  those of a square engine; a ratio that neither is printed nor changes is 8;
* height and heat change the day alone: standard pressure at 1524 m, air of 25 degC in both; air of
  52.8 in place of 25 degC; all of it dry. The first comparison had half of what the air can hold in
  it, 7 % of air of 52.8 degC, and that row had twice the loss printed. Gross and net are those of
  the rated figures, descriptors alone;
* the gain is power after over power before less one, ours from two solved points.
"""

import csv
from functools import cache
from pathlib import Path

import numpy as np

from published.blown_engines import charge_path, powers
from published.rated_engines import document, figures, rated

TABLE = Path(__file__).parent / "data" / "engine_changes.csv"
DRY = {"relative_humidity": "0 %"}
SEA = DRY | {"temperature": "25 degC", "pressure": "101.325 kPa"}
DAYS = {
    "altitude": DRY | {"temperature": "25 degC", "altitude": "1524 m"},
    "temperature": SEA | {"temperature": "52.8 degC"},
}


def changes():
    lines = TABLE.read_text(encoding="utf-8").splitlines()
    return list(csv.DictReader(line for line in lines if not line.startswith("#")))


def run():
    """The rows that can be run."""
    return [completed(row) for row in changes() if not row["left_out"]]


def counted(row):
    return row["from_memory"] == "no"


def completed(row):
    """A row with what its source leaves out, by the rules above."""
    row = dict(row)
    bore = (4e3 / np.pi * float(row["displacement_cc"]) / int(row["cylinders"])) ** (1 / 3)
    for key in ("bore_mm", "stroke_mm"):
        row[key] = row[key] or f"{bore:.6g}"
    usual = 3600 if row["duty"] == "work" else 12 * 3e4 / float(row["stroke_mm"])
    for key, other in (("before", "after"), ("after", "before")):
        row[f"power_{key}_rpm"] = (
            row[f"power_{key}_rpm"] or row[f"power_{other}_rpm"] or f"{usual:.6g}"
        )
        row[f"compression_{key}"] = row[f"compression_{key}"] or row[f"compression_{other}"] or "8"
    return row


def as_rated(row):
    """The engine before its change in the columns of the table of ratings."""
    return row | {
        "compression_ratio": row["compression_before"],
        "power_kw": row["power_before_kw"],
        "power_rpm": row["power_before_rpm"],
        "torque_nm": "",
        "torque_rpm": "",
        "standard": "",
    }


def theirs(row):
    """The printed gain."""
    if row["change_printed"]:
        return float(row["change_printed"])
    return float(row["power_after_kw"]) / float(row["power_before_kw"]) - 1


def state(row, when):
    """The file of one state and its boost, Pa."""
    made = document(as_rated(row))
    boost = 1e3 * float(row[f"boost_{when}_kpa"] or 0)
    first = 1e3 * float(row["boost_before_kpa"] or 0)
    cooled = row["cooler_after"] == "yes" and when == "after"
    kilowatts, speed = (float(row[f"power_{when}_{unit}"] or 1) for unit in ("kw", "rpm"))
    made["charge_path"] = charge_path(row, boost, cooled, kilowatts, speed)
    if not first:
        asked = 98 if float(row["compression_before"]) >= 9 else 91
        made["engine"]["rated"] = rated(as_rated(row), ("power",)) | {"research_octane": asked}
    made["engine"]["compression_ratio"] = float(row[f"compression_{when}"])
    return made, boost


def by_day(row):
    """Where the day alone changes."""
    made, _ = state(row, "before")
    first, second = (
        powers(made | {"day": day}, 0, row["power_after_rpm"]) for day in (SEA, DAYS[row["kind"]])
    )
    return tuple(new / old - 1 for old, new in zip(first, second, strict=True))


def by_installation(row):
    """Gross to net, both by the words alone."""
    engine = as_rated(row)
    gross, net = (figures(engine | {"rating": way})["power"][0] for way in ("gross", "net"))
    return (net / gross - 1,) * 2


def by_change(row):
    """On the petrol of the pump, and on one that never knocks."""
    before, after = (
        powers(*state(row, when), float(row[f"power_{when}_rpm"])) for when in ("before", "after")
    )
    return tuple(new / old - 1 for old, new in zip(before, after, strict=True))


@cache
def gains():
    """By row: the gain on the petrol of the pump, the gain without knock, the printed gain."""
    found = {}
    for row in run():
        by = {"installation": by_installation} | dict.fromkeys(DAYS, by_day)
        found[row["id"]] = (*by.get(row["kind"], by_change)(row), theirs(row))
    return found
