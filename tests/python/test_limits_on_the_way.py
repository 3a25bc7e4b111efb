"""Where limits are passed on the way up, and what the class of a belt bears."""

from pathlib import Path

import pytest

import windwall as ww


@pytest.fixture(scope="module")
def streamliner():
    return ww.load(Path(__file__).parents[2] / "scenarios/lakebed_streamliner.json")


def passed(car):
    return {one.address: one for one in car.top_speed().passed}


def test_a_limit_is_first_passed_where_its_bound_is_met(streamliner):
    """And not at the next place on the way that was solved."""
    slippery = streamliner.set({"body/drag_area": "0.12 m2"})
    rated = passed(slippery)["road/speed"]
    assert rated.worst > 1.05 * rated.max
    assert rated.first == pytest.approx(rated.max, rel=1e-9)
    assert rated.road_speed == pytest.approx(rated.max, rel=1e-9)


def test_a_belt_that_nobody_rated_has_the_limit_of_its_class(streamliner):
    hot = streamliner.set({"driveline/variator/to_air": "25 W/K"})
    assert passed(hot)["variator/temperature"].max == pytest.approx(273.15 + 110)
    rated = hot.set({"driveline/variator/glaze_temperature": "140 degC"})
    assert passed(rated)["variator/temperature"].max == pytest.approx(273.15 + 140)
    assert "variator/temperature" not in passed(streamliner)
    assert "variator/temperature" not in streamliner.unrated
