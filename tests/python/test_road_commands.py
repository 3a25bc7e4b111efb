"""`windwall coast` and `windwall gearing`, and the driven run that `windwall speed` mentions."""

import json

import pytest

from python.samples import CURVE
from python.test_best_gearing import TEETH, geared
from windwall.cli.main import main
from windwall.errors import NoAnswer
from windwall.study import gearing_search


@pytest.fixture(scope="module")
def car():
    return geared(teeth=36)


@pytest.fixture
def path(tmp_path, car):
    made = tmp_path / "car.json"
    car.save(made)
    return made


def test_rolling_out_is_that_of_the_package(windwall, path, car):
    said = windwall("coast", path, "90 km/h", "30 km/h", "--rows", "5")
    assert (said.returncode, said.stderr) == (0, "")
    found = json.loads(
        windwall("coast", path, "90 km/h", "30 km/h", "--rows", "5", "--json").stdout
    )
    theirs = car.coast_down("90 km/h", "30 km/h", points=5)
    for name in ("time", "distance", "speed"):
        assert found[name] == pytest.approx(list(theirs[name]))
    assert f"{theirs['time'].iloc[-1]:.2f}" in said.stdout


def test_without_a_speed_it_rolls_from_the_fastest(windwall, path, car):
    found = json.loads(windwall("coast", path, "--json").stdout)
    assert found["speed"][0] == pytest.approx(car.top_speed().speed)


def test_wind_and_grade_are_taken(windwall, path):
    there = json.loads(windwall("coast", path, "90 km/h", "--headwind", "3 m/s", "--json").stdout)
    back = json.loads(windwall("coast", path, "90 km/h", "--headwind=-3 m/s", "--json").stdout)
    assert there["time"][-1] < back["time"][-1]
    steep = windwall("coast", path, "90 km/h", "--grade=-10 %")
    assert steep.returncode == 1
    assert "never slows down to 10.0 km/h: at " in steep.stderr
    assert "m/s" not in steep.stderr


def test_speeds_that_do_not_fit_are_told_in_the_units_of_the_file(windwall, path):
    for words, said in (
        (("20 km/h", "90 km/h"), "from_speed: 20.0 km/h is no more than the 90.0 km/h it is to"),
        (("90 km/h", "1 km/h"), "to_speed: 1.00 km/h is below the 1.80 km/h that it may end at"),
        (("90 km/h", "1 km/h", "--units", "us"), "is below the 1.12 mph that it may"),
    ):
        found = windwall("coast", path, *words)
        assert found.returncode == 2
        assert said in found.stderr


def test_what_was_measured_tells_the_vehicle(windwall, path, tmp_path, car):
    """A table that the model itself made gives its own numbers back."""
    run = car.coast_down("100 km/h", "20 km/h", points=41)
    table = tmp_path / "run.csv"
    run[["time", "speed"]].to_csv(table, index=False)
    said = windwall("coast", path, "--table", table, "--speed-unit", "m/s", "--json")
    assert said.returncode == 0, said.stderr
    found = json.loads(said.stdout)
    assert found["drag_area"]["value"] == pytest.approx(car.get("body/drag_area"), rel=1e-3)
    assert "Drag area" in windwall("coast", path, "--table", table, "--speed-unit", "m/s").stdout


def test_a_table_that_is_not_there(windwall, path, tmp_path):
    said = windwall("coast", path, "--table", tmp_path / "none.csv")
    assert said.returncode == 2
    assert "no such file" in said.stderr


def test_gearing_is_that_of_the_package(windwall, path, car):
    import windwall as ww

    theirs = ww.best_gearing(car)
    found = json.loads(windwall("gearing", path, "--json").stdout)
    assert found["best"]["value"] == theirs.best.value
    assert windwall("gearing", path).stdout == theirs.summary() + "\n"


def test_gearing_for_a_time(windwall, path):
    found = json.loads(windwall("gearing", path, "60 km/h", "--reach", "1.1", "--json").stdout)
    assert found["mark"]["speed"] == pytest.approx(60 / 3.6)
    assert found["best"]["time"] <= found["now"]["time"]
    assert windwall("gearing", path, "a mile").returncode == 2
    assert windwall("gearing", path, "--of", "body/nose").returncode == 2


def test_speed_says_where_a_driven_run_ends(windwall, tmp_path, car):
    path = tmp_path / "car.json"
    with_road = car.set({"goal/run_up": "800 m"})
    with_road.save(path)
    theirs = with_road.shortfall()
    said = " ".join(windwall("speed", path).stdout.split())
    assert theirs.sentence in said
    found = json.loads(windwall("speed", path, "--json").stdout)["driven"]
    assert found["driven"] == pytest.approx(theirs.driven)
    assert found["below"] == pytest.approx(theirs.quick - theirs.driven)


def test_a_ranking_says_where_a_driven_run_ends_and_that_it_may_rank_otherwise(
    windwall, tmp_path, car
):
    path = tmp_path / "car.json"
    with_road = car.set({"goal/run_up": "800 m"})
    with_road.save(path)
    theirs = with_road.shortfall()
    said = " ".join(windwall("rank", path).stdout.split())
    assert f"{theirs.sentence} All of this is ranked by the quick speed" in said
    assert said.count("--by driven_speed") == 1
    found = json.loads(windwall("rank", path, "--json").stdout)["driven"]
    assert found["driven"] == pytest.approx(theirs.driven)


def test_a_ranking_says_nothing_of_a_run_nobody_asked_for(windwall, tmp_path):
    path = tmp_path / "car.json"
    path.write_text(json.dumps(CURVE | {"goal": {}}))
    assert "riven" not in windwall("rank", path).stdout
    assert json.loads(windwall("rank", path, "--json").stdout)["driven"] is None


def test_speed_says_nothing_of_a_run_nobody_asked_for(windwall, tmp_path):
    path = tmp_path / "car.json"
    path.write_text(json.dumps(CURVE | {"goal": {}}))
    assert "Driven" not in windwall("speed", path).stdout
    assert json.loads(windwall("speed", path, "--json").stdout)["driven"] is None


def test_speed_says_why_a_run_does_not_get_there(car):
    none = NoAnswer("There is no such time: the engine stalls.", "stalled")
    assert "the engine stalls" in car.top_speed().summary(driven=none)


@pytest.mark.parametrize(
    "words",
    [("60 km/h", "--of", TEETH), ("--of", TEETH, "60 km/h"), ("--reach", "1.02", "60 km/h")],
)
def test_the_mark_may_stand_before_or_behind_an_option(windwall, path, words):
    said = windwall("gearing", path, *words, "--reach", "1.02", "--json")
    assert (said.returncode, said.stderr) == (0, "")
    assert json.loads(said.stdout)["mark"]["speed"] == pytest.approx(60 / 3.6)


def test_what_gears_nothing_is_refused(windwall, path):
    said = windwall("gearing", path, "--of", "body/mass")
    assert said.returncode == 2
    assert "body/mass: only a number that gears the driveline can be tried" in said.stderr


def test_a_search_that_is_interrupted_prints_what_was_tried(path, monkeypatch, capsys):
    driven = gearing_search.standing_start
    left = [2]

    def interrupted(*asked):
        left[0] -= 1
        if left[0] < 0:
            raise KeyboardInterrupt
        return driven(*asked)

    monkeypatch.setattr(gearing_search, "standing_start", interrupted)
    assert main(["gearing", str(path), "60 km/h"]) == 130
    assert "Tried: 2 from 35 to 36" in capsys.readouterr().out
