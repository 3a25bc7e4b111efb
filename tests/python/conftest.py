"""A small vehicle that the tests change as they like, and the command as people start it."""

import copy
import json
import os
import shutil
import signal
import subprocess
import sys

import pytest

import windwall as ww
from python.samples import DOCUMENT
from python.studies import INPUTS, READ


@pytest.fixture
def document():
    """The file as dicts and lists, to be changed."""
    return copy.deepcopy(DOCUMENT)


@pytest.fixture
def seen(document):
    """A scenario in which something else was observed."""

    def make(*observed):
        document["observed"] = list(observed)
        return ww.loads(json.dumps(document))

    return make


@pytest.fixture(scope="session")
def car():
    return ww.loads(json.dumps(DOCUMENT))


@pytest.fixture(scope="session")
def best(car):
    return car.top_speed()


@pytest.fixture(scope="session")
def ranking(car):
    return ww.rank(car, progress=False)


@pytest.fixture(scope="session")
def swept_grid(car):
    """A sweep as it is without anything that might happen to it."""
    return ww.sweep(car, INPUTS, READ, progress=False)


@pytest.fixture(scope="session")
def stuck():
    """A vehicle that no gear moves: the road is too steep."""
    return ww.loads(json.dumps(DOCUMENT)).set({"goal/grade": "20 %", "body/mass": "2000 kg"})


@pytest.fixture
def file(tmp_path, document):
    path = tmp_path / "car.json"
    path.write_text(json.dumps(document, ensure_ascii=False, indent=1), encoding="utf-8")
    return path


@pytest.fixture
def heeds_interrupts():
    """For a process that is sent one: shells start what they put behind `&` deaf to them."""
    before = signal.signal(signal.SIGINT, signal.default_int_handler)
    yield
    signal.signal(signal.SIGINT, before)


@pytest.fixture
def windwall():
    """Runs the command in a process of its own."""

    def run(*arguments, **options):
        return subprocess.run(
            [sys.executable, "-m", "windwall", *map(str, arguments)],
            capture_output=True,
            text=True,
            encoding="utf-8",
            timeout=100,
            env=os.environ | {"PYTHONIOENCODING": "utf-8"},
            check=False,
            **options,
        )

    return run


@pytest.fixture
def small_disk(tmp_path):
    """A disk with little room."""
    place = tmp_path / "disk"
    place.mkdir()
    mount = ["mount", "-t", "tmpfs", "-o", "size=512k", "tmpfs", str(place)]
    if (
        os.geteuid()
        or shutil.which("mount") is None
        or subprocess.run(mount, check=False).returncode
    ):
        pytest.skip("no small disk can be made here")
    yield place
    subprocess.run(["umount", str(place)], check=True)
