"""Whoever solves the pieces of a study, the answer is the same to the bit."""

import json
import os
import signal
import threading
import time
from concurrent.futures import ProcessPoolExecutor, ThreadPoolExecutor

import pytest

import windwall as ww
from python.samples import LATE
from python.studies import INPUTS, READ, in_small_pieces, same_bits
from windwall.study import executors, menu_pieces, worlds
from windwall.study.carry_out import means_of
from windwall.study.draws import drawn_values
from windwall.study.executors import Gone, Lost, lanes_of
from windwall.study.journal import Journal
from windwall.study.prior import Prior


@pytest.fixture(autouse=True)
def _small(monkeypatch):
    in_small_pieces(monkeypatch)


def ask(car, **how):
    return ww.sweep(car, INPUTS, READ, **({"progress": False} | how))


@pytest.fixture(scope="module")
def late():
    """A vehicle whose menu passes limits and ends early."""
    return ww.loads(json.dumps(LATE))


@pytest.mark.parametrize("size", [1, 7, 60, 1000])
def test_however_it_is_cut(car, swept_grid, size, monkeypatch):
    in_small_pieces(monkeypatch, size)
    with ThreadPoolExecutor(2) as pool:
        assert same_bits(ask(car, executor=pool), swept_grid)


def test_progress_counts_variants(car):
    heard = []
    with ThreadPoolExecutor(2) as pool:
        ask(car, executor=pool, progress=lambda *how: heard.append(how))
    assert heard[-1] == (60, 60)
    assert [done for done, _ in heard] == sorted(done for done, _ in heard)


def kill_one(pids, after=0.0):
    """Kills one of some processes after a while."""

    def kill():
        time.sleep(after)
        for pid in pids():
            os.kill(pid, signal.SIGKILL)
            return

    thread = threading.Thread(target=kill)
    thread.start()
    return thread


def test_own_processes_are_replaced(car, swept_grid, tmp_path, monkeypatch):
    path, killed = tmp_path / "journal", []
    made = []
    monkeypatch.setattr(
        executors.Processes, "__init__", _remembering(executors.Processes.__init__, made)
    )

    def heard(done, total):
        if done >= 10 and not killed:
            killed.append(next(iter(made[0].executor._processes)))
            os.kill(killed[0], signal.SIGKILL)

    found = ask(car, executor=1, journal=path, progress=heard)
    assert killed
    assert same_bits(found, swept_grid)
    with Journal(path, car) as kept:
        assert len(kept) == 30
    assert not any(map(_lives, killed))


def _remembering(make, made):
    def remember(self, *how):
        made.append(self)
        make(self, *how)

    return remember


def _lives(pid):
    try:
        os.kill(pid, 0)
    except ProcessLookupError:
        return False
    return True


class Mortal(ThreadPoolExecutor):
    """A pool whose process is killed after some tasks, as its owner learns of it."""

    def __init__(self, tasks):
        super().__init__(1)
        self.left = tasks

    def submit(self, *how):
        from concurrent.futures.process import BrokenProcessPool

        self.left -= 1
        if self.left < 0:
            raise BrokenProcessPool
        return super().submit(*how)


def test_a_pool_that_breaks_is_told_and_what_it_did_is_kept(car, swept_grid, tmp_path):
    path = tmp_path / "journal"
    with Mortal(9) as pool, pytest.raises(Gone, match="executor=4"):
        ask(car, executor=pool, journal=path)
    with Journal(path, car) as kept:
        assert 6 <= len(kept) <= 9
    assert same_bits(ask(car, journal=path), swept_grid)


class Losing(executors.Here):
    """Loses its worker over one task again and again."""

    def answer(self, future):
        raise Lost


def test_a_task_that_ends_its_worker_is_given_up(car, tmp_path, monkeypatch):
    monkeypatch.setattr(executors, "Here", Losing)
    with pytest.raises(Gone, match="20 times over the same 2 items"):
        ask(car, journal=tmp_path / "journal")


class Unlucky(executors.Here):
    """Loses the first of its tasks again and again, and solves another one each time."""

    lanes, ahead = 1, 3

    def __init__(self, threads):
        super().__init__(threads)
        self.first, self.losses = None, 0

    def begin(self, task, attempt, heard):
        self.first = self.first or task.key
        future = super().begin(task, attempt, heard)
        future.key = task.key
        return future

    def done(self, begun):
        others = (one for one in begun if one.key != self.first)
        return [*(one for one in begun if one.key == self.first), *list(others)[:1]]

    def answer(self, future):
        if future.key == self.first and self.losses < 25:
            self.losses += 1
            raise Lost
        return super().answer(future)


def test_who_is_lost_beside_others_is_not_to_blame(car, swept_grid, tmp_path, monkeypatch):
    lanes = Unlucky(1)
    monkeypatch.setattr(executors, "Here", lambda threads: lanes)
    assert same_bits(ask(car, journal=tmp_path / "journal"), swept_grid)
    assert lanes.losses == 25


@pytest.mark.parametrize("wrong", [0, -1, True, "tcp://127.0.0.1:8786", object()])
def test_what_is_no_executor(wrong):
    with pytest.raises(TypeError, match=r"dask\.distributed\.Client"):
        lanes_of(wrong)


def test_a_pool_of_processes(car, swept_grid):
    import multiprocessing

    with ProcessPoolExecutor(1, multiprocessing.get_context("spawn")) as pool:
        assert same_bits(ask(car, executor=pool), swept_grid)


def test_worlds_are_the_same_by_whatever_means(late, tmp_path, monkeypatch):
    """Sets of one engine share what is solved of it, so that pieces are cut between worlds."""
    sets = [(), ("fairing",), ("small_pulley",), ("small_pulley", "hard_tyres"), ("spray",)]
    values = drawn_values(Prior(late), 16)
    whole = worlds.world_speeds(late, values, sets, False)
    for piece in (1, 15, 4096):
        monkeypatch.setattr(worlds, "PIECE", piece)
        with ThreadPoolExecutor(2) as pool, means_of(late, pool, tmp_path / str(piece)) as means:
            cut = worlds.world_speeds(late, values, sets, False, means=means)
        assert cut.speed.tobytes() == whole.speed.tobytes()
        assert (cut.end == whole.end).all()
        with Journal(tmp_path / str(piece), late) as kept:
            assert len(kept) == {1: 16, 15: 6, 4096: 1}[piece]


def test_draws_and_leans_go_on_from_a_journal(car, ranking, tmp_path, monkeypatch):
    how = {"progress": False, "journal": tmp_path / "journal"}
    leans = {"rows": 16, "most": 3}
    with ThreadPoolExecutor(2) as pool:
        speed = car.drawn_speed(32, **how, executor=pool)
        drawn = car.drawn_ranking(ranking, 32, **how, executor=pool)
        leaning = car.leans_on(**how, **leans, executor=pool)
    assert speed.to_dict() == car.drawn_speed(32, progress=False).to_dict()
    assert drawn.to_dict() == car.drawn_ranking(ranking, 32, progress=False).to_dict()
    alone = car.leans_on(progress=False, **leans)
    assert leaning.leanings == alone.leanings
    monkeypatch.setattr(executors, "solved", None)
    assert car.drawn_speed(32, **how).to_dict() == speed.to_dict()
    assert car.drawn_ranking(ranking, 32, **how).to_dict() == drawn.to_dict()
    assert car.leans_on(**how, **leans).leanings == leaning.leanings


def test_a_ranking_is_the_same_from_pieces(car, tmp_path, monkeypatch):
    whole = ww.rank(car, progress=False).to_dict()
    heard, path = [], tmp_path / "journal"
    for piece in (1, 3, 4096):
        monkeypatch.setattr(menu_pieces, "PIECE", piece)
        with ThreadPoolExecutor(2) as pool:
            cut = ww.rank(car, None, None, lambda *how: heard.append(how), executor=pool)
        assert str(cut.to_dict()) == str(whole)  # as texts, since no number equals itself
        assert heard[-1] == (len(whole["sets"]),) * 2
    cheap = ww.rank(car, "150 EUR", progress=False, journal=path).to_dict()
    assert str(cheap) == str(ww.rank(car, "150 EUR", progress=False).to_dict())
    monkeypatch.setattr(executors, "solved", None)  # the budget is no business of the sets
    assert str(ww.rank(car, progress=False, journal=path).to_dict()) == str(whole)


def test_a_ranking_that_is_stopped_goes_on(car, tmp_path, monkeypatch):
    monkeypatch.setattr(menu_pieces, "PIECE", 1)
    path = tmp_path / "journal"
    some = ww.rank(car, progress=lambda done, total: done < 3, journal=path)
    assert some.status == "cancelled"
    assert 3 <= len(some.sets) < 8
    whole = ww.rank(car, progress=False)
    assert str(ww.rank(car, progress=False, journal=path).to_dict()) == str(whole.to_dict())


def test_groups_stay_whole():
    assert list(menu_pieces.whole_groups([])) == []
    assert list(menu_pieces.whole_groups([200, 56, 1, 300, 2])) == [(0, 2), (2, 3), (3, 4), (4, 5)]


def test_sets_that_are_damaged_are_refused(car):
    from windwall import _core

    found = _core.solve_groups(car.core, ["fairing"], 0, 1, 1, None)
    for wrong in (b"", found[:-1], found + b"1", found[:8], b"\xff" * 64):
        with pytest.raises(ValueError, match="no sets that this build has solved"):
            _core.rank(car.core, None, ["fairing"], 1, None, [wrong])
