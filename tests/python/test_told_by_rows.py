"""Whatever a scenario tells is told by rows: its keys are those of the rows, below a list too."""

import json

import pytest

import windwall as ww
from python.samples import DOCUMENT
from python.test_design import RATED
from windwall import _core

ROWS = _core.scenario_rows()


@pytest.fixture(scope="module")
def core():
    engine = {**DOCUMENT["engine"], "design": {"duty": "road"}, "rated": RATED}
    return ww.loads(json.dumps({**DOCUMENT, "engine": engine})).core


def told(core, what):
    found = _core.class_priors() if what == "class_priors" else getattr(_core, what)(core)
    return found if isinstance(found, list) else [found]


def hold(entry, rows):
    assert list(entry) == list(rows)
    for key, row in rows.items():
        assert row["sentence"]
        for below in entry[key] if "rows" in row else []:
            hold(below, row["rows"])


@pytest.mark.parametrize("what", list(ROWS))
def test_everything_that_is_told_has_a_row(core, what):
    entries = told(core, what)
    assert entries
    for entry in entries:
        hold(entry, ROWS[what]["rows"])


def test_lists_inside_are_looked_at(core):
    (value, *_) = [one for one in _core.class_values(core) if one["narrowed"]]
    assert set(value["narrowed"][0]) == {"word", "sigma"}
    assert _core.rated_fit(core)["inputs"]


def test_an_upgrade_says_what_its_rows_say(car):
    for key, one in car.upgrades.items():
        assert one.id == key
        assert list(one) == list(ROWS["menu"]["rows"])
