"""Pictures of drives: which outing and runs, what a column may be called, what was cut short."""

import json
import os
import signal

import pytest

import windwall as ww
from python.samples import DOCUMENT
from python.two_runs import RUNS, scenario
from windwall.cli import pictures
from windwall.cli.main import main
from windwall.report.plot_axes import described
from windwall.report.plots.drive import column_of
from windwall.study.drive import drive as drives

plt = pytest.importorskip("matplotlib.pyplot")
SHORT = {
    "id": "short",
    "title": "A short hop",
    "legs": [{"kind": "full_throttle", "for_time": "2 s"}],
}


@pytest.fixture(autouse=True)
def nothing_stays_open():
    yield
    plt.close("all")


@pytest.fixture
def two(tmp_path):
    path = tmp_path / "two.json"
    scenario(RUNS, SHORT).save(path)
    return path


@pytest.fixture(scope="module")
def drive():
    return scenario(RUNS).drive(progress=False)


def titled(svg):
    return svg.read_text(encoding="utf-8").partition("<title>")[2].partition("</title>")[0]


def test_a_picture_is_of_the_outing_that_is_named(windwall, two, tmp_path):
    svg = tmp_path / "it.svg"
    refused = windwall("plot", two, "drive", "-o", svg)
    assert refused.returncode == 2
    assert "say which outing is to be driven; there are two_runs, short" in refused.stderr
    for words in (("drive", "short", "-o", svg), ("distance", "-o", svg, "A short hop")):
        said = windwall("plot", two, *words)
        assert (said.returncode, said.stderr) == (0, "")
        assert titled(svg).startswith("A short hop")
    wrong = windwall("plot", two, "force", "short", "-o", svg)
    assert wrong.returncode == 2
    assert "only drive and distance draw an outing, force does not" in wrong.stderr


def test_over_distance_lie_all_runs_or_those_that_are_named(windwall, two, tmp_path):
    svg = tmp_path / "it.svg"

    def drawn(*runs):
        said = windwall("plot", two, "distance", "two_runs", "-o", svg, *runs)
        assert (said.returncode, said.stderr) == (0, "")
        return [name for name in ("run 1", "run 2") if name in svg.read_text(encoding="utf-8")]

    assert drawn() == ["run 1", "run 2"]
    assert drawn("--run", "2") == ["run 2"]
    wrong = windwall("plot", two, "distance", "two_runs", "-o", svg, "--run", "3")
    assert wrong.returncode == 2
    assert "there is no run 3 in 'two_runs'; it has 2, counted from 1" in wrong.stderr


def test_what_was_cut_short_says_so_in_its_title(two, tmp_path, heeds_interrupts, monkeypatch):
    svg = tmp_path / "it.svg"
    heard = []

    def interrupt(done, _total):
        heard.append(done)
        if len(heard) == 3:
            os.kill(os.getpid(), signal.SIGINT)

    hour = {"kind": "hold_speed", "speed": "60 km/h", "for_time": "1 h"}
    scenario({"id": "long", "legs": [hour] * 60}).save(two)
    monkeypatch.setattr(pictures, "drive", lambda car, outing: drives(car, outing, interrupt))
    assert main(["plot", str(two), "drive", "-o", str(svg)]) == 130
    assert titled(svg).startswith("Road speed, stopped early")
    heard.clear()
    assert main(["plot", str(two), "distance", "-o", str(svg)]) == 130
    assert titled(svg).startswith("Road speed, stopped early")


def test_a_whole_drive_is_not_called_cut_short(drive):
    assert ww.plot.over_time(drive).get_title().startswith(RUNS["title"])
    assert "stopped" not in ww.plot.over_time(drive).get_title()


@pytest.mark.parametrize(
    "name, address",
    [
        ("road/speed", "road/speed"),
        ("engine/head", "engine/head/temperature"),
        ("head", "engine/head/temperature"),
        ("roots case", "charge_path/roots/case/temperature"),
        ("behind roots", "charge_path/roots/outlet/temperature"),
    ],
)
def test_a_column_may_be_called_as_the_text_calls_it(drive, name, address):
    assert column_of(drive, name) == address
    assert (
        ww.plot.over_time(drive, name).get_ylabel()
        == ww.plot.over_time(drive, address).get_ylabel()
    )


def test_what_was_meant_by_a_column_that_is_none(drive):
    with pytest.raises(
        KeyError, match="no column 'engine/haed' in 'two_runs'; did you mean 'engine/"
    ):
        ww.plot.over_time(drive, "engine/haed")
    with pytest.raises(KeyError, match="`addresses` has all there are"):
        drive["zzzzzzzz"]


@pytest.mark.filterwarnings("error")
def test_an_outing_of_no_length_is_drawn_without_a_word():
    still = {"id": "still", "legs": [{"kind": "full_throttle", "to_speed": "20 km/h"}]}
    made = DOCUMENT | {"outings": [still]}
    driven = ww.loads(json.dumps(made)).drive(progress=False)
    first = dict(driven._numbers)
    first |= {"columns": [one[:1] for one in driven._numbers["columns"]], "events": []}
    first |= {"phase": driven._numbers["phase"][:1]}
    ww.plot.over_time(type(driven)(first, driven.scenario_info, driven.outing)).figure.canvas.draw()
    none = first | {"columns": [one[:0] for one in first["columns"]], "phase": []}
    empty = type(driven)(none, driven.scenario_info, driven.outing)
    assert described(ww.plot.over_time(empty)) == empty.ended.sentence
    assert "no run to draw" in described(ww.plot.runs_overlaid({}))
