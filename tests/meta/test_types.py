"""What type checkers are told: of the compiled core what it has, of the package what is true."""

import os
import subprocess
import sys
import tomllib
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
MODULES_LEFT = 41
STUBS = ROOT / "python/windwall/_core"

SCRIPT = """
import windwall as ww

car: ww.Scenario = ww.load("car.json")
best = car.top_speed()
reached: bool = best.answered
sentence: str = best.sentence
lighter = car.set({"body/mass": "330 kg"}).install("cooler")
ranking: ww.Ranking = ww.rank(lighter, budget="500 EUR")
drag: float = ww.physics.air_drag(0.5, 1.2, 40.0)
flags: str = ww.build_info()["flags"]
try:
    ww.loads("{}")
except ww.ScenarioError as wrong:
    problems: list[ww.Problem] = wrong.problems
"""
WRONG = """
import windwall as ww

ww.load(3)
ww.load("car.json").top_sped()
ranking: ww.Ranking = ww.rank(ww.load("car.json"), by="goal")
number: int = ww.load("car.json").top_speed().sentence
"""


def mypy(*arguments, cache):
    done = subprocess.run(
        [sys.executable, "-m", "mypy", f"--cache-dir={cache}", "--no-error-summary", *arguments],
        cwd=ROOT,
        env=os.environ | {"MYPYPATH": str(ROOT / "python")},
        capture_output=True,
        text=True,
        timeout=900,
        check=False,
    )
    assert not done.stderr, done.stderr
    return done.stdout.splitlines()


def test_stubs_are_those_of_the_core_that_is_built(oracle, tmp_path):
    oracle("pybind11_stubgen")
    command = [sys.executable, "-m", "pybind11_stubgen", "windwall._core", "--exit-code"]
    subprocess.run([*command, "-o", tmp_path], check=True, capture_output=True, timeout=100)
    made = tmp_path / "windwall/_core"
    names = sorted(path.name for path in made.iterdir())
    assert names == sorted(path.name for path in STUBS.iterdir())
    for name in names:
        same = (made / name).read_text("utf-8") == (STUBS / name).read_text("utf-8")
        assert same, f"{name}: `make stubs` describes the core as it is now"


def test_the_citation_says_what_the_package_says(oracle):
    yaml = oracle("yaml")
    said = yaml.safe_load((ROOT / "CITATION.cff").read_text("utf-8"))
    project = tomllib.loads((ROOT / "pyproject.toml").read_text("utf-8"))["project"]
    assert {"cff-version", "message", "title", "authors"} <= set(said)  # what version 1.2.0 needs
    assert said["title"] == project["name"]
    assert said["version"] == project["version"]
    assert said["license"] == project["license"]
    assert said["authors"] == project["authors"]


def test_modules_with_types_that_are_not_whole_grow_fewer():
    settings = tomllib.loads((ROOT / "pyproject.toml").read_text("utf-8"))["tool"]["mypy"]
    left = next(one["module"] for one in settings["overrides"] if "return-value" in str(one))
    files = [ROOT / "python" / f"{name.replace('.', '/')}.py" for name in left]
    assert all(path.exists() for path in files)
    assert len(left) <= MODULES_LEFT


@pytest.mark.slow
@pytest.mark.timeout(900)
def test_types_of_the_package_and_of_a_script_are_right(oracle, tmp_path):
    oracle("mypy")
    assert mypy(cache=ROOT / ".mypy_cache") == []
    found = {}
    for name, text in (("right", SCRIPT), ("wrong", WRONG)):
        script = tmp_path / f"{name}.py"
        script.write_text(text, "utf-8")
        options = ("--config-file=", "--strict", "--follow-imports=silent")
        found[name] = mypy(*options, str(script), cache=tmp_path / "cache")
    assert found["right"] == []
    errors = [line for line in found["wrong"] if "error:" in line]
    assert [int(line.split("wrong.py:")[1].split(":")[0]) for line in errors] == [4, 5, 6, 7]
