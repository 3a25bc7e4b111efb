"""What a journal holds stays, and it says what it is not for."""

import errno
import json
import multiprocessing
import os
import resource
import sqlite3
from concurrent.futures import ProcessPoolExecutor, ThreadPoolExecutor

import pytest

import windwall as ww
from python.studies import INPUTS, PIECE, READ, in_small_pieces, same_bits
from windwall.study import executors, journal, tasks
from windwall.study.journal import Journal

PIECES = 60 // PIECE


@pytest.fixture(autouse=True)
def _small(monkeypatch):
    in_small_pieces(monkeypatch)


@pytest.fixture
def path(tmp_path):
    return tmp_path / "study.journal"


def ask(car, path, **how):
    return ww.sweep(car, INPUTS, READ, **({"progress": False} | how), journal=path)


def held(car, path):
    with Journal(path, car) as kept:
        return len(kept)


def stop_after(variants):
    return lambda done, total: done < variants


def test_what_it_has_is_not_solved_again(car, swept_grid, path, monkeypatch):
    assert same_bits(ask(car, path), swept_grid)
    assert held(car, path) == PIECES
    monkeypatch.setattr(executors, "solved", None)
    assert same_bits(ask(car, path), swept_grid)


def test_stopping_keeps_what_is_done_and_asking_again_goes_on(car, swept_grid, path):
    some = ask(car, path, progress=stop_after(20))
    reached = (some["status"] == "solved").values.sum()
    assert 20 <= reached < 60
    assert set(some["status"].values.ravel()) == {"solved", "cancelled"}
    assert held(car, path) * PIECE == reached
    assert same_bits(ask(car, path), swept_grid)
    assert held(car, path) == PIECES


def test_an_interrupt_keeps_what_is_done(car, swept_grid, path):
    def interrupt(done, total):
        if done >= 30:
            raise KeyboardInterrupt

    with pytest.raises(KeyboardInterrupt):
        ask(car, path, progress=interrupt)
    assert held(car, path) >= 14  # all but the one that it was told within
    assert same_bits(ask(car, path), swept_grid)


def test_cut_off_at_any_byte_it_holds_what_came_before(car, swept_grid, path, tmp_path):
    """As a power cut leaves it: the log behind the file ends anywhere."""
    with Journal(path, car) as kept:  # while it is open the log is not folded in
        ask(car, kept)
        log = path.with_name(path.name + "-wal").read_bytes()
        base = path.read_bytes()
    counts = []
    for cut in range(0, len(log) + 1, max(1, len(log) // 41)):
        other = tmp_path / f"cut{cut}"
        other.write_bytes(base)
        other.with_name(other.name + "-wal").write_bytes(log[:cut])
        counts.append(held(car, other))
    assert counts == sorted(counts)
    assert counts[0] == 0
    assert PIECES - 2 <= counts[-1] <= PIECES
    assert same_bits(ask(car, other), swept_grid)


def test_a_damaged_answer_is_solved_again(car, swept_grid, path):
    ask(car, path)
    base = sqlite3.connect(path)
    base.execute("UPDATE answers SET answer = substr(answer, 1, 90) WHERE rowid % 3 = 0")
    base.commit()
    base.close()
    assert same_bits(ask(car, path), swept_grid)
    assert held(car, path) == PIECES


def test_two_may_write_at_once(car, swept_grid, path):
    with ThreadPoolExecutor(2) as both:
        found = list(both.map(lambda _: ask(car, path, threads=1), range(2)))
    assert all(same_bits(one, swept_grid) for one in found)
    assert held(car, path) == PIECES


def test_it_is_of_one_scenario(car, path):
    ask(car, path)
    with pytest.raises(ww.ScenarioError, match=r"another scenario, 'Garden.*name another file"):
        ask(car.set({"body/rolling_resistance": 0.02}), path)
    # Units are no other scenario.
    assert ask(car.shown_in("us"), path).sizes == {"mass": 20, "drag_area": 3}


def test_it_is_of_one_build(car, path, monkeypatch):
    ask(car, path)
    for room in (journal, tasks):
        monkeypatch.setattr(room, "solver", lambda: "windwall 9.9 (core 0123)")
    with pytest.raises(ww.ScenarioError, match=r"by windwall 0.*this is windwall 9\.9"):
        ask(car, path)


def test_a_worker_of_another_build_is_refused(car):
    make = tasks.tasks_of(car, "sweep", {"addresses": [], "outputs": []})
    other = make(None, 1)._replace(solver="windwall 9.9 (core 0123)")
    with pytest.raises(tasks.OtherSolver, match=r"install the same on every machine"):
        tasks.solved(other)


@pytest.mark.parametrize("text", ["{}", "SQLite format 3" + 100 * "\0", 5000 * "x"])
def test_a_file_that_is_no_journal(car, path, text):
    path.write_text(text, encoding="utf-8")
    with pytest.raises(ww.ScenarioError, match="no journal"):
        ask(car, path)
    assert path.read_text("utf-8") == text


def test_a_data_base_of_something_else(car, path):
    base = sqlite3.connect(path)
    base.execute("CREATE TABLE recipes (name TEXT)")
    base.commit()
    base.close()
    with pytest.raises(ww.ScenarioError, match="data base of something else"):
        ask(car, path)


def test_a_file_that_cannot_be_made(car, tmp_path):
    with pytest.raises(OSError, match="cannot be used"):
        ask(car, tmp_path / "nowhere" / "journal")


def test_an_empty_file_is_a_new_journal(car, swept_grid, path):
    path.touch()
    assert same_bits(ask(car, path), swept_grid)


def test_a_full_disk_loses_nothing(car, swept_grid, small_disk, monkeypatch):
    path, ballast = small_disk / "journal", small_disk / "ballast"
    in_small_pieces(monkeypatch, 4)
    ballast.write_bytes(bytes(400_000))
    with pytest.raises(OSError, match="no room is left") as full:
        ask(car, path)
    assert full.value.errno == errno.ENOSPC
    assert os.fspath(full.value.filename) == os.fspath(path)
    with pytest.raises(OSError, match="no room is left"):  # still
        ask(car, path)
    ballast.unlink()
    before = held(car, path)
    assert 0 < before < 15
    count = []
    solved = executors.solved
    monkeypatch.setattr(executors, "solved", lambda *how: count.append(1) or solved(*how))
    found = ask(car, path)
    assert same_bits(found, swept_grid)
    assert len(count) == 15 - before


def _limited_to(size):
    resource.setrlimit(resource.RLIMIT_FSIZE, (size, size))


def _asked(text, path):
    return ask(ww.loads(text), path).sizes


@pytest.mark.filterwarnings("ignore:.*fork")
def test_a_file_that_may_not_grow_loses_nothing(car, swept_grid, path, monkeypatch):
    """As where somebody has a share of a disk and no more of it; nothing is mounted for that."""
    in_small_pieces(monkeypatch, 4)
    fork = multiprocessing.get_context("fork")
    with ProcessPoolExecutor(1, fork, _limited_to, (60_000,)) as pool:
        refused = pool.submit(_asked, car.text(), path).exception()
    assert isinstance(refused, OSError)
    assert "the journal cannot be used" in str(refused)
    before = held(car, path)
    assert 0 < before < 15
    count, solved = [], executors.solved
    monkeypatch.setattr(executors, "solved", lambda *how: count.append(1) or solved(*how))
    assert same_bits(ask(car, path), swept_grid)
    assert len(count) == 15 - before


def test_the_command_says_it_in_words(windwall, file, tmp_path):
    path = tmp_path / "j"
    grid = ["--vary", "body/mass", "340 kg", "350 kg", "--journal", path]
    first = windwall("sweep", file, *grid, "--json")
    assert first.returncode == 0, first.stderr
    assert [one["mass"] for one in json.loads(first.stdout)["variants"]] == [340, 350]
    path.write_text("no journal", encoding="utf-8")
    wrong = windwall("sweep", file, *grid)
    assert wrong.returncode == 2
    assert "no journal" in wrong.stderr
