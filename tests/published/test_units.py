"""Every unit of docs/units.md against pint, unit by unit and by pint's own explicit names.

The page is generated from the table the reader uses, and a C++ test fails when it is stale, so
what is checked here is what is read. pint never sees our spellings: `Nm`, `PS` and `psi` mean
other things to it.
"""

from fractions import Fraction
from math import pi
from pathlib import Path

import pint
import pytest

pytestmark = pytest.mark.published

PAGE = Path(__file__).parents[2] / "docs" / "units.md"

# Our spelling, and what it is in pint's explicit names.
PINT = {
    "mm": "millimeter",
    "cm": "centimeter",
    "m": "meter",
    "km": "kilometer",
    "in": "inch",
    "ft": "foot",
    "mi": "mile",
    "mm2": "millimeter**2",
    "cm2": "centimeter**2",
    "m2": "meter**2",
    "in2": "inch**2",
    "ft2": "foot**2",
    "mm3": "millimeter**3",
    "cm3": "centimeter**3",
    "L": "liter",
    "m3": "meter**3",
    "in3": "inch**3",
    "ft3": "foot**3",
    "gal_us": "US_liquid_gallon",
    "gal_imp": "imperial_gallon",
    "kg": "kilogram",
    "lb": "pound",
    "ms": "millisecond",
    "s": "second",
    "min": "minute",
    "h": "hour",
    "m/s": "meter/second",
    "km/h": "kilometer/hour",
    "ft/s": "foot/second",
    "mph": "mile/hour",
    "kn": "knot",
    "m/s2": "meter/second**2",
    "ft/s2": "foot/second**2",
    "rpm": "revolutions_per_minute",
    "rad/s": "radian/second",
    "deg": "degree",
    "rad": "radian",
    "N": "newton",
    "kN": "kilonewton",
    "kgf": "kilogram_force",
    "lbf": "force_pound",
    "N m": "newton*meter",
    "kgf m": "kilogram_force*meter",
    "lbf ft": "force_pound*foot",
    "lbf in": "force_pound*inch",
    "Pa": "pascal",
    "hPa": "hectopascal",
    "mbar": "millibar",
    "kPa": "kilopascal",
    "bar": "bar",
    "mmHg": "millimeter_Hg",
    "inHg": "inch_Hg",
    "mmH2O": "0.1*centimeter_H2O",
    "inH2O": "2.54*centimeter_H2O",
    "psi": "pound_force_per_square_inch",
    "W": "watt",
    "kW": "kilowatt",
    "PS": "metric_horsepower",
    "hp": "horsepower",
    "J": "joule",
    "kJ": "kilojoule",
    "MJ": "megajoule",
    "kWh": "kilowatt*hour",
    "BTU": "international_british_thermal_unit",
    "g/s": "gram/second",
    "kg/s": "kilogram/second",
    "kg/min": "kilogram/minute",
    "kg/h": "kilogram/hour",
    "lb/min": "pound/minute",
    "lb/h": "pound/hour",
    "cm3/min": "centimeter**3/minute",
    "L/min": "liter/minute",
    "L/h": "liter/hour",
    "L/s": "liter/second",
    "m3/h": "meter**3/hour",
    "m3/s": "meter**3/second",
    "ft3/min": "foot**3/minute",
    "gal_us/h": "US_liquid_gallon/hour",
    "gal_imp/h": "imperial_gallon/hour",
    "kg/m3": "kilogram/meter**3",
    "kg/L": "kilogram/liter",
    "g/cm3": "gram/centimeter**3",
    "lb/ft3": "pound/foot**3",
    "kg m2": "kilogram*meter**2",
    "kg cm2": "kilogram*centimeter**2",
    "lb ft2": "pound*foot**2",
    "W/K": "watt/kelvin",
    "kW/K": "kilowatt/kelvin",
    "BTU/h/degR": "international_british_thermal_unit/hour/degree_Rankine",
    "J/kg": "joule/kilogram",
    "kJ/kg": "kilojoule/kilogram",
    "MJ/kg": "megajoule/kilogram",
    "BTU/lb": "international_british_thermal_unit/pound",
    "kg/m": "kilogram/meter",
    "g/m": "gram/meter",
    "lb/ft": "pound/foot",
    "1/m": "1/meter",
    "1/mm": "1/millimeter",
    "1/ft": "1/foot",
    "1/in": "1/inch",
    "Pa s": "pascal*second",
    "mPa s": "millipascal*second",
    "N/m": "newton/meter",
    "kN/m": "kilonewton/meter",
    "N/mm": "newton/millimeter",
    "lbf/in": "force_pound/inch",
    "K": "kelvin",
    "degR": "degree_Rankine",
    "delta_degF": "delta_degree_Fahrenheit",
}
# Where one spelling names different things in different fields.
OF_DIMENSION = {
    ("mass", "g"): "gram",
    ("acceleration", "g"): "standard_gravity",
    ("time of work", "h"): "hour/hour",
    ("time of work", "min"): "minute/hour",
    ("plain number", "(none)"): "dimensionless",
    ("plain number", "%"): "percent",
}
# psia, psig, bara, kPa gauge...: the field says where it counts from, the size is the plain unit's.
KINDS = {"psia": "psi", "psig": "psi", "bara": "bar", "barg": "bar"}


def rows():
    dimension = ""
    for line in PAGE.read_text(encoding="utf-8").splitlines():
        if line.startswith("## "):
            dimension = line[3:]
        cells = [cell.strip().strip("`") for cell in line.strip("|").split("|")]
        if line.startswith("| ") and len(cells) == 7 and cells[0] not in {"unit", "---"}:
            unit, _, shift, factor, divisor, *_ = cells
            yield dimension, unit, Fraction(shift), Fraction(factor), Fraction(divisor)


TABLE = list(rows())
SIZES = [row for row in TABLE if row[0] != "sum of money" and row[2] == 0]
LEVELS = [row for row in TABLE if row[2] != 0]


@pytest.fixture(scope="module")
def registry():
    return pint.UnitRegistry()


def pint_name(dimension, unit):
    if (dimension, unit) in OF_DIMENSION:
        return OF_DIMENSION[dimension, unit]
    plain = unit.removesuffix(" abs").removesuffix(" gauge")
    return PINT[KINDS.get(plain, plain)]


def test_the_page_holds_the_whole_table():
    assert len(TABLE) > 150
    assert len({row[0] for row in TABLE}) == 31


@pytest.mark.parametrize(
    "dimension, unit, factor, divisor",
    [(row[0], row[1], row[3], row[4]) for row in SIZES],
    ids=[f"{row[0]}: {row[1]}" for row in SIZES],
)
def test_size_agrees_with_pint(registry, dimension, unit, factor, divisor):
    theirs = registry.Quantity(1, "dimensionless") * registry(pint_name(dimension, unit))
    unit_of_si = next(row[1] for row in SIZES if row[0] == dimension and row[3] == row[4] == 1)
    assert theirs.check(registry(pint_name(dimension, unit_of_si)).dimensionality)
    # pint multiplies doubles, so that a few roundings add up.
    assert float(factor / divisor) == pytest.approx(theirs.to_base_units().magnitude, rel=5e-15)


@pytest.mark.parametrize("number", [-40, 0, 33, 212, 1000.5])
@pytest.mark.parametrize("row", LEVELS, ids=[row[1] for row in LEVELS])
def test_temperature_levels_agree_with_pint(registry, row, number):
    _, unit, shift, factor, divisor = row
    name = {"degC": "degree_Celsius", "degF": "degree_Fahrenheit"}[unit]
    kelvin = registry.Quantity(number, name).to("kelvin").magnitude
    assert float((Fraction(number) + shift) * factor / divisor) == pytest.approx(kelvin, rel=1e-14)


def test_pi_is_long_enough():
    """A turn's factor holds more digits than a double, and the double nearest to it is math.pi."""
    turns = {row[3] for row in TABLE if row[1] in {"rpm", "deg"}}
    assert [float(turn) for turn in turns] == [pi]
    assert all(turn.denominator >= 10**40 for turn in turns)


def test_money_is_never_converted():
    assert {(row[3], row[4]) for row in TABLE if row[0] == "sum of money"} == {(1, 1)}
