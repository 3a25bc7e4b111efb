"""Drives from Python: what is asked, what comes back, and what is printed of it."""

import copy
import html
import json
import os
import pickle
import re
import signal
from pathlib import Path

import numpy as np
import pytest

import windwall as ww
from python.samples import DOCUMENT
from python.two_runs import RUNS, scenario
from windwall.cli import answers
from windwall.cli.main import main
from windwall.report.wording.drive import ENDED, HAPPENED
from windwall.study.drive import drive as drives

CORE = Path(__file__).parents[2] / "cpp/windwall/solve/drive/drive.hpp"


@pytest.fixture(scope="module")
def drive():
    return scenario(RUNS).drive(progress=False)


def test_every_moment_is_a_column_with_unit_and_meaning(drive):
    made = drive.dataset
    assert made.attrs["outing"] == "two_runs"
    assert made.attrs["ended"] == "legs_done"
    assert len(made.attrs["digest"]) == 64
    assert made["road_speed"].attrs["units"] == "m/s"
    assert made["engine__head__temperature"].attrs["address"] == "engine/head/temperature"
    for name, variable in made.data_vars.items():
        assert variable.attrs["long_name"], name
        assert name == "phase" or "units" in variable.attrs, name
    assert (np.diff(made["time"]) >= 0).all()
    assert set(made["phase"].values) >= {"standing", "slipping", "driving", "shifting", "braking"}
    assert made["road_speed"].values.max() == pytest.approx(drive["road/speed"].max())


def test_two_columns_are_never_called_alike(drive):
    assert len(drive.dataset.variables) == len(set(drive.addresses)) + 1  # and the phase


def test_the_digest_is_that_of_the_scenario(drive):
    assert drive.dataset.attrs["digest"] == scenario(RUNS).digest


def test_marks_are_found_between_the_moments(drive):
    first, again = (
        {one.at_distance: one for one in drive.summary.reached(run) if one.at_distance}
        for run in (1, 2)
    )
    assert set(first) == {50, 100, 200, 402.336}  # at 500 m it brakes
    assert set(again) == {50, 100}  # from there on it coasts
    mark = first[402.336]
    assert mark.distance == pytest.approx(402.336, abs=1e-6)
    start = next(one.time for one in drive.happened if one.leg == 2)
    speed = np.interp(mark.time + start, drive["time"], drive["road/speed"])
    assert mark.road_speed == pytest.approx(speed, rel=1e-3)
    for speed in (50, 80):
        at = next(one for one in drive.summary.reached(2) if one.at_speed == speed / 3.6)
        assert at.road_speed == pytest.approx(speed / 3.6, abs=1e-6)


def test_goal_and_road_are_marks_too():
    goal = {"speed": "70 km/h", "run_up": "123 m"}
    found = scenario(RUNS, goal=goal).drive(progress=False).summary.reached(1)
    assert any(one.at_speed == pytest.approx(70 / 3.6) for one in found)
    assert any(one.at_distance == pytest.approx(123) for one in found)


def test_a_file_in_us_units_is_marked_in_miles_per_hour():
    found = scenario(RUNS, units="us").drive(progress=False)
    assert any(one.at_speed == pytest.approx(30 * 0.44704) for one in found.summary.marks)
    assert "to 40 mph" in found.text()
    assert "degF" in found.text()


def test_the_extremes_are_those_of_the_columns(drive):
    found = drive.summary
    column = drive["engine/head/temperature"]
    assert found.hottest["engine/head/temperature"].value == column.max()
    assert drive["time"][np.argmax(column)] == found.hottest["engine/head/temperature"].time
    margin = drive["knock/margin"]
    assert found.nearest_knock.value == pytest.approx(np.nanmin(margin), abs=0.005)
    first = drive["time"][np.nanargmin(margin.round(2))]
    assert found.nearest_knock.time == first
    assert len(found.fastest) == 2
    assert found.fastest[0].value == drive["road/speed"].max()
    assert found.fastest[1].value == pytest.approx(90 / 3.6, rel=1e-6)
    assert 0 < found.fuel_used < 1
    assert found.liquid_used == 0


def test_the_account_of_energy_closes(drive):
    found = drive.summary
    assert abs(found.imbalance) < 1e-6
    assert found.energy["fuel"] > found.energy["crank"] > found.energy["air"] > 0
    spoilt = found._replace(energy=found.energy | {"air": 1.01 * found.energy["air"]})
    assert abs(spoilt.imbalance) > 1e-4


def test_events_are_a_table(drive):
    events = drive.events
    assert list(events.columns)[:3] == ["time", "distance", "road_speed"]
    assert events.attrs["units"]["distance"] == "m"
    begins = events[events["what"] == "leg_begins"]
    assert list(begins["leg"]) == [1, 2, 3, 4, 5]
    assert begins["sentence"].iloc[1] == "leg 2, full throttle"
    assert (events["time"].diff().dropna() >= 0).all()
    assert (events["what"] == "clutch_grips").sum() == 2


def test_columns_are_read_by_address(drive):
    assert drive["road/speed"][0] == 0
    with pytest.raises(KeyError):
        drive["road/sped"]


def test_it_ends_by_a_word_and_a_sentence(drive):
    assert drive.answered
    assert drive.ended.word == "legs_done"
    assert drive.ended.sentence.startswith("Every leg was driven, ")
    slow = copy.deepcopy(RUNS) | {"legs": [{"kind": "full_throttle", "to_speed": "550 km/h"}]}
    box = {"id": "box", "kind": "gearbox", "ratios": [3.2, 2.0]}
    found = scenario(slow, driveline=[box, DOCUMENT["driveline"][1]]).drive(progress=False)
    assert found.ended.word == "no_more_speed"
    assert "full throttle, waits for a speed that is never reached" in found.ended.sentence
    short = copy.deepcopy(RUNS) | {"road_length": "100 m"}
    found = scenario(short).drive(progress=False)
    assert found.ended.word == "road_ends"
    assert found["distance"][-1] == pytest.approx(100, abs=1e-3)


@pytest.mark.parametrize(
    "list_name, sentences", [("drive_end_names", ENDED), ("happening_names", HAPPENED)]
)
def test_every_word_of_the_core_has_its_sentence(list_name, sentences):
    text = CORE.read_text("utf-8")
    words = re.search(list_name + r"\{(.*?)\}", text, re.DOTALL)[1]
    assert set(re.findall(r'"(\w+)"', words)) == set(sentences)


def test_outings_are_found_by_id_by_title_or_alone(drive):
    both = scenario(RUNS, RUNS | {"id": "other", "title": "Another"})
    assert both.drive("other", progress=False).outing.title == "Another"
    assert both.drive(RUNS["title"], progress=False).outing.id == "two_runs"
    for car, asked, said in (
        (both, None, "say which outing is to be driven; there are two_runs, other"),
        (both, "third", "no outing is called 'third'; there are two_runs, other"),
        (scenario(), None, r'the file states no outing; .*"legs": \[\{"kind": "full_throttle"'),
    ):
        with pytest.raises(ww.ScenarioError, match=said):
            car.drive(asked, progress=False)


def test_progress_is_heard_and_can_stop_it():
    heard = []

    def listen(done, total):
        heard.append((done, total))
        return len(heard) < 2

    long = RUNS | {"legs": RUNS["legs"] * 12}
    found = scenario(long).drive(progress=listen)
    assert len(heard) == 2
    assert found.cancelled
    assert not found.answered
    assert "STOPPED EARLY (cancelled)" in found.text()
    assert 0 < len(found.phases) < 12 * 500


def test_a_drive_can_be_sent_elsewhere(drive):
    again = pickle.loads(pickle.dumps(drive))
    assert again.text() == drive.text()
    assert again.dataset.equals(drive.dataset)


def test_what_is_printed_is_for_people(drive):
    text = drive.text()
    assert max(map(len, text.splitlines())) <= 100
    for part in (
        "Twice over the quarter mile (two_runs)",
        "run 1",
        "over 402.3 m",
        "to 80 km/h",
        "head, degC",
        "oil, degC",
        "shift out of gear 1 at ",
        "drag of the air",
        "of 100 engines described like this",
        "part throttle first",
    ):
        assert part in " ".join(text.split())
    assert "nan" not in text
    assert repr(drive) == text
    assert html.escape(drive.ended.sentence) in drive._repr_html_()


def test_its_document_is_plain_and_names_its_units(drive):
    made = json.loads(json.dumps(drive.to_dict()))
    assert made["ended"]["word"] == "legs_done"
    assert made["units"]["moments"]["road/speed"] == "m/s"
    assert set(made["moments"]) == set(made["units"]["moments"])
    lengths = {len(column) for column in made["moments"].values()} | {len(made["phases"])}
    assert len(lengths) == 1
    assert made["marks"][0]["run"] == 1
    assert {"what", "sentence", "time"} <= set(made["events"][0])


def test_the_command_drives(windwall, document, file):
    document["outings"] = [copy.deepcopy(RUNS)]
    file.write_text(json.dumps(document))
    said = windwall("drive", file)
    assert (said.returncode, said.stderr) == (0, "")
    assert said.stdout == ww.load(file).drive(progress=False).text() + "\n"
    made = json.loads(windwall("drive", file, "two_runs", "--json").stdout)
    assert made["answered"]
    assert made["outing"]["id"] == "two_runs"
    lighter = windwall("drive", file, "--install", "fairing")
    assert lighter.stdout.startswith("Fitted first: fairing.")
    wrong = windwall("drive", file, "nowhere")
    assert wrong.returncode == 2
    assert "no outing is called 'nowhere'; there are two_runs" in wrong.stderr


def test_ctrl_c_keeps_what_was_driven(file, document, heeds_interrupts, monkeypatch, capsys):
    # Two days and a half, of which nobody waits for the end.
    hour = {"kind": "hold_speed", "speed": "60 km/h", "for_time": "1 h"}
    document["outings"] = [{"id": "long", "legs": [hour] * 60}]
    file.write_text(json.dumps(document))
    heard = []

    def interrupt(done, _total):
        heard.append(done)
        if len(heard) == 3:
            os.kill(os.getpid(), signal.SIGINT)

    monkeypatch.setattr(answers, "drive", lambda car, outing: drives(car, outing, interrupt))
    assert main(["drive", str(file)]) == 130
    assert len(heard) == 3
    said = capsys.readouterr().out
    assert "STOPPED EARLY (cancelled)" in said
    assert "holding a speed, " in said
    assert "run 1" in said


def test_what_is_a_temperature_says_so():
    """Of every kind of column: a belt drive of variable ratio has a record of its own."""
    lake = ww.load(Path(__file__).parents[2] / "scenarios/lakebed_streamliner.json").document()
    lake["outings"] = [{"id": "hop", "legs": [{"kind": "full_throttle", "for_distance": "60 m"}]}]
    found = ww.loads(json.dumps(lake)).drive(progress=False)
    assert all(one.endswith("/temperature") for one in found.nodes)
    assert {one for one in found.summary.hottest if not one.endswith("temperature")} == set()
    ice = 273.15
    assert all(one.value > ice for one in found.summary.hottest.values())
    assert found.measure("variator/ratio").dimension == "plain number"
