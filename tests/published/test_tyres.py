"""Tyre sizes, ratings, rolling radii and grip against printed tables, tests of 1990 and a textbook.

Load and speed tables: tyre dealers' pages and ISO 3:1973 (files in data/). Rolling radii: Consumer
Reports 1990. Grip: Beer, Johnston, Eisenberg and Clausen, Vector Mechanics for Engineers: Statics
and Dynamics, 8th ed. (2007), Problem 16.6.
"""

import csv
from pathlib import Path

import numpy as np
import pytest

from windwall import physics

pytestmark = pytest.mark.published

MILE = 1609.344


def table(name):
    lines = (Path(__file__).parent / "data" / name).read_text("utf-8").splitlines()
    return list(csv.DictReader(line for line in lines if not line.startswith("#")))


LOADS = table("tyre_load_index.csv")
CARS = table("car_rolling_1990.csv")


class TestLoadIndex:
    def test_as_printed(self):
        assert [int(row["index"]) for row in LOADS] == list(range(131))
        found = physics.load_index_mass(np.arange(131))
        np.testing.assert_array_equal(found, [float(row["printed"]) for row in LOADS])

    def test_steps_are_preferred_numbers_but_for_four(self):
        """ISO 3:1973, series R80."""
        found = physics.load_index_mass(np.arange(131))
        preferred = np.array([float(row["r80"]) for row in LOADS])
        assert np.flatnonzero(found != preferred).tolist() == [35, 61, 115, 117]
        np.testing.assert_allclose(found, preferred, rtol=9e-3)

    def test_is_a_geometric_series(self):
        """The theoretical values of ISO 3:1973, which the preferred numbers miss by up to 1.3 %."""
        theory = 10 ** ((np.arange(131) + 132) / 80)
        np.testing.assert_allclose(physics.load_index_mass(np.arange(131)), theory, rtol=1.3e-2)

    @pytest.mark.parametrize("index", [-1, 131, 12.5, float("nan")])
    def test_nothing_outside(self, index):
        assert np.isnan(physics.load_index_mass(index))


# Table of a chain of tyre shops, km/h; complete.
SPEEDS = {
    "A1": 5, "A2": 10, "A3": 15, "A4": 20, "A5": 25, "A6": 30, "A7": 35, "A8": 40, "B": 50, "C": 60,
    "D": 65, "E": 70, "F": 80, "G": 90, "J": 100, "K": 110, "L": 120, "M": 130, "N": 140, "P": 150,
    "Q": 160, "R": 170, "S": 180, "T": 190, "U": 200, "H": 210, "V": 240, "W": 270, "Y": 300,
}  # fmt: skip


@pytest.mark.parametrize(("symbol", "limit"), SPEEDS.items())
def test_speed_symbol(symbol, limit):
    assert physics.speed_symbol_limit(symbol) * 3.6 == pytest.approx(limit, rel=1e-14)


@pytest.mark.parametrize("symbol", ["", "I", "O", "X", "h", "A9", "A", "ZR"])
def test_no_other_symbol(symbol):
    with pytest.raises(ValueError, match="speed symbol"):
        physics.speed_symbol_limit(symbol)


# Worked on a tyre maker's page on motorcycle sidewall markings, mm.
MAKER = [("120/100-18", 697.2), ("120/90-18", 673.2), ("120/80-18", 649.2)]
# A motorcycle tyre shop's chart: diameter and circumference, whole mm.
SHOP = [
    ("120/70-17", 600, 1883),
    ("125/70-17", 607, 1905),
    ("160/60-17", 624, 1959),
    ("180/55-17", 630, 1977),
    ("180/60-17", 648, 2034),
    ("190/50-17", 622, None),
]


class TestDiameter:
    @pytest.mark.parametrize(("size", "diameter"), MAKER)
    def test_of_a_tyre_maker(self, size, diameter):
        assert physics.tyre_code(size)["diameter"] * 1e3 == pytest.approx(diameter, abs=0.05)

    @pytest.mark.parametrize(("size", "diameter", "circumference"), SHOP)
    def test_of_a_tyre_shop(self, size, diameter, circumference):
        # The shop rounds the diameter to whole millimetres and takes the rim for 432 mm.
        found = physics.tyre_code(size)["diameter"] * 1e3
        assert found == pytest.approx(diameter, abs=0.8)
        if circumference:
            assert np.pi * found == pytest.approx(circumference, abs=2.5)

    def test_inch_sections_are_as_high_as_wide(self):
        """The same maker: 3.50 x 18 is 3.50 in wide and tall, 4.10 x 19 is 4.10 in wide and 90 % of
        it tall, 4.25/85-18 is 3.6 in tall."""
        assert physics.tyre_code("3.50 x 18")["diameter"] / 25.4e-3 == pytest.approx(25)
        assert physics.tyre_code("4.10 x 19")["aspect"] == 0.90
        code = physics.tyre_code("4.25/85-18")
        assert (code["diameter"] - code["rim"]) / 2 / 25.4e-3 == pytest.approx(3.6, abs=0.05)

    def test_of_a_worked_page(self):
        """215/65 R15: radius 330.25 mm; 1991 mm around with a factor of 0.96 and 3.14 for pi."""
        assert physics.rolling_radius("215/65 R15", 1.0) * 1e3 == pytest.approx(330.25, abs=5e-3)
        around = 2 * 3.14 * physics.rolling_radius("215/65 R15", 0.96)
        assert around * 1e3 == pytest.approx(1991, abs=0.5)


class TestRollingRadius:
    """Engine revolutions per mile in top gear, Consumer Reports 1990: what tyres really rolled."""

    def errors(self):
        rolled = np.array(
            [MILE * float(row["ratio"]) / float(row["revolutions_per_mile"]) for row in CARS]
        )
        said = np.array([2 * np.pi * physics.rolling_radius(row["size"]) for row in CARS])
        return said / rolled - 1

    def test_is_right_on_average(self):
        assert abs(np.median(self.errors())) < 4e-3

    def test_errs_by_little(self):
        errors = abs(self.errors())
        assert np.median(errors) < 1.5e-2
        assert np.mean(errors < 3e-2) >= 0.9

    def test_scatters_as_its_default_says(self):
        # The default's standard deviation is 0.015 on 0.969.
        assert 0.5 * 0.0155 < np.std(self.errors()) < 1.2 * 0.0155

    @pytest.mark.parametrize(("size", "revolutions"), [("185/70-13", 881), ("185/60-13", 954)])
    def test_of_a_tyre_data_book(self, size, revolutions):
        """Revolutions per mile out of a tyre data book, quoted by a kit-car builder."""
        rolled = MILE / revolutions / (2 * np.pi)
        assert physics.rolling_radius(size) == pytest.approx(rolled, rel=2 * 0.0155)


class TestTraction:
    """Problem 16.6: friction 0.80, wheelbase 2.5 m, centre of gravity 0.5 m high and 1 m behind the
    front axle; 7.85, 3.74 and 4.06 m/s2 with all, rear and front wheels driven."""

    @pytest.mark.parametrize(
        ("axle", "share", "acceleration"),
        [("all", 1.0, 7.85), ("rear", 0.4, 3.74), ("front", 0.6, 4.06)],
    )
    def test_acceleration(self, axle, share, acceleration):
        thrust = physics.traction_limit(1500 * 9.81, 0.80, share, 0.5 / 2.5, axle)
        assert thrust / 1500 == pytest.approx(acceleration, abs=5e-3)

    @pytest.mark.parametrize(
        ("axle", "share", "angle"),
        [("rear", 0.875 / 2.675, 10.18), ("front", 1.8 / 2.675, 17.17), ("all", 1.0, 26.57)],
    )
    def test_steepest_slope(self, axle, share, angle):
        """A statics problem worked by two people on a physics forum (2009): friction 0.5, wheelbase
        2.675 m, centre of gravity 0.475 m high and 0.875 m behind the front axle; at constant speed
        the thrust over the weight across the road is the slope."""
        grade = physics.traction_limit(1.0, 0.5, share, 0.475 / 2.675, axle)
        assert np.degrees(np.arctan(grade)) == pytest.approx(angle, abs=6e-3)

    def test_without_weight_transfer(self):
        """A worked answer of a tutor: 48 % on the drive wheels, friction 0.60, 2.82 m/s2."""
        assert physics.traction_limit(9.8, 0.60, 0.48, 0.0) == pytest.approx(2.82, abs=5e-3)
