"""Every test here notes what it compares; `--evidence` makes docs/evidence.md of the notes."""

from pathlib import Path

import pytest

from evidence.notes import Notes, watching
from evidence.page import write

HERE = Path(__file__).parent
NOTES = pytest.StashKey()


def pytest_addoption(parser):
    parser.addoption("--evidence", action="store_true", help="write docs/evidence.md")


def pytest_configure(config):
    config.stash[NOTES] = config.evidence = Notes()


def pytest_deselected(items):
    """Only those that stand here: elsewhere a file may be called the same."""
    for item in items:
        if item.path.parent == HERE:
            item.config.evidence.left_out.add(item.path.stem)


@pytest.fixture(autouse=True)
def evidence(request, monkeypatch):
    """The check that this test belongs to: `evidence.at_most(...)` holds a bound and notes it."""
    check = request.config.evidence.of(request.node)
    if not check.drawn:
        monkeypatch.setattr(pytest, "approx", watching(pytest.approx, check))
    return check


@pytest.fixture
def distribution(request):
    """Keeps relative errors for a plot: `distribution(plot, part, errors, within=0.08)`."""
    return request.config.evidence.distribution


def pytest_sessionfinish(session, exitstatus):
    if session.config.getoption("--evidence") and exitstatus == pytest.ExitCode.OK:
        write(session.config.evidence)
