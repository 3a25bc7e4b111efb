"""Files changed, compared and looked up; pictures and tables."""

import json
import re
from pathlib import Path

import numpy as np
import pytest

import windwall as ww

CAR = "scenarios/airfield_cyclecar.json"


def test_an_entry_is_set_and_written(windwall, tmp_path):
    new = tmp_path / "new.json"
    said = windwall("set", CAR, "body/mass=340 ± 4 kg", "goal/grade=1 %", "-o", new)
    assert said.returncode == 0
    assert "348 kg -> 340 kg" in said.stdout
    changed = ww.load(new)
    assert (changed.get("body/mass"), changed.sigma("body/mass")) == (340, 4)
    assert changed.get("goal/grade") == pytest.approx(0.01)


def test_without_a_name_the_file_is_printed(windwall):
    text = windwall("set", CAR, "body/mass=340 kg").stdout
    assert ww.loads(text).get("body/mass") == 340


@pytest.mark.parametrize(
    ("change", "said"), [("body/masss=3 kg", "did you mean"), ("body/mass", 'an address, "="')]
)
def test_a_wrong_change_is_told(windwall, change, said):
    told = windwall("set", CAR, change)
    assert told.returncode == 2
    assert said in told.stderr


def test_files_that_differ_in_units_only_do_not_differ(windwall, tmp_path):
    document = json.loads(Path(CAR).read_text(encoding="utf-8"))
    document["body"]["mass"] = "348000 ± 5000 g"
    document["day"]["temperature"] = "306.15 ± 1 K"
    document["units"], document["title"] = "us", "The same"
    other = tmp_path / "same.json"
    other.write_text(json.dumps(document))
    said = windwall("compare", CAR, other)
    assert said.returncode == 0
    assert "Nothing differs" in said.stdout
    assert json.loads(windwall("compare", CAR, other, "--json").stdout)["differences"] == []


def test_every_entry_that_differs_is_named_with_what_it_does(windwall, tmp_path):
    document = json.loads(Path(CAR).read_text(encoding="utf-8"))
    document["body"]["mass"] = "338 ± 5 kg"
    document["body"]["rolling_resistance"] = "180e-4 ± 20e-4"  # the same, typed otherwise
    document["charge_path"][2]["drive_ratio"] = 1.5
    del document["driveline"][1]["capacity"]
    document["charge_path"][1]["bore"] = "31 mm"
    other = tmp_path / "other.json"
    other.write_text(json.dumps(document))
    found = json.loads(windwall("compare", CAR, other, "--json").stdout)
    by_address = {one["address"]: one for one in found["differences"]}
    assert set(by_address) == {
        "body/mass",
        "charge_path/throttle/bore",
        "charge_path/blower/drive_ratio",
        "driveline/clutch/capacity",
    }
    assert by_address["driveline/clutch/capacity"]["after"] is None
    alone = ww.load(CAR).set({"charge_path/blower/drive_ratio": 1.5}).brief_top_speed()
    change = by_address["charge_path/blower/drive_ratio"]["change"]
    assert change == pytest.approx(alone.goal_speed - found["speed"], rel=1e-9)
    assert found["other_speed"] == pytest.approx(ww.load(other).top_speed().goal_speed)


def test_what_cannot_be_alone_says_why(windwall, tmp_path):
    document = json.loads(Path(CAR).read_text(encoding="utf-8"))
    rated = document["engine"]["rated"]
    del rated["torque"], rated["torque_speed"]
    other = tmp_path / "other.json"
    other.write_text(json.dumps(document))
    text = " ".join(windwall("compare", CAR, other).stdout.split())
    assert "engine/rated/torque: 43 N m -> nothing: not alone, since" in text


def test_every_kind_and_key_is_listed(windwall):
    found = json.loads(windwall("kinds", "--json").stdout)
    names = {one["name"] for one in found}
    assert {"bypass", "positive_blower", "cylinder", "gearbox", "body", "day", "leak"} <= names
    bypass = next(one for one in found if one["name"] == "bypass")
    assert next(key for key in bypass["keys"] if key["name"] == "area")["needed"]
    text = windwall("kinds", "bypass").stdout
    assert text.startswith("bypass, of charge_path")
    assert "area (needed)" in text
    assert windwall("kinds", "bypas").returncode == 2
    assert 'did you mean "bypass"' in windwall("kinds", "bypas").stderr


def test_units_of_kinds(windwall):
    metric, foreign = windwall("kinds", "body"), windwall("kinds", "body", "--units", "us")
    assert windwall("kinds", "body", "--units", "metric").stdout == metric.stdout
    assert 'From 20 to 5000 kg. Such as "320 kg"' in " ".join(metric.stdout.split())
    assert "From 44.1 to 11023 lb" in " ".join(foreign.stdout.split())
    assert not re.search(r"\d kg", foreign.stdout)
    keys = json.loads(windwall("kinds", "body", "--units", "us", "--json").stdout)[0]["keys"]
    assert next(one for one in keys if one["name"] == "mass")["example"].endswith(" lb")
    told = windwall("kinds", "--units", "imperial")
    assert told.returncode == 2
    assert "'metric', 'us'" in told.stderr


def test_units_of_the_schema(windwall, tmp_path):
    def mass(*units):
        made = json.loads(windwall("schema", *units).stdout)
        return json.dumps(made["properties"]["body"]["properties"]["mass"])

    assert mass("--units", "metric") == mass()
    assert re.search(r"\d kg", mass())
    assert re.search(r"\d lb", mass("--units", "us"))
    assert not re.search(r"\d kg", mass("--units", "us"))
    path = tmp_path / "schema.json"
    assert windwall("schema", "--units", "us", "--output", path).returncode == 0
    assert json.loads(path.read_text("utf-8")) == json.loads(
        windwall("schema", "--units", "us").stdout
    )
    assert windwall("schema", "--units", "imperial").returncode == 2


def test_units_of_one_answer(windwall):
    metric = windwall("speed", CAR).stdout
    foreign = windwall("speed", CAR, "--units", "us").stdout
    assert "mph" in foreign
    assert "km/h" not in foreign
    assert "mph" not in metric
    as_file = windwall("speed", CAR, "--units", "metric").stdout
    assert as_file == metric


def test_a_grid_is_tabulated_in_the_units_of_the_file(windwall):
    grid = ("--vary", "body/mass", "330 kg", "350 kg", "--read", "manifold/boost")
    found = json.loads(windwall("sweep", CAR, *grid, "--json").stdout)
    car = ww.load(CAR)
    speeds = [car.set({"body/mass": f"{m} kg"}).top_speed().goal_speed for m in (330, 350)]
    assert [one["speed"] for one in found["variants"]] == pytest.approx(speeds, rel=1e-9)
    text = windwall("sweep", CAR, *grid).stdout
    assert "speed, km/h" in text
    assert f"{speeds[0] * 3.6:.2f}" in text
    assert windwall("sweep", CAR, "--vary", "body/masss", "3 kg").returncode == 2


@pytest.mark.parametrize("what", ["force", "accounts", "drive"])
def test_a_picture_is_written(windwall, tmp_path, what):
    new = tmp_path / f"{what}.svg"
    assert windwall("plot", CAR, what, "-o", new).returncode == 0
    assert new.read_text(encoding="utf-8").lstrip().startswith("<?xml")
    png = tmp_path / "it.png"
    if what == "force":
        import matplotlib.image

        assert windwall("plot", CAR, what, "-o", png).returncode == 0
        assert np.ptp(matplotlib.image.imread(png)) > 0.5  # something is drawn
        assert windwall("plot", CAR, what, "-o", tmp_path / "it.txt").returncode == 2


def test_a_sweep_is_drawn_of_what_is_varied(windwall, tmp_path):
    new = tmp_path / "it.svg"
    asked = ("--vary", "body/mass", "330 kg", "350 kg")
    assert windwall("plot", CAR, "sweep", *asked, "-o", new, "--units", "us").returncode == 0
    assert "Body mass, lb" in new.read_text(encoding="utf-8")
    nothing = windwall("plot", CAR, "map", "-o", new)
    assert nothing.returncode == 2
    assert "name what is varied" in nothing.stderr


def test_every_picture_is_a_function_and_stands_in_the_docs():
    from windwall.cli.pictures import PICTURES

    told = Path("docs/command_line.md").read_text(encoding="utf-8")
    section = told.partition("## plot")[2].partition("## ")[0]
    for what, picture in PICTURES.items():
        assert callable(getattr(ww.plot, picture.plot))
        assert f"`{what}`" in section
        assert f"{picture.plot}(" in section
