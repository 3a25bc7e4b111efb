"""Who solves the pieces of a study: this process, a pool, or a Dask cluster.

All of them do the same with a task, so that an answer does not depend on them. A worker that is
lost is replaced and its task given out again; since an answer is made of its task alone, whether it
had been solved before makes no difference.
"""

from __future__ import annotations

import concurrent.futures
import multiprocessing
import os
import signal
import threading
import time
from collections.abc import Collection
from concurrent.futures.process import BrokenProcessPool
from typing import Any, Protocol

from windwall.study.tasks import Listener, Task, solved

__all__ = [
    "AHEAD", "LET_GO", "LOOKS", "Dask", "Executor", "Future", "Gone", "Here", "Lanes", "Lost",
    "Pool", "Processes", "lanes_of",
]  # fmt: skip

AHEAD = 2  # tasks that wait behind each one that is being solved
LOOKS = (0.002, 0.05)  # s between two looks at what is done: at first, and at most
LET_GO = 60.0  # s that a Dask scheduler may be away

Future = Any


class Lost(Exception):  # noqa: N818  # it is no error of anybody
    """What was to solve a task is gone, and with it the answer."""


class Gone(RuntimeError):  # noqa: N818
    """Nobody is left to solve anything."""


class Lanes(Protocol):
    """What tasks are given to."""

    @property
    def lanes(self) -> int:
        """How many are solved at once."""
        ...

    @property
    def ahead(self) -> int:
        """How many are given out at most."""
        ...

    def begin(self, task: Task, attempt: int, heard: Listener | None) -> Future: ...

    def done(self, begun: Collection[Future]) -> list[Future]:
        """Those that came to an end, after a short wait; maybe none."""
        ...

    def answer(self, future: Future) -> bytes:
        """Of a task that came to its end. Raises `Lost` where that has to be tried again."""
        ...

    def drop(self, begun: Collection[Future]) -> None:
        """Nobody waits for these any longer."""
        ...

    def close(self) -> None: ...


class Here:
    """One task after the other, each over the cores of this machine."""

    lanes = ahead = 1

    def __init__(self, threads: int) -> None:
        self.threads = threads

    def begin(self, task: Task, attempt: int, heard: Listener | None) -> Future:
        made: concurrent.futures.Future[bytes] = concurrent.futures.Future()
        made.set_result(solved(task, self.threads, heard))
        return made

    def done(self, begun: Collection[Future]) -> list[Future]:
        return list(begun)

    def answer(self, future: Future) -> bytes:
        return future.result()

    def drop(self, begun: Collection[Future]) -> None:
        pass

    def close(self) -> None:
        pass


class Pool:
    """A pool of `concurrent.futures` that somebody else opens and closes."""

    def __init__(self, executor: concurrent.futures.Executor) -> None:
        self.executor = executor
        self.lanes = int(getattr(executor, "_max_workers", os.cpu_count() or 1))
        self.ahead = self.lanes * (1 + AHEAD)

    def begin(self, task: Task, attempt: int, heard: Listener | None) -> Future:
        try:
            return self.executor.submit(solved, task)
        except BrokenProcessPool as broken:
            raise self._lost() from broken

    def done(self, begun: Collection[Future]) -> list[Future]:
        wait = concurrent.futures.wait
        return list(wait(begun, LOOKS[1], concurrent.futures.FIRST_COMPLETED).done)

    def answer(self, future: Future) -> bytes:
        try:
            return future.result()
        except BrokenProcessPool as broken:
            raise self._lost() from broken

    def _lost(self) -> Exception:
        return Gone(
            "a process of the pool was killed, and with it goes the pool: make another one, or "
            "name a number of processes, executor=4, and those lost are replaced"
        )

    def drop(self, begun: Collection[Future]) -> None:
        for future in begun:
            future.cancel()

    def close(self) -> None:
        pass


class Processes(Pool):
    """So many processes of our own; where one is killed all are made anew."""

    def __init__(self, count: int) -> None:
        self.count = count
        super().__init__(self._made())

    def _made(self) -> concurrent.futures.ProcessPoolExecutor:
        fresh = multiprocessing.get_context("spawn")  # since threads do not survive a fork
        return concurrent.futures.ProcessPoolExecutor(self.count, fresh, _stay_with_parent)

    def begin(self, task: Task, attempt: int, heard: Listener | None) -> Future:
        try:
            return self.executor.submit(solved, task)
        except (BrokenProcessPool, OSError):  # the latter where it breaks just now
            self.executor.shutdown(wait=False, cancel_futures=True)
            self.executor = self._made()
            return self.executor.submit(solved, task)

    def _lost(self) -> Exception:
        return Lost()

    def close(self) -> None:
        # Whoever is still at work is at something that nobody waits for.
        for process in list((getattr(self.executor, "_processes", None) or {}).values()):
            process.terminate()
        self.executor.shutdown(wait=True, cancel_futures=True)


def _stay_with_parent() -> None:
    """A worker hears no Ctrl-C, which is the parent's, and does not outlive it."""
    signal.signal(signal.SIGINT, signal.SIG_IGN)
    parent = multiprocessing.parent_process()

    def watch() -> None:
        if parent is not None:
            parent.join()
            os._exit(1)

    threading.Thread(target=watch, daemon=True).start()


class Dask:
    """The workers of a Dask cluster, as many as there are at the moment."""

    def __init__(self, client: Any) -> None:
        self.client = client

    @property
    def lanes(self) -> int:
        return max(1, sum(self.client.nthreads().values()))

    @property
    def ahead(self) -> int:
        return self.lanes * (1 + AHEAD)

    def begin(self, task: Task, attempt: int, heard: Listener | None) -> Future:
        self._wait_for_scheduler()
        # A task that was lost is another one to the scheduler, which else remembers how it ended.
        key = f"windwall-{task.key}-{attempt}"
        try:
            return self.client.submit(solved, task, key=key, pure=False)
        except Exception as failed:
            raise Gone(self._gone()) from failed

    def _wait_for_scheduler(self) -> None:
        until = time.monotonic() + LET_GO
        while self.client.status != "running":
            if self.client.status == "closed" or time.monotonic() > until:
                raise Gone(self._gone())
            time.sleep(LOOKS[1])

    def _gone(self) -> str:
        return f"the Dask client is {self.client.status}, its scheduler is gone"

    def done(self, begun: Collection[Future]) -> list[Future]:
        until = time.monotonic() + LOOKS[1]
        while not (ended := [one for one in begun if one.done()]) and time.monotonic() < until:
            time.sleep(LOOKS[0])
        return ended

    def answer(self, future: Future) -> bytes:
        from distributed import KilledWorker
        from distributed.comm import CommClosedError

        try:
            return future.result(timeout=LET_GO)
        except (
            KilledWorker,
            CommClosedError,
            concurrent.futures.CancelledError,
            TimeoutError,
        ) as lost:
            raise Lost from lost

    def drop(self, begun: Collection[Future]) -> None:
        if begun and self.client.status == "running":
            self.client.cancel(list(begun))

    def close(self) -> None:
        pass


Executor = Any  # nothing, a number of processes, a pool of `concurrent.futures`, a Dask client


def lanes_of(executor: Executor, threads: int = 0) -> Lanes:
    """Who is meant."""
    if executor is None:
        return Here(threads)
    if isinstance(executor, int) and not isinstance(executor, bool) and executor > 0:
        return Processes(executor)
    if isinstance(executor, concurrent.futures.Executor):
        return Pool(executor)
    if _is_dask(executor):
        return Dask(executor)
    raise TypeError(
        "executor= takes a number of processes such as 4, a pool of concurrent.futures or a "
        f"dask.distributed.Client, not {executor!r}"
    )


def _is_dask(executor: Any) -> bool:
    """Told without loading it: who has a client has loaded it."""
    return any(
        one.__module__.split(".")[0] == "distributed" and one.__name__ == "Client"
        for one in type(executor).__mro__
    )
