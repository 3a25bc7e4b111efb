"""The line of counts tells the truth, and a missing oracle fails where everything must run."""

import os
import subprocess
import sys
from pathlib import Path

import pytest

TESTS = Path(__file__).parents[1]
EXAMPLE = """
import pytest

@pytest.mark.published
@pytest.mark.parametrize("x", [1, 2])
def test_outside(x): pass

@pytest.mark.published
@pytest.mark.memory
def test_remembered(): pass

@pytest.mark.worked
def test_worked(): pass

@pytest.mark.worked
def test_wrong(): assert not {wrong}

def test_plain(): pass

def test_library(oracle): oracle({library!r})
"""
SETTINGS = """
[pytest]
markers =
    published: outside
    worked: two ways
    memory: remembered
"""


@pytest.fixture
def outcome(tmp_path):
    def run(library="json", wrong=False, ci="true", text=EXAMPLE):
        (tmp_path / "conftest.py").write_text((TESTS / "conftest.py").read_text("utf-8"), "utf-8")
        (tmp_path / "pytest.ini").write_text(SETTINGS, "utf-8")
        folder = tmp_path / "published"  # a folder's name is no mark
        folder.mkdir()
        (folder / "test_it.py").write_text(text.format(library=library, wrong=wrong), "utf-8")
        done = subprocess.run(
            [sys.executable, "-m", "pytest", "-p", "no:cacheprovider"],
            cwd=tmp_path,
            env=os.environ | {"CI": ci, "PYTEST_ADDOPTS": ""},
            capture_output=True,
            text=True,
            check=False,
        )
        return done.returncode, done.stdout

    return run


def test_counts(outcome):
    code, text = outcome()
    assert code == 0
    assert "outside 2, worked 2, from memory 1 (marked, not proof), skipped 0" in text


def test_a_failed_test_is_not_counted(outcome):
    code, text = outcome(wrong=True)
    assert code == 1
    assert "outside 2, worked 1, from memory 1" in text


def test_a_missing_oracle_fails_where_everything_must_run(outcome):
    code, text = outcome(library="no_such_library")
    assert code == 1
    assert "could not import 'no_such_library'" in text


def test_a_missing_oracle_is_skipped_and_counted_elsewhere(outcome):
    code, text = outcome(library="no_such_library", ci="")
    assert code == 0
    assert "skipped 1" in text


def test_a_module_skipped_for_want_of_an_oracle_fails_too(outcome):
    code, text = outcome(text="import pytest\npytest.importorskip('no_such_library')\n" + EXAMPLE)
    assert code == 1
    assert "an oracle is missing" in text
