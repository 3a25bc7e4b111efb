"""What is packed: a wheel has all that the package reads, an sdist all that a build reads, and a
build that lacks a library says so in one sentence.
"""

import os
import re
import shutil
import subprocess
import sys
import tarfile
import zipfile
from pathlib import Path

import pytest

from windwall import _core

ROOT = Path(__file__).parents[2]
PACKAGE = ROOT / "python/windwall"
MADE_HERE = {".so", ".pyd", ".pyc", ".wasm"}  # by a compiler, where there is one

pytestmark = [pytest.mark.slow, pytest.mark.timeout(300)]


def packed(what, folder, settings):
    """The file that the build of the package makes, without compiling anything."""
    pytest.importorskip("scikit_build_core")
    ask = f"from scikit_build_core.build import *; print(build_{what}({str(folder)!r}, {settings}))"
    said = subprocess.run(
        [sys.executable, "-c", ask], cwd=ROOT, capture_output=True, text=True, timeout=250
    )
    assert said.returncode == 0, said.stderr
    return folder / said.stdout.splitlines()[-1]


@pytest.fixture(scope="module")
def wheel(tmp_path_factory):
    folder = tmp_path_factory.mktemp("wheel")
    return packed("wheel", folder, {"wheel.cmake": "false", "build-dir": str(folder / "build")})


@pytest.fixture(scope="module")
def unpacked_sdist(tmp_path_factory):
    folder = tmp_path_factory.mktemp("sdist")
    with tarfile.open(packed("sdist", folder, {})) as made:
        made.extractall(folder, filter="data")
    return next(folder.glob("windwall-*/"))


def files_of_the_package():
    for path in PACKAGE.rglob("*"):
        if path.is_file() and path.suffix not in MADE_HERE:
            yield path.relative_to(PACKAGE.parent).as_posix()


def test_a_wheel_has_every_file_of_the_package(wheel):
    names = set(zipfile.ZipFile(wheel).namelist())
    assert set(files_of_the_package()) - names == set()
    wanted = {"py.typed", "_core/__init__.pyi", "report/page/page.html", "report/live/core.js"}
    assert {f"windwall/{name}" for name in wanted} <= names
    assert any(name.endswith("licenses/LICENSE") for name in names)
    core = PACKAGE / "report/live/core.wasm"  # ignored by git, packed where it was made
    assert core.exists() == ("windwall/report/live/core.wasm" in names)


def test_what_is_installed_runs_far_from_the_checkout(wheel, tmp_path):
    """Nothing leads back to the checkout: `-S` leaves out what an editable install hooks in."""
    site = tmp_path / "site"
    zipfile.ZipFile(wheel).extractall(site)
    shutil.copy(_core.__file__, site / "windwall")
    shutil.copy(ROOT / "scenarios/village_microcar.json", tmp_path / "mine.json")
    environment = os.environ | {"PYTHONPATH": os.pathsep.join([str(site), *filter(None, sys.path)])}

    def run(*command):
        done = subprocess.run(
            [sys.executable, "-S", *command],
            cwd=tmp_path,
            env=environment,
            capture_output=True,
            text=True,
            timeout=200,
        )
        assert done.returncode == 0, done.stderr
        return done.stdout

    assert run("-c", "import windwall as ww; print(ww.__file__)").startswith(str(site))
    assert "balance speed" in run("-m", "windwall", "speed", "mine.json")
    run("-m", "windwall", "report", "mine.json", "-o", "page.html")
    assert "</html>" in (tmp_path / "page.html").read_text("utf-8")


def test_an_sdist_has_all_that_a_build_reads_and_no_more(unpacked_sdist):
    there = {
        path.relative_to(unpacked_sdist).as_posix()
        for path in unpacked_sdist.rglob("*")
        if path.is_file()
    }
    sources = {path.relative_to(ROOT).as_posix() for path in (ROOT / "cpp").rglob("*.[chi]*")}
    assert sources | {f"python/{name}" for name in files_of_the_package()} <= there
    assert {"CMakeLists.txt", "pyproject.toml", "LICENSE", "README.md", "PKG-INFO"} <= there
    assert not {name for name in there if re.match(r"tests/|notebooks/|build/|\.venv|\.ci/", name)}
    assert not {name for name in there if name.endswith((".so", ".pyc"))}


@pytest.mark.parametrize(
    "missing, package",
    [
        ("Eigen3", "libeigen3-dev"),
        ("Boost", "libboost-dev"),
        ("nlohmann_json", "nlohmann-json3-dev"),
    ],
)
def test_a_missing_library_is_said_in_one_sentence(missing, package, unpacked_sdist, tmp_path):
    if not shutil.which("cmake"):
        pytest.skip("there is no cmake here")
    command = ["cmake", "-S", unpacked_sdist, "-B", tmp_path, "-DWINDWALL_PYTHON=OFF"]
    done = subprocess.run(
        [*command, f"-DCMAKE_DISABLE_FIND_PACKAGE_{missing}=ON"],
        capture_output=True,
        text=True,
        timeout=100,
    )
    said = " ".join(done.stderr.split())
    assert done.returncode != 0
    sentence = rf"windwall needs {missing}[ 0-9.]*: on Debian, apt-get install {package}\."
    assert re.search(sentence, said)
    assert said.count("CMake Error") == 1
