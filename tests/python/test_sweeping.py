"""A grid of variants is what solving them one by one gives."""

import numpy as np
import pytest

import windwall as ww

RATIO = "charge_path/roots/drive_ratio"


@pytest.fixture(scope="module")
def grid(car):
    return ww.sweep(
        car,
        {RATIO: [1.2, 1.5], "body/mass": ["300 kg", 340.0, "800 lb"]},
        ["manifold/boost", "charge_path/roots/outlet/temperature"],
        progress=False,
    )


def test_dimensions_are_called_by_their_last_key(grid):
    assert grid.sizes == {"drive_ratio": 2, "mass": 3}
    as_shown = {"dimension": "plain number", "shown_as": ""}
    assert grid["drive_ratio"].attrs == {"units": "1", "address": RATIO} | as_shown
    assert grid["mass"].attrs["units"] == "kg"
    assert grid["boost"].attrs["units"] == "Pa"
    assert grid["speed"].attrs["units"] == "m/s"
    assert float(grid["mass"][2]) == pytest.approx(362.873896)


def test_each_variant_is_that_vehicle(car, grid):
    for at in ((0, 1), (1, 0), (1, 2)):
        here = grid.isel(drive_ratio=at[0], mass=at[1])
        one = car.set({RATIO: float(here["drive_ratio"]), "body/mass": float(here["mass"])})
        best = one.top_speed()
        assert float(here["speed"]) == best.goal_speed
        assert float(here["balance_speed"]) == best.speed
        assert int(here["gear"]) == best.gear
        assert str(here["status"].values) == best.status
        assert float(here["boost"]) == pytest.approx(best.point.manifold.boost, rel=1e-9)


def test_a_missing_number_is_nan_and_says_why(car):
    steep = ww.sweep(car, {"goal/grade": [0.0, "20 %"], "body/mass": ["2000 kg"]}, progress=False)
    level, hill = steep["status"].values.ravel()
    assert level == "solved"
    assert hill != "solved"
    assert list(np.isnan(steep["speed"].values.ravel())) == [False, True]


def test_keys_that_clash_take_what_stands_before_them(car):
    both = ww.sweep(
        car, {"charge_path/butterfly/bore": ["36 mm"], "engine/bore": ["80 mm"]}, progress=False
    )
    assert set(both.dims) == {"butterfly_bore", "engine_bore"}


def test_a_speed_that_is_swept_does_not_hide_the_answer(car):
    goals = ww.sweep(car, {"goal/speed": ["100 km/h", "150 km/h"]}, progress=False)
    assert set(goals.dims) == {"goal_speed"}
    assert goals["speed"].sizes == {"goal_speed": 2}


def test_wrong_values_are_all_reported(car):
    with pytest.raises(ww.ScenarioError) as caught:
        ww.sweep(car, {"body/mass": ["3 m", "300 kg", 1e9]})
    assert len(caught.value.problems) == 2
    with pytest.raises(ww.ScenarioError, match="did you mean"):
        ww.sweep(car, {"body/mass": [300.0]}, ["manifold/bost"])
    with pytest.raises(ww.ScenarioError, match="only numbers"):
        ww.sweep(car, {"tyres/driven_axle": ["front"]})


def test_a_grid_has_a_size(car):
    with pytest.raises(ValueError, match="at least one"):
        ww.sweep(car, {})
    with pytest.raises(ValueError, match="more than"):
        ww.sweep(car, {"body/mass": [300.0] * 1500, RATIO: [1.3] * 1500})


def test_a_grid_goes_through_a_file(grid, tmp_path):
    """Names and attributes are such that a table of it reads back."""
    frame = grid.to_dataframe()
    path = tmp_path / "grid.csv"
    frame.to_csv(path)
    import pandas as pd

    again = pd.read_csv(path, index_col=[0, 1])
    assert again["speed"].to_numpy() == pytest.approx(frame["speed"].to_numpy(), rel=1e-12)
