"""Numbers come in as texts, as SI floats and as quantities of other libraries."""

import math

import numpy as np
import pytest

import windwall as ww
from windwall.quantities.si import accepted, from_foreign


def test_texts_pass_and_numbers_become_floats():
    assert accepted("36 mm", "m") == "36 mm"
    assert accepted(3, "m") == 3.0
    assert accepted(np.float32(0.5), "m") == 0.5


@pytest.mark.parametrize("value", [True, None, [1], {"a": 1}, 1j])
def test_what_is_no_quantity_is_refused(value):
    with pytest.raises(TypeError, match="expected a text with a unit"):
        accepted(value, "m")


def test_si_is_a_float_that_says_so():
    assert ww.si(440) == 440.0
    assert repr(ww.si(440)) == "si(440.0)"


@pytest.fixture(scope="module")
def units(oracle):
    return oracle("pint").UnitRegistry()


def test_quantities_of_a_unit_library_are_asked_for_si(car, units):
    lighter = car.set(
        {
            "body/mass": units.Quantity(700, "lb"),
            "day/temperature": units.Quantity(80, "degF"),
            "engine/inertia": units.Quantity(100, "kg*cm**2"),
        }
    )
    assert lighter.get("body/mass") == pytest.approx(700 * 0.45359237, rel=1e-12)
    assert lighter.get("day/temperature") == pytest.approx((80 + 459.67) * 5 / 9, rel=1e-12)
    assert lighter.get("engine/inertia") == pytest.approx(0.01, rel=1e-12)


def test_a_quantity_of_the_wrong_dimension_is_refused(car, units):
    with pytest.raises(ValueError, match="not in units of kg"):
        car.set({"body/mass": units.Quantity(3, "m")})


@pytest.mark.parametrize(
    "ours, theirs, factor",
    [("m3/s", "L/min", 1 / 60000), ("W/K", "kW/K", 1000), ("m-1", "1/mm", 1000), ("1", "", 1)],
)
def test_our_names_of_units_are_spelt_as_theirs(units, ours, theirs, factor):
    assert from_foreign(units.Quantity(1, theirs), ours) == pytest.approx(factor)


def test_a_question_takes_them_too(car, units):
    point = car.operating_point(units.Quantity(4200, "rpm"))
    assert point.engine.speed == pytest.approx(4200 * math.pi / 30)
