"""Every sentence of an answer speaks the units of its scenario, whatever it is about."""

import json
import re
from pathlib import Path

import pytest

import windwall as ww
from python import test_closed_lists as cases
from windwall.report.wording.cautions import CAUTIONS
from windwall.report.wording.names import CHANGES

SCENARIOS = sorted((Path(__file__).parents[2] / "scenarios").glob("*.json"))
METRIC = re.compile(r"\d (km/h|m/s|kW|N|N m|kPa|bar|degC|K|g/s|m|kg|mm|kJ)(?![\w/])")
AMERICAN = re.compile(r"\d (mph|hp|lbf|lb ft|psi|psig|psia|degF|lb/min|ft|lb)(?![\w/])")


def american(scenario):
    """The same vehicle, asked in other units."""
    text = scenario.document()
    text["units"] = "us"
    return ww.loads(json.dumps(text))


@pytest.mark.parametrize("path", SCENARIOS, ids=lambda path: path.stem)
def test_a_us_scenario_speaks_no_metric_word(path):
    answer = american(ww.load(path)).top_speed()
    said = [answer.sentence, answer.next_limit, *(one.sentence for one in answer.cautions)]
    assert AMERICAN.search(said[0])
    assert not [text for text in said if METRIC.search(text)]


@pytest.mark.parametrize("word", cases.WORDS["about"])
def test_every_caution_speaks_it(word):
    scenario, *point = cases.CAUTIONED[word]()
    answer = cases.ask(american(scenario), *point)
    (caution, *_) = [one for one in answer.cautions if one.about == word]
    assert not METRIC.search(caution.sentence), caution.sentence
    assert "{" not in caution.sentence


@pytest.mark.parametrize("word", cases.WORDS["limited_by"])
def test_every_reason_speaks_it(word):
    answer = american(cases.BOUND[word]()).top_speed()
    said = answer.sentence + " " + answer.next_limit
    assert not METRIC.search(said), said
    assert "{" not in said


def test_a_point_speaks_it():
    assert "lbf ft and" in american(cases.vehicle()).operating_point("4200 rpm").sentence


def test_wind_is_in_miles_an_hour():
    windy = ww.load(SCENARIOS[0]).set({"day/headwind": "4.4704 m/s"})
    assert "headwind 10 mph" in " ".join(american(windy).top_speed().summary().split())
    assert "headwind 4.47 m/s" in " ".join(windy.top_speed().summary().split())


def test_a_difference_of_temperatures_is_converted():
    vehicle = ww.load(SCENARIOS[0])
    assert "shows 50 to 100 K less" in " ".join(vehicle.top_speed().summary().split())
    told = " ".join(american(vehicle).top_speed().summary().split())
    assert "shows 90 to 180 delta_degF less" in told


def test_every_word_of_a_closed_list_has_its_wording():
    words = cases.WORDS
    assert set(CAUTIONS) == set(words["about"])
    assert set(CHANGES) == set(words["change"])
