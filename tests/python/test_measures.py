"""Numbers for people. That units are right is checked elsewhere; here, that they are chosen."""

import numpy as np
import pytest

from windwall.quantities.measures import (
    BOOST,
    ENGINE_SPEED,
    POWER,
    SHARE,
    SPEED,
    TEMPERATURE,
    TEMPERATURE_DIFFERENCE,
    Measure,
)


def test_each_system_has_its_unit():
    assert SPEED.text(50, "metric") == "180 km/h"
    assert SPEED.text(50, "us") == "112 mph"
    assert POWER.shown("us") == "hp"
    assert TEMPERATURE.text(273.15, "metric") == "0 degC"
    assert ENGINE_SPEED.text(10 * np.pi, "metric") == "300 rpm"


def test_short_numbers_lose_zeros_that_say_nothing():
    assert TEMPERATURE.short(306.15, "metric") == "33 degC"
    assert SHARE.short(0.355, "metric") == "35.5 %"
    assert SPEED.short(100 / 3.6, "metric") == "100 km/h"
    assert Measure("plain number", "").short(4, "metric") == "4"


def test_a_change_has_a_sign_and_zero_has_no_minus():
    assert SPEED.change(-1, "metric") == "-3.6"
    assert SPEED.change(-1e-6, "metric") == "+0.0"


def test_a_spread_of_temperatures_is_a_difference():
    assert TEMPERATURE.spread is TEMPERATURE_DIFFERENCE
    assert BOOST.spread is BOOST


def test_columns_convert_like_numbers():
    si = np.array([250.0, 300.0, 350.0])
    each = [TEMPERATURE.value(one, "us") for one in si]
    assert TEMPERATURE.values(si, "us") == pytest.approx(each, rel=1e-12)


def test_si_units_are_named():
    assert (SPEED.si, BOOST.si, TEMPERATURE.si, ENGINE_SPEED.si) == ("m/s", "Pa", "K", "rad/s")


def test_an_unknown_dimension_is_refused():
    with pytest.raises(ValueError, match="no dimension"):
        Measure("happiness", "km").text(1, "metric")
    with pytest.raises(ValueError, match="speed is expected"):
        Measure("speed", "kg").text(1, "metric")
