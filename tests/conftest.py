"""Counts what was held against the outside; a missing oracle fails where everything must run."""

import importlib
import os
from collections import Counter

import pytest
from hypothesis import settings

EVERYTHING_MUST_RUN = os.environ.get("CI", "").lower() in {"1", "true", "yes"}
NOT_INSTALLED = "could not import"  # how pytest words a skip of importorskip

settings.register_profile("here", deadline=None)
settings.register_profile("repeatable", deadline=None, derandomize=True)
settings.load_profile("repeatable" if EVERYTHING_MUST_RUN else "here")


@pytest.fixture(scope="session")
def oracle():
    """A library to be held against, by name: `CP = oracle("CoolProp.CoolProp")`."""

    def import_or_skip(name):
        try:
            return importlib.import_module(name)
        except ImportError as missing:
            reason = f"{NOT_INSTALLED} {name!r}: {missing}"
        if EVERYTHING_MUST_RUN:
            pytest.fail(reason)
        return pytest.skip(reason)

    return import_or_skip


@pytest.fixture(scope="session")
def today():
    """The answers of a scenario by its name, each solved once in a session."""
    from functools import cache

    from regression.compare_answers import Today

    return cache(Today)


def pytest_configure(config):
    config.pluginmanager.register(Tally(), "windwall-tally")


def kind_of(item):
    """What a passed test is worth; a constant from memory takes the proof out of any other mark."""
    for kind in ("memory", "published", "worked"):
        if item.get_closest_marker(kind):
            return kind
    return "other"


class Tally:
    """Passed tests by what they are worth, and what was skipped for want of a library."""

    def __init__(self):
        self.kinds = {}
        self.passed = Counter()
        self.skipped = 0
        self.missing = []

    def pytest_collection_modifyitems(self, items):
        # Keywords would not do: they hold the names of folders too.
        self.kinds = {item.nodeid: kind_of(item) for item in items}

    def pytest_runtest_logreport(self, report):
        if report.skipped:
            self.note_skip(report)
        elif report.when == "call" and report.passed:
            self.passed[self.kinds[report.nodeid]] += 1

    def pytest_collectreport(self, report):
        if report.skipped:
            self.note_skip(report)

    def note_skip(self, report):
        self.skipped += 1
        reason = str(report.longrepr)
        if NOT_INSTALLED in reason:
            self.missing.append(f"{report.nodeid}: {reason}")

    @pytest.hookimpl(trylast=True)
    def pytest_sessionfinish(self, session):
        went_well = session.exitstatus in {pytest.ExitCode.OK, pytest.ExitCode.NO_TESTS_COLLECTED}
        if EVERYTHING_MUST_RUN and self.missing and went_well:
            session.exitstatus = pytest.ExitCode.TESTS_FAILED

    def pytest_terminal_summary(self, terminalreporter):
        passed = self.passed
        terminalreporter.write_line(
            f"outside {passed['published']}, worked {passed['worked']}, "
            f"from memory {passed['memory']} (marked, not proof), skipped {self.skipped}"
        )
        if EVERYTHING_MUST_RUN:
            for line in self.missing:
                terminalreporter.write_line(f"FAILED, an oracle is missing: {line}", red=True)
