"""Makes the invented logs of `scenarios/logs`: the model, noise, and faults written by hand.

`.venv/bin/python tests/python/invented_logs.py` writes them anew.
"""

import json
from pathlib import Path

import numpy as np

import windwall as ww

ROOT = Path(__file__).parents[2]
FOLDER = ROOT / "scenarios" / "logs"
KMH, RPM, ZERO = 3.6, 30 / np.pi, 273.15


def sampled(drive, times, address, lag=0.0):
    """Read on while gears change, of which the drive says nothing of the engine."""
    told = np.isfinite(drive[address]) | (drive.dataset.phase.values != "shifting")
    return np.interp(times - lag, drive["time"][told], drive[address][told])


def cyclecar():
    """The car that was logged: a little more drag and leak than its file says."""
    car = ww.load(ROOT / "scenarios" / "airfield_cyclecar.json")
    return car.set({"body/drag_area": 0.74, "charge_path/blower/leak_area": 13e-6})


def microcar():
    """The village microcar with something to drive; heavier than its file says."""
    document = json.loads((ROOT / "scenarios" / "village_microcar.json").read_text("utf-8"))
    leg = {"kind": "full_throttle", "for_distance": "700 m"}
    document["outings"] = [
        {"id": "bakery", "starts": "soaked", "legs": [leg, {"kind": "stop", "time": "20 s"}, leg]}
    ]
    return ww.loads(json.dumps(document))


def two_runs():
    """`two_runs.csv`: two of the three runs, 10 rows a second, switched off in the queue."""
    drive = cyclecar().drive("three_runs", progress=False)
    noise = np.random.default_rng(20260704)
    starts = list(drive["time"][np.diff(drive["pedal"], prepend=0) > 0.5])
    times = np.concatenate([np.arange(start - 3, start + 62, 0.1) for start in _apart(starts)[:2]])
    columns = {
        "Time [s]": (times - times[0], 2),
        "TPS [%]": (100 * sampled(drive, times, "pedal") + noise.normal(0, 0.4, len(times)), 1),
        "RPM": (RPM * sampled(drive, times, "engine/speed") + noise.normal(0, 12, len(times)), 0),
        "GPS speed [km/h]": (
            KMH * sampled(drive, times, "road/speed", 0.25) + noise.normal(0, 0.2, len(times)),
            2,
        ),
        "Boost [kPa]": (
            sampled(drive, times, "manifold/boost") / 1e3 + noise.normal(0, 0.4, len(times)) + 0.8,
            1,
        ),
        "Charge temp [degC]": (
            sampled(drive, times, "manifold/temperature", 0.6)
            - ZERO
            + noise.normal(0, 0.4, len(times)),
            1,
        ),
        "CHT [degC]": (sampled(drive, times, "engine/head/temperature") - ZERO, 0),
    }
    return ",".join(columns) + "\n" + _table(columns, ",", ".")


def to_the_bakery():
    """`to_the_bakery.csv`: no pedal, an old logger, and everything that goes wrong with one."""
    drive = microcar().drive("bakery", progress=False)
    noise = np.random.default_rng(19991231)
    times = np.arange(0, drive["time"][-1], 0.1)
    wall = times + 8 * 3600 + 12 * 60 + 3.4
    columns = {
        "RPM [1/min]": (
            RPM * sampled(drive, times, "engine/speed") + noise.normal(0, 9, len(times)),
            0,
        ),
        "v [km/h]": (
            KMH * sampled(drive, times, "road/speed") + noise.normal(0, 0.25, len(times)),
            1,
        ),
        "MAP [mbar]": (
            sampled(drive, times, "manifold/pressure") / 100 + noise.normal(0, 3, len(times)),
            1,
        ),
        "IAT [°C]": (
            sampled(drive, times, "manifold/temperature") - ZERO + noise.normal(0, 0.3, len(times)),
            1,
        ),
    }
    clock = [f"{int(w // 3600):02d}:{int(w // 60 % 60):02d}:{w % 60:04.1f}" for w in wall]
    rows = [
        f"{stamp.replace('.', ',')};{row}"
        for stamp, row in zip(clock, _table(columns, ";", ",").splitlines(), strict=True)
    ]
    preamble = ["Henrikes Rekorder;Nr. 7", "Datum;17.05.2026", "", "Zeit;" + ";".join(columns)]
    return "\n".join([*preamble, *_with_faults(rows)]) + "\n08:13:5"


def _with_faults(rows):
    """What a flat battery, a loose plug and a bumpy road did to it."""
    rows = list(rows)
    for at in range(150, 190):  # the temperature sensor lost its plug, and stood where it was
        rows[at] = ";".join([*rows[at].split(";")[:4], rows[150].split(";")[4]])
    rows[60], rows[61] = rows[61], rows[60]  # came late
    rows[75] = rows[74].split(";")[0] + ";" + rows[75].partition(";")[2]  # one stamp twice
    cells = rows[200].split(";")
    rows[200] = ";".join([cells[0], "0x7FFF", *cells[2:]])
    cells = rows[210].split(";")
    rows[210] = ";".join([*cells[:2], "NaN", *cells[3:]])
    del rows[330:345]  # nothing for a second and a half
    rows.insert(260, rows[259])  # written twice
    return rows


def _apart(starts):
    """The first of every run."""
    return [b for a, b in zip([-1e9, *starts], starts, strict=False) if b - a > 100]


def _table(columns, part, mark):
    values = [
        [f"{x + 0.0:.{digits}f}".replace(".", mark) for x in xs] for xs, digits in columns.values()
    ]
    return "".join(part.join(row) + "\n" for row in zip(*values, strict=True))


LOGS = {"two_runs": two_runs, "to_the_bakery": to_the_bakery}

if __name__ == "__main__":
    FOLDER.mkdir(exist_ok=True)
    for name, make in LOGS.items():
        encoding = "cp1252" if name == "to_the_bakery" else "utf-8"
        (FOLDER / f"{name}.csv").write_bytes(make().encode(encoding))
