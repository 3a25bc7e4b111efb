"""A bar in front of a person, a callback for a program, nothing in a pipe."""

import sys

import pytest

import windwall as ww
from windwall.study.progress import listener, wanted


def test_a_bar_only_in_front_of_a_person(monkeypatch):
    for person in (True, False):
        monkeypatch.setattr(sys.stderr, "isatty", lambda person=person: person, raising=False)
        assert wanted(None) is person
    assert wanted(True)
    assert not wanted(False)


def test_a_callback_hears_how_far_it_is(car):
    heard = []
    ranking = ww.rank(car, progress=lambda done, total: heard.append((done, total)))
    assert ranking.complete
    done, total = heard[-1]
    assert done == total == len(ranking.sets)


def test_an_error_in_a_callback_comes_out(car):
    def break_down(done, total):
        raise RuntimeError("no paper in the printer")

    with pytest.raises(RuntimeError, match="no paper"):
        ww.rank(car, progress=break_down)


def test_a_bar_is_drawn_and_cleared(capsys):
    with listener(True, "ranking", "set") as show:
        assert show(3, 10)
    assert "ranking" in capsys.readouterr().err
    with listener(False, "ranking", "set") as nothing:
        assert nothing is None


def test_stopping_keeps_what_is_done(document):
    import json

    document["upgrades"] = [
        {"id": f"lighter_{i}", "add": {"body/mass": f"-{i + 1} kg"}} for i in range(12)
    ]
    some = ww.rank(ww.loads(json.dumps(document)), progress=lambda done, total: False, threads=1)
    assert some.status == "cancelled"
    assert 0 < len(some.sets) < 4096
    text = repr(some)
    assert "STOPPED EARLY" in text
    # Nothing is said about sets that were not reached.
    assert "Not in the set" not in text
    assert "The goal" not in text


def test_other_threads_run_meanwhile(document):
    import json
    import threading

    document["upgrades"] = [
        {"id": f"lighter_{i}", "add": {"body/mass": f"-{i + 1} kg"}} for i in range(9)
    ]
    car = ww.loads(json.dumps(document))
    turns, over = [0], threading.Event()

    def count():
        while not over.wait(0.001):
            turns[0] += 1

    other = threading.Thread(target=count)
    other.start()
    ww.rank(car, progress=False, threads=1)
    during = turns[0]
    over.set()
    other.join()
    assert during > 3
