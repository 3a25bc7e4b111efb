"""What to measure next, of a small menu: what must be so whatever the numbers are."""

import copy
import dataclasses
import json

import numpy as np
import pytest

import windwall as ww
from python.samples import DOCUMENT
from windwall.cli.command import run_command
from windwall.results.measure import Taught
from windwall.study import measure_model
from windwall.study.gauges import GAUGES, Gauge, Reading
from windwall.study.measure import with_belt_doubt


@pytest.fixture(scope="module")
def small():
    return ww.loads(json.dumps(DOCUMENT))


@pytest.fixture(scope="module")
def answer(small):
    return small.what_to_measure(draws=64, progress=False)


def row(answer, id):
    return next(one for one in answer.rows if one.id == id)


def own(address, sigma, driven=False):
    return Gauge("own", "read it", (Reading(address, sigma),), 0, 1, driven)


def test_no_reading_is_worth_less_than_nothing(answer):
    assert answer.perfect > 0
    for row in answer.rows:
        for one in (row.by_lines, row.by_curves):
            assert one.gain >= 0
            assert 0 <= one.speed_left <= 1
            assert 0 <= one.ahead_left <= 1
        # What is chosen in a world is never faster than its fastest.
        assert row.by_curves.gain <= answer.perfect


def test_the_best_stand_first(answer):
    gains = [one.by_curves.gain if one.pays else 0 for one in answer.rows]
    assert gains == sorted(gains, reverse=True)
    assert answer.rows[0].title in answer.sentence


def test_what_is_known_teaches_nothing(small):
    exact = small.set({"body/mass": "340 kg"})
    weighed = row(exact.what_to_measure(draws=64, progress=False), "weigh")
    assert weighed.by_lines == (1, 1, 0, None)
    assert weighed.by_curves[:3] == (1, 1, 0)


def test_a_gauge_that_reads_the_answer_leaves_its_own_error():
    # Without a menu the speed itself is asked for; the sensor's ± is left beside the model's.
    bare = ww.loads(json.dumps(DOCUMENT | {"upgrades": []}))
    answer = bare.what_to_measure(draws=64, progress=False)
    read = row(answer, "speed")
    sensor = read.sigmas[0]
    both = 1 / np.sqrt(1 / answer.sigma**2 + 1 / sensor**2)
    assert read.by_lines.speed_left * answer.sigma == pytest.approx(both, rel=1e-6)
    assert read.by_lines.gain is None
    assert answer.ahead is None


def test_an_input_that_is_weighed_leaves_what_precisions_add_up_to(small):
    # A drag area known to 0.05 and measured to 0.05: half its variance goes.
    measured = small.what_to_measure(
        also=[own("body/drag_area", "0.05 m2")], draws=64, progress=False
    )
    finer = small.what_to_measure(
        also=[own("body/drag_area", "0.00001 m2")], draws=64, progress=False
    )
    taken = [1 - row(one, "own").by_lines.speed_left ** 2 for one in (measured, finer)]
    assert taken[0] == pytest.approx(taken[1] / 2, rel=2e-2)


def test_a_better_sensor_never_teaches_less(small):
    found = [
        row(
            small.what_to_measure(
                also=[own("manifold/boost", f"{sigma} kPa", True)], draws=64, progress=False
            ),
            "own",
        )
        for sigma in (8, 2, 0.5)
    ]
    left = [one.by_lines.speed_left for one in found]
    assert left == sorted(left, reverse=True)
    assert left[-1] < left[0]


def test_sensors_are_read_with_their_units(answer):
    assert row(answer, "boost").sigmas == pytest.approx((1000,))
    assert row(answer, "charge_temperature").sigmas == pytest.approx((3,))
    assert row(answer, "coast_down").sigmas[0] == pytest.approx(0.04 * 0.55)
    assert row(answer, "tachometer").sigmas == pytest.approx((50 * np.pi / 30,))


def test_only_what_the_vehicle_has_a_place_for_is_listed(answer):
    listed = {one.id for one in answer.rows}
    assert "nozzle" not in listed
    assert {"boost", "weigh", "belt_slip"} <= listed
    assert listed <= {one.id for one in GAUGES}


def test_a_blower_that_is_driven_by_a_belt_is_in_doubt(small):
    ratio = "charge_path/roots/drive_ratio"
    doubtful = with_belt_doubt(small)
    assert doubtful.sigma(ratio) == pytest.approx(0.02 * 1.35)
    stated = small.set({ratio: "1.35 ± 0.001"})
    assert with_belt_doubt(stated).sigma(ratio) == pytest.approx(0.001)


def test_a_budget_is_kept(small):
    answer = small.what_to_measure(budget="50 EUR", draws=64, progress=False)
    assert answer.could_be_first == 2
    assert {answer.first, answer.second} == {"small_pulley", "as it is"}
    assert answer.price > 0


def test_the_same_for_one_thread_and_two(small):
    once, twice = (
        small.what_to_measure(draws=64, progress=False, threads=threads) for threads in (1, 2)
    )
    assert once == twice


def test_a_vehicle_without_a_speed_has_nothing_to_measure(stuck):
    with pytest.raises(ww.NoAnswer):
        stuck.what_to_measure(progress=False)


def test_it_is_told(answer):
    text = answer.summary()
    assert "What each would teach" in text
    assert "While measuring" in text
    assert max(map(len, text.splitlines())) <= 100
    found = json.loads(json.dumps(answer.to_dict()))
    assert found["rows"][0]["id"] == answer.rows[0].id
    assert found["units"]["rows/by_curves/gain"] == "m/s"
    assert list(answer.frame.index) == [one.id for one in answer.rows]


def alike(answer, **taught):
    """The same answer, where every reading teaches this and choosing after it gains nothing."""
    says = Taught(0.5, 0.9, 0.0, 0.0)._replace(**taught)
    rows = [one._replace(by_curves=says) for one in answer.rows]
    return dataclasses.replace(answer, rows=tuple(rows))


def in_words(answer):
    text = " ".join(answer.summary().split())
    return text[text.index("In words") : text.index("While measuring")]


def test_what_is_worth_nothing_is_named_in_one_sentence(answer):
    """The one to do next in full, then the others, each with what it is and its error."""
    said = in_words(alike(answer))
    assert said.count("worth nothing") == 2
    first, *rest = answer.rows
    assert said.index(first.title[1:]) < said.index("any of the others")
    others = said[said.index("any of the others") :]
    assert first.title[1:] not in others
    for one in rest:
        assert f"{one.id} ({one.title}, ± " in others


def test_what_pays_is_told_in_full_before_the_others(answer):
    rows = list(alike(answer).rows)
    rows[1] = rows[1]._replace(by_curves=Taught(0.5, 0.9, 1.0, 0.01))
    said = in_words(dataclasses.replace(answer, rows=tuple(rows)))
    assert said.count("choosing after it is worth") == 2
    assert said.index(rows[1].title[1:]) < said.index("any of the others")
    assert f"{rows[1].id} (" not in said


def test_without_a_menu_nothing_is_said_of_choosing(answer):
    bare = dataclasses.replace(alike(answer, ahead_left=None, gain=None), ahead=None)
    said = in_words(bare)
    assert "hoosing" not in said
    assert said.count("it leaves") == 1
    assert f"{answer.rows[-1].id} ({answer.rows[-1].title}, ± " in said


def test_what_it_costs_is_said_before(small):
    plans = []
    answer = small.what_to_measure(draws=64, progress=False, planned=plans.append)
    (plan,) = plans
    assert plan.speeds == 64 * (answer.could_be_first + 1)
    assert f"{plan.speeds} top speeds of 64 draws" in plan.sentence
    assert plan.seconds > 0


def test_a_stop_keeps_what_is_done(small, answer):
    """Fewer draws are the first of more, so that it is what fewer would have given."""
    heard = []

    def stop(done, total):
        heard.append((done, total))
        return total != 64

    stopped = small.what_to_measure(draws=64, progress=stop)
    assert heard[-2:] == [(8, 64), (32, 64)]  # at once is too early for curves
    assert stopped.interrupted
    assert (stopped.draws, stopped.asked) == (32, 64)
    assert stopped.rows == small.what_to_measure(draws=32, progress=False).rows
    assert "Stopped after 32 of 64 draws" in stopped.summary()
    assert "Stopped" not in answer.summary()
    assert not answer.interrupted


def interrupted_at(call, monkeypatch):
    """Somebody presses Ctrl-C while worlds are solved for the so-manieth time."""
    answers, calls = measure_model.world_answers, []

    def solve(*how):
        calls.append(1)
        if len(calls) == call:
            raise KeyboardInterrupt
        return answers(*how)

    monkeypatch.setattr(measure_model, "world_answers", solve)


def test_ctrl_c_keeps_what_is_done(file, answer, monkeypatch, capsys):
    interrupted_at(4, monkeypatch)  # after the one in the middle, 8 and 24
    assert run_command(["measure", str(file), "--draws", "64", "--json"]) == 130
    said = capsys.readouterr()
    made = json.loads(said.out)
    assert (made["draws"], made["asked"]) == (32, 64)
    assert "Ctrl-C keeps what is done" in said.err


def test_ctrl_c_before_anything_can_be_said(file, monkeypatch, capsys):
    interrupted_at(2, monkeypatch)
    assert run_command(["measure", str(file), "--draws", "64"]) == 130
    said = capsys.readouterr()
    assert said.out == ""
    assert said.err.endswith("interrupted\n")


def test_the_command_says_the_same(windwall, file, answer):
    made = windwall("measure", file, "--draws", 64, "--json")
    assert made.returncode == 0, made.stderr
    assert json.loads(made.stdout)["rows"] == json.loads(json.dumps(answer.to_dict()))["rows"]


def test_too_few_draws_are_refused(windwall, file):
    assert windwall("measure", file, "--draws", 3).returncode == 2


def test_us_units_are_shown():
    american = copy.deepcopy(DOCUMENT) | {"units": "us"}
    text = ww.loads(json.dumps(american)).what_to_measure(draws=64, progress=False).summary()
    assert "mph" in text
    assert "km/h" not in text
