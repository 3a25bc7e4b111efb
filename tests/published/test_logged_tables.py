"""A table that others printed, written as a logger would have, read and fitted.

No package of the registries carries a logged run of a vehicle on a road or a dynamometer, as far as
was looked. The motorcycle coast-down table of 40 CFR 86.529-98, Figure F98-9 stands in; it is a
table, and never was a log. Engines are put to their printed ratings in `test_ratings.py`.
"""

import csv
from pathlib import Path

import numpy as np
import pytest
from scipy.integrate import solve_ivp

import windwall as ww
from windwall import physics
from windwall.logs.read import parse

pytestmark = pytest.mark.published

DATA = Path(__file__).parent / "data"
KMH = 1 / 3.6
SLIP_OF_THE_PRINTER = 160  # kg, see test_coast_down_table.py


def test_the_regulation_is_read_as_it_is_printed():
    """The file as it lies there: two lines of remarks, a heading, no clock but the time column."""
    content = (DATA / "motorcycle_coast_down.csv").read_bytes()
    log = parse(content, stated={"clock": {"column": "time", "unit": "s"}})
    lines = [one for one in content.decode().splitlines() if not one.startswith("#")]
    rows = [{key: float(text) for key, text in row.items()} for row in csv.DictReader(lines)]
    rows.sort(key=lambda row: row["time"])
    for key in ("mass", "constant", "square", "force", "longest", "shortest"):
        assert log.column(key).values == pytest.approx([row[key] for row in rows])
    assert log.time == pytest.approx([row["time"] - rows[0]["time"] for row in rows])


def logged(row, fast, slow, step=0.1):
    """The table's road load rolled down by SciPy, as an old recorder writes it: to 0.01 km/h, with
    decimal commas, degrees of the day in an old code page, and a row that came late.
    """
    constant, square = row["constant"], row["square"] / KMH**2

    def slowing(_, speed):
        return -(constant + square * speed**2) / row["mass"]

    time = np.arange(0, 240, step)
    found = solve_ivp(slowing, (0, 240), [fast * KMH], t_eval=time, rtol=1e-10, atol=1e-10)
    speed = found.y[0] / KMH
    rows = [f"{t:.1f};{v:.2f};21,5".replace(".", ",") for t, v in zip(time, speed, strict=True)]
    rows = rows[: int((speed > slow).sum())]
    rows[7], rows[8] = rows[8], rows[7]
    return ("Zeit [s];v [km/h];Luft [°C]\n" + "\n".join(rows) + "\n").encode("cp1252")


def regulation():
    lines = (DATA / "motorcycle_coast_down.csv").read_text("utf-8").splitlines()
    for row in csv.DictReader(line for line in lines if not line.startswith("#")):
        yield {key: float(text) for key, text in row.items()}


ROWS = [row for row in regulation() if row["mass"] != SLIP_OF_THE_PRINTER]


ROWS_TRIED = ROWS[::4]


def named(row):
    return f"{row['mass']:.0f} kg"


@pytest.mark.parametrize("row", ROWS_TRIED, ids=named)
def test_the_printed_time_is_read_off_a_log(row):
    """From 70 to 60 km/h; rounding of C and of the time makes up to 0.4 %."""
    log = parse(logged(row, 75, 55))
    took = np.interp([-70, -60], -log.column("v").values, log.time)
    assert took[1] - took[0] == pytest.approx(row["time"], rel=4e-3)
    (late,) = (one for one in log.mended if "came late" in one.message)
    assert late.lines == (10,)


@pytest.mark.parametrize("row", ROWS_TRIED, ids=named)
def test_the_printed_force_is_fitted_to_a_log(row):
    """The fit of the coast-down knows the log and the mass alone. C is printed to 0.0001, worth
    0.21 N at 65 km/h, the force to 0.05 N; the log's rounding adds as much again.
    """
    log = parse(logged(row, 120, 20))
    table = {"time": log.time, "speed": log.column("v").values}
    fit = ww.coast_down_fit(
        table,
        mass=f"{row['mass']} kg",
        air_density="1.2 kg/m3",
        rotating_share="0 %",
        headwind="0 m/s",
        grade="0 %",
        units={"time": "s", "speed": "km/h"},
    )
    square = fit.drag_area.value * 1.2 / 2 * KMH**2
    constant = fit.rolling_resistance.value * row["mass"] * 9.80665
    force = physics.road_load_polynomial(65, constant, 0, square)
    assert force == pytest.approx(row["force"], abs=0.5)
    assert square == pytest.approx(row["square"], rel=5e-3)
