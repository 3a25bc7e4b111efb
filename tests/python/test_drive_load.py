"""What a drive tells of the engine under load: lean moments, how warm each run was, the clutch."""

import copy
import json

import numpy as np
import pytest

import windwall as ww
from python.samples import DOCUMENT
from python.test_drive_told import fake
from python.two_runs import RUNS, scenario
from windwall.report.wording.drive_load import CAUTIONS
from windwall.report.wording.drive_places import place, when
from windwall.results.drive_load import DRIVE_CAUTIONS, LEANER, mixture, run_ends, under_load

SPRAY = {
    "id": "mist",
    "kind": "evaporative_injection",
    "blend_by": "volume",
    "methanol": "40 %",
    "rated_flow": "45 cm3/min",
    "pump_pressure": "8 bar",
    "starts_at": "2 kPa gauge",
    "fuel_cut": "40 %",
    "delay": "2 s",
    "line_volume": "60 cm3",
}
OUT = {"id": "out", "legs": [{"kind": "full_throttle", "for_distance": "300 m"}]}


def sprayed(**changes):
    """With a nozzle whose line is long, and fuel that is cut while it fills."""
    made = copy.deepcopy(DOCUMENT) | {"outings": [OUT]}
    made["charge_path"].insert(2, SPRAY | changes)
    return ww.loads(json.dumps(made)).drive(progress=False)


CAUTIONED = {"lean": sprayed}


@pytest.fixture(scope="module")
def lean():
    return sprayed()


@pytest.fixture(scope="module")
def drive():
    return scenario(RUNS).drive(progress=False)


def said(drive):
    return " ".join(drive.text().split())


def test_every_caution_has_its_sentence_and_a_drive_that_brings_it_about():
    assert set(CAUTIONS) == set(DRIVE_CAUTIONS) == set(CAUTIONED)
    for word, driven in CAUTIONED.items():
        assert word in {one.about for one in driven().cautions}


def test_the_usual_drive_is_cautioned_of_nothing(drive):
    assert drive.cautions == ()
    assert "Cautions" not in drive.text()
    assert "Lambda 0.88 all the time; the engine's own is 0.88." in said(drive)


def test_a_lean_moment_is_told_with_its_time_and_its_boost(lean):
    (one,) = lean.cautions
    loaded = under_load(lean)
    assert one.found == lean["engine/lambda"][loaded].max() > one.own + LEANER
    at = int(np.searchsorted(lean["time"], one.time))
    assert lean["engine/lambda"][at] == one.found
    assert one.boost == lean["manifold/boost"][at]
    assert 0 < one.first < one.time + 1e-9
    assert 0 < one.lasting < lean["time"][-1]
    assert f"lambda {one.found:.2f} at worst" in said(lean)
    assert "The mixture is lean under load" in said(lean)
    made = lean.to_dict()
    assert made["cautions"][0]["sentence"] == one.sentence
    assert made["units"]["cautions"]["boost"] == "Pa"


def test_richest_and_leanest_are_those_of_the_column_under_load(lean):
    loaded, ran = under_load(lean), mixture(lean)
    column = lean["engine/lambda"][loaded]
    assert ran.leanest.value == pytest.approx(column.max(), abs=1e-4)
    assert ran.richest.value == pytest.approx(column.min(), abs=1e-4)
    assert f"leanest {column.max():.2f}, after" in said(lean)


def test_without_a_cut_nothing_is_lean():
    assert sprayed(fuel_cut="0 %").cautions == ()


def test_a_lean_idle_is_no_load(drive):
    """What is lean while nothing drives is the idle's own affair."""
    made = copy.deepcopy(drive)
    standing = ~under_load(made)
    made.columns["engine/lambda"][standing] = 1.3
    assert made.cautions == ()
    made.columns["engine/lambda"][~standing] = 1.3
    assert len(made.cautions) == 1


def test_of_what_has_no_mixture_nothing_is_said():
    assert mixture(fake()) is None
    assert "Mixture" not in fake().text()


def test_each_run_says_how_warm_it_sets_out_and_comes_in(drive):
    start, end = run_ends(drive, "engine/head/temperature", 2)
    its = drive.runs == 2
    assert start == drive["engine/head/temperature"][its][0]
    assert start < end
    first = run_ends(drive, "engine/head/temperature", 1)
    row = f"head, degC {first[0] - 273.15:.0f} to {first[1] - 273.15:.0f} {start - 273.15:.0f} to"
    assert row in said(drive)
    for name in ("roots case, degC", "charge, degC", "spark late, deg"):
        assert name in drive.text()
    assert "e-3" not in drive.text()


def test_the_clutch_of_both_runs_takes_what_the_account_says(drive):
    row = next(one for one in drive.text().splitlines() if "into the clutch" in one)
    both = [float(one) for one in row.replace("kJ", "").split()[3:]]
    assert sum(both) == pytest.approx(drive.summary.energy["clutch"] / 1000, rel=0.02)


def test_places_have_the_names_that_other_texts_give_them():
    assert place("charge_path/filter/outlet/temperature") == "behind filter"
    assert place("charge_path/blower/case/temperature") == "blower case"
    assert place("engine/exhaust_gas_temperature") == "exhaust gas"
    assert place("engine/head/temperature") == "head"
    assert place("driveline/belt/belt/temperature") == "belt belt"
    assert place("under_hood/air/temperature") == "air under the bodywork"


def test_of_several_runs_it_is_said_in_which(drive):
    second = float(drive["time"][np.argmax(drive.runs == 2) + 3])
    assert when(drive, second).endswith(", in run 2")
    assert when(drive, second - 15).endswith(", standing after run 1")
    assert when(drive, 5.0) == "after 5.0 s, before run 1"
    assert when(fake(), 150.0) == "after 2 min 30 s"
    assert "charge_path/" not in drive.text().partition("Hottest")[2].partition("Knock")[0]


def test_a_reason_that_ends_in_a_dot_gets_no_second():
    document = copy.deepcopy(DOCUMENT) | {"outings": [copy.deepcopy(RUNS)]}
    document["limits"] = {"engine/head_temperature": {"max": "60 degC", "why": "A try."}}
    text = said(ww.loads(json.dumps(document)).drive(progress=False))
    assert "in all: A try. " in text
    assert ".." not in text
