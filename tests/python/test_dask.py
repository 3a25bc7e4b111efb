"""A Dask cluster of real processes: of any size, and with its workers and its scheduler killed."""

import logging
import os
import signal
import socket
import subprocess
import sys
from contextlib import contextmanager

import pytest

import windwall as ww
from python.studies import INPUTS, READ, in_small_pieces, same_bits
from windwall.study import executors
from windwall.study.executors import Gone
from windwall.study.journal import Journal

distributed = pytest.importorskip("distributed")
PATIENCE = 120  # s that a process may take to start where others are at work


@pytest.fixture(autouse=True)
def _small(monkeypatch):
    in_small_pieces(monkeypatch)


def ask(car, **how):
    return ww.sweep(car, INPUTS, READ, **({"progress": False} | how))


@contextmanager
def of_processes(workers):
    """A real cluster on this machine."""
    logging.getLogger("distributed").setLevel(logging.CRITICAL)
    with (
        distributed.LocalCluster(
            n_workers=workers, threads_per_worker=1, dashboard_address=None, memory_limit=0
        ) as cluster,
        distributed.Client(cluster) as client,
    ):
        yield client


@pytest.mark.slow
@pytest.mark.timeout(600)
@pytest.mark.parametrize("workers", [1, 2, 4])
def test_so_many_workers(car, swept_grid, workers):
    with of_processes(workers) as client:
        client.wait_for_workers(workers, timeout=300)
        assert same_bits(ask(car, executor=client), swept_grid)


def test_workers_killed_and_the_cluster_restarted(car, swept_grid, tmp_path):
    path, done_to = tmp_path / "journal", []

    def heard(done, total):
        if not done_to and done >= 8:
            done_to.append(done)
            os.kill(next(iter(client.run(os.getpid).values())), signal.SIGKILL)
        elif len(done_to) == 1 and done >= 30:
            done_to.append(done)
            client.restart()

    with of_processes(2) as client:
        found = ask(car, executor=client, journal=path, progress=heard)
    assert same_bits(found, swept_grid)
    assert len(done_to) == 2
    with Journal(path, car) as kept:
        assert len(kept) == 30


class Cluster:
    """A scheduler and a worker, each a process; both are begun again as their owner would."""

    def __init__(self, folder):
        with socket.socket() as free:
            free.bind(("127.0.0.1", 0))
            self.port = free.getsockname()[1]
        self.address, self.folder = f"tcp://127.0.0.1:{self.port}", folder
        self.processes = []

    def begin(self):
        where = ["--host", "127.0.0.1", "--no-dashboard"]
        self._start("dask_scheduler", "--port", str(self.port), *where)
        self._start("dask_worker", self.address, "--nthreads", "1", "--no-nanny", *where)

    def _start(self, name, *arguments):
        with open(self.folder / f"{name}{len(self.processes)}.log", "w", encoding="utf-8") as log:
            command = [sys.executable, "-m", f"distributed.cli.{name}", *arguments]
            self.processes.append(
                subprocess.Popen(command, cwd=self.folder, stdout=log, stderr=log)
            )

    def kill(self):
        """The scheduler by SIGKILL, of which its worker and the client learn by themselves."""
        scheduler = self.processes[-2]
        scheduler.kill()
        scheduler.wait()

    def end(self):
        for process in self.processes:
            process.kill()
            process.wait()


@pytest.fixture
def cluster(tmp_path):
    made = Cluster(tmp_path)
    made.begin()
    yield made
    made.end()


@pytest.fixture
def client(cluster):
    with distributed.Client(cluster.address, timeout=PATIENCE) as made:
        made.wait_for_workers(1, timeout=PATIENCE)
        yield made


def counted(monkeypatch, client):
    """How often each task was asked of the cluster."""
    asked, submit = [], client.submit

    def noted(solve, task, **how):
        asked.append(task.key)
        return submit(solve, task, **how)

    monkeypatch.setattr(client, "submit", noted)
    return asked


@pytest.mark.slow
@pytest.mark.timeout(600)
def test_a_scheduler_killed_and_begun_again(
    car, swept_grid, cluster, client, tmp_path, monkeypatch
):
    path, killed, heard_of = tmp_path / "journal", [], []
    asked = counted(monkeypatch, client)

    def heard(done, total):
        heard_of.append(done)
        if done >= 16 + 24 * len(killed) and len(killed) < 2:
            killed.append(done)
            cluster.kill()
            cluster.begin()

    found = ask(car, progress=heard, executor=client, journal=path)
    assert len(killed) == 2
    assert same_bits(found, swept_grid)
    assert heard_of[-1] == max(heard_of) == 60  # nothing was counted twice
    assert heard_of == sorted(heard_of)
    with Journal(path, car) as kept:
        assert len(kept) == 30
    # What was in the scheduler's hands is asked again, and nothing else.
    assert 30 < len(asked) <= 30 + 2 * 3
    assert len(set(asked)) == 30


@pytest.mark.slow
@pytest.mark.timeout(600)
def test_a_scheduler_that_stays_away(car, swept_grid, cluster, client, tmp_path, monkeypatch):
    monkeypatch.setattr(executors, "LET_GO", 2.0)
    path, killed = tmp_path / "journal", []

    def heard(done, total):
        if done >= 20 and not killed:
            killed.append(done)
            cluster.kill()

    how = {"progress": heard, "journal": path}
    with pytest.raises(Gone, match="its scheduler is gone"):
        ask(car, **how, executor=client)
    with Journal(path, car) as kept:
        assert 10 <= len(kept) <= 13
    assert same_bits(ask(car, **how), swept_grid)
