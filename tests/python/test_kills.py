"""A study is killed at random moments, again and again, and nothing that was solved is lost."""

import multiprocessing
import os
import random
import signal
import threading
import time
import uuid
from pathlib import Path

import numpy as np
import pytest

import windwall as ww
from python import studies
from python.studies import INPUTS, PIECE, READ, in_small_pieces, same_bits
from windwall.study import executors
from windwall.study.journal import Journal

PIECES = 60 // PIECE
MARK = "WINDWALL_TEST_OF_KILLS"  # in the environment of all that a killed study had started


# A copy of this process rather than a new one, which takes a second to begin.
FORK = multiprocessing.get_context("fork")


def _marked(mark, *study):
    os.environ[MARK] = mark
    studies.main(*study)


class Study:
    """One study in a folder, begun as often as it takes."""

    def __init__(self, folder, car, workers):
        self.folder, self.car, self.workers = folder, car, workers
        folder.mkdir()
        self.journal, self.log = folder / "journal", folder / "log"
        self.answer, self.scenario = folder / "answer.npz", folder / "car.json"
        self.log.touch()
        car.save(self.scenario)
        self.kills = self.held = 0

    def begin_and_kill(self, after):
        """Whether it was killed before it came to its end."""
        mark = uuid.uuid4().hex
        paths = [self.scenario, self.journal, self.log, self.answer]
        process = FORK.Process(target=_marked, args=(mark, *map(str, paths), self.workers))
        process.start()
        process.join(after)
        process.kill()
        process.join()
        killed = process.exitcode == -signal.SIGKILL
        assert killed or process.exitcode == 0
        self.kills += killed
        self._look(mark)
        return killed

    def _look(self, mark):
        """What was kept stays, what was solved was kept but for the piece in hand."""
        with Journal(self.journal, self.car) as kept:
            held = len(kept)
        assert self.held <= held <= PIECES
        self.held = held
        noted = self.log.read_text("utf-8").split()
        if not self.workers:
            assert len(set(noted)) - held <= 1  # one was solved, and killed before it was kept
            assert len(noted) <= held + self.kills
        assert _gone(mark)

    def came_out(self, plain):
        with np.load(self.answer) as found:
            return self.held == PIECES and all(
                found[name].tobytes() == plain[name].values.tobytes() for name in plain.variables
            )


def _gone(mark):
    """Whether no process of a killed study outlives it for long."""
    until = time.monotonic() + 60
    while _alive(mark):
        if time.monotonic() > until:
            return False
        time.sleep(0.05)
    return True


def _alive(mark):
    wanted = f"{MARK}={mark}".encode()
    for place in Path("/proc").glob("[0-9]*/environ"):
        try:
            if wanted in place.read_bytes():
                return True
        except OSError:
            continue
    return False


def kill_parents(car, plain, folder, kills, workers, span):
    """Kills so often, in as many studies as that takes, each of which ends well. The moments are
    spread over a longer time where a machine is slow, so that every few of them find something new.
    """
    dice, studied = random.Random(7 + workers), []
    while sum(one.kills for one in studied) < kills:
        study = Study(folder / f"study{len(studied)}", car, workers)
        studied.append(study)
        held = 0
        while study.begin_and_kill(dice.uniform(0, span)):
            span *= 1.0 if study.held > held else 1.5
            held = study.held
        assert study.came_out(plain)
        span /= 2
    return sum(one.kills for one in studied)


class Killer:
    """Kills a worker at random moments, each after something was solved since the last."""

    def __init__(self, pids, kills, seed):
        self.pids, self.left, self.dice = pids, kills, random.Random(seed)
        self.news, self.over = threading.Event(), False
        self.done = self.last = self.killed = 0
        self.thread = threading.Thread(target=self._kill)

    def __enter__(self):
        self.thread.start()
        return self

    def __exit__(self, *_):
        self.over = True
        self.news.set()
        self.thread.join()

    def heard(self, done, total):
        if done > self.done:
            self.done = done
            self.news.set()

    def _kill(self):
        while self.left:
            self.news.wait()
            self.news.clear()  # before it is looked at, so that no news is missed
            if self.over:
                return
            if self.done > self.last:
                time.sleep(self.dice.uniform(0, 0.2))
                self._count(self._one_killed())

    def _count(self, killed):
        self.last = self.done
        self.left -= killed
        self.killed += killed

    def _one_killed(self):
        try:
            os.kill(self.dice.choice(list(self.pids())), signal.SIGKILL)
        except (IndexError, ProcessLookupError):  # none is there, or it went by itself
            return False
        return True


def kill_workers(car, plain, folder, kills, executor, pids):
    """Likewise, workers of one executor."""
    killed = number = 0
    while killed < kills:
        path = folder / f"journal{number}"
        with Killer(pids, kills - killed, number) as killer:
            found = ww.sweep(
                car, INPUTS, READ, progress=killer.heard, executor=executor, journal=path
            )
        assert same_bits(found, plain)
        with Journal(path, car) as kept:
            assert len(kept) == PIECES
        killed, number = killed + killer.killed, number + 1
    return killed


@pytest.fixture
def own_pids(monkeypatch):
    """Pieces are small, and the processes that a study starts are known."""
    in_small_pieces(monkeypatch)
    made = []
    begin = executors.Processes._made

    def noted(self):
        made.append(begin(self))
        return made[-1]

    monkeypatch.setattr(executors.Processes, "_made", noted)
    return lambda: [one.pid for one in list((made[-1]._processes or {}).values())]


# Seconds on a machine of its own, but whole processes are started and ended.
@pytest.mark.slow
@pytest.mark.timeout(600)
@pytest.mark.filterwarnings("ignore:.*fork")
def test_some_kills(car, swept_grid, tmp_path, own_pids):
    assert kill_parents(car, swept_grid, tmp_path, 8, 0, 0.4) >= 8
    assert kill_workers(car, swept_grid, tmp_path, 2, 1, own_pids) >= 2


@pytest.mark.slow
@pytest.mark.timeout(3600)
@pytest.mark.filterwarnings("ignore:.*fork")
def test_two_hundred_kills(car, swept_grid, tmp_path, own_pids):
    distributed = pytest.importorskip("distributed")
    for name in ("alone", "pooled", "workers", "dask"):
        (tmp_path / name).mkdir()
    killed = [
        kill_parents(car, swept_grid, tmp_path / "alone", 140, 0, 0.4),
        kill_parents(car, swept_grid, tmp_path / "pooled", 10, 2, 6.0),
        kill_workers(car, swept_grid, tmp_path / "workers", 30, 2, own_pids),
    ]
    with (
        distributed.LocalCluster(
            n_workers=2, threads_per_worker=1, dashboard_address=None, memory_limit=0
        ) as cluster,
        distributed.Client(cluster) as client,
    ):
        nannies = cluster.workers.values()

        def pids():
            return [one.pid for one in nannies if one.pid]

        killed.append(kill_workers(car, swept_grid, tmp_path / "dask", 20, client, pids))
    print(f"killed: {killed}")
    assert sum(killed) >= 200
