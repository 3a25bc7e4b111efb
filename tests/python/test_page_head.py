"""What a page begins with: the answer, how sure it is, and whether what was seen agrees."""

import json
import re
from functools import cache
from pathlib import Path

import matplotlib as mpl
import pytest

import windwall as ww
from python.browser import browser, needs_browser
from windwall.report.page import page

MICRO = "scenarios/village_microcar.json"
GOAL = {"speed": "100 km/h", "run_up": "1 km"}


@pytest.fixture(scope="module", autouse=True)
def aside():
    mpl.use("Agg")


def micro(seen=None, **entries):
    document = json.loads(Path(MICRO).read_text(encoding="utf-8")) | {"upgrades": []} | entries
    observed = [{"what": "top speed", "speed": seen}] if seen else []
    return ww.loads(json.dumps(document | {"observed": observed}))


@cache
def sent(seen):
    """A page about a vehicle that was seen to go this fast."""
    return page(micro(seen), live=False)


@pytest.fixture(scope="module")
def contradicted():
    return sent("80 ± 2 km/h")


def unfolded(text):
    return re.sub(r"<details>.*?</details>", "", text, flags=re.S)


def test_the_answer_comes_first():
    text = page(micro(goal=GOAL), live=False)
    car = micro(goal=GOAL).top_speed()
    lead = re.search(r'<p class="lead">(.*?)</p>', text)[1]
    assert re.fullmatch(
        r"9\d\.\d km/h after 1000 m from rest, \d\.\d km/h short of the goal of 100\.0 km/h\.", lead
    )
    likely = re.search(r'<p class="likely">(.*?)</p>', text)[1]
    assert re.match(r"\d+ to \d+ km/h in 9 of 10 .* the goal is reached by ", likely)
    places = [text.index(one) for one in (lead, likely, car.sentence, "balance speed")]
    assert places == sorted(places)


@pytest.mark.parametrize(
    "goal, ends",
    [
        ({}, "km/h at full throttle."),
        ({"speed": "80 km/h"}, "km/h at full throttle: the goal of 80.0 km/h is reached."),
        ({"run_up": "1 km"}, "km/h after 1000 m from rest."),
    ],
)
def test_every_goal_has_its_first_line(goal, ends):
    lead = re.search(r'<p class="lead">(.*?)</p>', page(micro(goal=goal), live=False))[1]
    assert lead.endswith(ends)


def test_what_contradicts_the_model_is_said_at_once_and_in_the_open(contradicted):
    doubt = re.search(r'<p class="doubt far">(.*?)</p>', contradicted)[1]
    assert "speed 80 ± 2.0 km/h seen, 95." in doubt.lower()
    assert contradicted.index(doubt) < contradicted.index("air takes")
    shown = unfolded(contradicted)
    assert "standard deviations off" in shown
    assert "Any one of these, so far off, would:" in shown or "No single input does" in shown


def test_a_speed_that_contradicts_what_was_seen_is_no_gain(contradicted):
    car = micro("80 ± 2 km/h")
    for text in (contradicted, car.top_speed().summary(car.diagnose())):
        assert re.search(r"is no\s+gain\s+on\s+the\s+80", text)
        assert "This is faster than" not in text
    close = micro("95 ± 2 km/h")
    for text in (sent("95 ± 2 km/h"), close.top_speed().summary(close.diagnose())):
        assert "This is faster than the 95" in text
        assert "is no gain" not in text


def test_what_agrees_is_folded_and_a_little_off_is_said_calmly():
    agrees = sent("95 ± 2 km/h")
    assert 'class="doubt' not in agrees
    assert "standard deviations off" in agrees
    assert "standard deviations off" not in unfolded(agrees)
    near = sent("92.7 ± 2 km/h")
    said = re.search(r'<p class="doubt">(.*?)</p>', near)[1]
    assert said.startswith("More than a standard deviation off what was observed: speed 92.7 ± 2")


@needs_browser
def test_paper_has_the_contradiction_too(contradicted, tmp_path):
    (tmp_path / "page.html").write_text(contradicted, encoding="utf-8")
    with browser() as running:
        tab = running.new_page()
        tab.goto((tmp_path / "page.html").as_uri())
        tab.emulate_media(media="print")
        assert tab.get_by_text("CAUTION: the model contradicts").is_visible()
        assert tab.get_by_text("standard deviations off").is_visible()
