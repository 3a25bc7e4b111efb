"""Tables for pandas, with their units."""

import numpy as np
import pytest


def test_the_curve_has_a_column_for_each_result(car):
    curve = car.full_throttle_curve(points=12)
    assert len(curve) == 4 * 12
    assert list(curve["gear"].unique()) == [1, 2, 3, 4]
    assert curve.attrs["units"]["manifold/boost"] == "Pa"
    assert curve.attrs["long_name"]["road/thrust"].startswith("Thrust")
    assert (curve["status"] == "solved").all()
    one = curve[curve["gear"] == 3]
    assert (np.diff(one["engine/speed"]) > 0).all()


def test_one_gear_is_the_same_as_that_gear_of_all(car):
    everything = car.full_throttle_curve(points=8)
    third = car.full_throttle_curve(gear=3, points=8)
    same = everything[everything["gear"] == 3].reset_index(drop=True)
    for column in ("road/thrust", "engine/torque", "manifold/boost"):
        assert third[column].to_numpy() == pytest.approx(same[column].to_numpy(), rel=1e-6)


def test_the_gears_of_the_vehicle_are_counted_from_one(car):
    for gear in (0, 5):
        with pytest.raises(ValueError, match="gears 1 to 4"):
            car.full_throttle_curve(gear=gear)


def test_gains_are_a_frame(ranking):
    table = ranking.table
    assert list(table.index) == ["intercooler", "small_pulley", "fairing"]
    assert table.attrs["units"]["alone_middle"] == "m/s"
    assert table.loc["fairing", "alone_middle"] == ranking.upgrades["fairing"].alone[1]
