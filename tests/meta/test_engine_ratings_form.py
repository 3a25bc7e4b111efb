"""Form of the table of published engine ratings (data/engine_ratings.csv, sources row by row).

A check of form only, which counts as nothing from outside: no number here meets the model. Rows
that `sealed` picks stay closed until every assumption is frozen.
The cars of 1985 are the UCI Automobile data set, Ward's Automotive Yearbook.
"""

import numpy as np
import pytest

from published.engine_ratings import engine_ratings, sealed

ALLOWED = {
    "chamber": {
        "side_valve",
        "two_valve_wedge",
        "two_valve_hemispherical",
        "four_valve_pent_roof",
        "",
    },
    "chamber_basis": {"source", "layout", "class_default", ""},
    "cooling": {"air", "liquid", "oil_and_air"},
    "duty": {"work", "road", "sport", "racing"},
    "intake": {"carburettor", "ported injection", "throttle body injection"},
    "exhaust": {"muffled", "open", ""},
    "induction": {"atmospheric", "turbocharger", "blower"},
    "charge_cooler": {"yes", "no", ""},
    "rating": {"gross", "net", ""},
    "from_memory": {"yes", "no"},
}
KILOWATTS = {"kW": 1, "hp": 0.7457, "bhp": 0.7457, "HP": 0.7457, "PS": 0.7355, "ch": 0.7355}
NEWTON_METRES = {"N m": 1, "lb ft": 1.355818, "kgf m": 9.80665}


ROWS = engine_ratings()
IN_EACH = pytest.mark.parametrize("row", ROWS, ids=lambda row: row["id"])


def number(row, column):
    return float(row[column]) if row[column] else None


def swept(row):
    """Volume of all cylinders from bore and stroke, cm3."""
    bore, stroke = number(row, "bore_mm"), number(row, "stroke_mm")
    return np.pi / 4 * bore**2 * stroke * int(row["cylinders"]) / 1e3


def torque_at_power(row):
    return number(row, "power_kw") * 1e3 / (number(row, "power_rpm") * np.pi / 30)


def mean_effective_pressure(row, torque):
    """Of a four-stroke engine, MPa."""
    return torque * 4 * np.pi / number(row, "displacement_cc")


def in_its_unit(printed, units):
    value, unit = printed.split(" ", 1)
    return float(value) * next(units[name] for name in units if unit.startswith(name))


def test_enough_were_read_and_none_twice():
    assert sum(row["from_memory"] == "no" for row in ROWS) >= 60
    assert len({row["id"] for row in ROWS}) == len(ROWS)


def test_about_a_third_is_sealed():
    assert 1 / 4 < np.mean([sealed(row) for row in ROWS]) < 5 / 12


@IN_EACH
def test_source_and_descriptors(row):
    assert row["publication"]
    assert row["page"]
    wrong = {name: row[name] for name, allowed in ALLOWED.items() if row[name] not in allowed}
    assert wrong == {}
    assert bool(row["chamber"]) == bool(row["chamber_basis"])


@IN_EACH
def test_a_rating_is_whole(row):
    assert row["power_kw"] or row["torque_nm"]
    assert bool(row["power_kw"]) == bool(row["power_rpm"]) == bool(row["power_printed"])
    assert bool(row["torque_nm"]) == bool(row["torque_printed"])


@IN_EACH
def test_displacement_is_that_of_bore_and_stroke(row):
    assert swept(row) == pytest.approx(number(row, "displacement_cc"), rel=0.015)


@IN_EACH
def test_within_physical_bounds(row):
    torques = [number(row, "torque_nm")] if row["torque_nm"] else []
    if row["power_kw"]:
        torques.append(torque_at_power(row))
        assert 2e-3 * number(row, "stroke_mm") * number(row, "power_rpm") / 60 < 30
    for torque in torques:
        assert 0.3 < mean_effective_pressure(row, torque) < 3
    ratio = number(row, "compression_ratio")
    assert ratio is None or 4 < ratio < 14


@IN_EACH
def test_power_needs_no_more_than_peak_torque(row):
    if row["power_kw"] and row["torque_nm"]:
        assert torque_at_power(row) < 1.03 * number(row, "torque_nm")


@IN_EACH
def test_conversions(row):
    """Printed pairs of units are rounded, and some differ by up to 5 %: see the doubts."""
    if row["power_kw"]:
        assert in_its_unit(row["power_printed"], KILOWATTS) == pytest.approx(
            number(row, "power_kw"), rel=0.05
        )
    if row["torque_nm"]:
        assert in_its_unit(row["torque_printed"], NEWTON_METRES) == pytest.approx(
            number(row, "torque_nm"), abs=0.01
        )
