"""Road load and coast-down times against the motorcycle table of 40 CFR 86.529-98, Figure F98-9.

Row 160 kg prints 4.10 s where its own coefficients and its neighbours ask for 4.18 s: a printing
slip, left out of the times and tested as one.
"""

import csv
from pathlib import Path

import numpy as np
import pytest

from windwall import physics

pytestmark = pytest.mark.published

KMH = 1 / 3.6
SLIP_OF_THE_PRINTER = 160


def table():
    lines = (Path(__file__).parent / "data" / "motorcycle_coast_down.csv").read_text("utf-8")
    kept = [line for line in lines.splitlines() if not line.startswith("#")]
    return [{key: float(text) for key, text in row.items()} for row in csv.DictReader(kept)]


ROWS = table()
TIMED = [row for row in ROWS if row["mass"] != SLIP_OF_THE_PRINTER]


def named(row):
    return f"{row['mass']:.0f} kg"


def coast_down_time(row):
    return physics.coast_down_time(
        row["mass"], row["constant"], row["square"] / KMH**2, 70 * KMH, 60 * KMH
    )


def test_the_table_is_all_there():
    assert [row["mass"] for row in ROWS] == list(range(100, 350, 10))


@pytest.mark.parametrize("row", ROWS, ids=named)
def test_force_at_65_kmh(row):
    # C is printed to 0.0001, worth 0.21 N at 65 km/h when rounded, and the force to 0.05 N.
    force = physics.road_load_polynomial(65, row["constant"], 0, row["square"])
    assert force == pytest.approx(row["force"], abs=0.27)


@pytest.mark.parametrize("row", TIMED, ids=named)
def test_time_from_70_to_60_kmh(row):
    # Rounding of C to 0.0001 and of the time to 0.005 s makes up to 0.4 %.
    assert coast_down_time(row) == pytest.approx(row["time"], rel=4e-3)


def test_times_are_unbiased():
    errors = [coast_down_time(row) / row["time"] - 1 for row in TIMED]
    assert abs(np.mean(errors)) < 5e-4


@pytest.mark.parametrize("row", TIMED, ids=named)
def test_speed_after_the_printed_time(row):
    end = physics.coast_down_speed(
        row["mass"], row["constant"], row["square"] / KMH**2, 70 * KMH, row["time"]
    )
    assert end == pytest.approx(60 * KMH, rel=8e-4)


def test_the_slip_is_one():
    (row,) = (row for row in ROWS if row["mass"] == SLIP_OF_THE_PRINTER)
    neighbours = [other["time"] for other in ROWS if other["mass"] in {150, 170}]
    assert coast_down_time(row) == pytest.approx(np.mean(neighbours), abs=0.01)
    assert coast_down_time(row) > row["time"] + 0.07
