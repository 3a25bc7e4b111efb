"""Has the tasks of a study solved, wherever and however often that takes, and each told once."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from contextlib import contextmanager
from typing import NamedTuple

from windwall.scenario.data import ScenarioData
from windwall.study.executors import Executor, Future, Gone, Lanes, Lost, lanes_of
from windwall.study.journal import Journal, JournalLike, opened
from windwall.study.progress import Progress
from windwall.study.tasks import Task

__all__ = ["MOST_IN_VAIN", "Given", "Means", "Work", "carried_out", "means_of"]

MOST_IN_VAIN = 20  # losses of one task, after which it is not its workers that are to blame


class Means(NamedTuple):
    """What a study is carried out with."""

    lanes: Lanes
    journal: Journal | None = None


@contextmanager
def means_of(
    scenario: ScenarioData, executor: Executor, journal: JournalLike, threads: int = 0
) -> Iterator[Means | None]:
    """What is named; None where a study needs nothing but this process."""
    if executor is None and journal is None:
        yield None
        return
    with opened(journal, scenario) as kept:
        lanes = lanes_of(executor, threads)
        try:
            yield Means(lanes, kept)
        finally:
            lanes.close()


class Given(NamedTuple):
    """A task that somebody has in hand."""

    place: int
    task: Task
    key: str
    answered: int  # tasks by then, its own not among them
    attempt: int = 0
    in_vain: int = 0  # how often it was lost while no other came to its end either


def carried_out(
    tasks: Iterable[Task], total: int, means: Means, heard: Progress | None = None
) -> Iterator[tuple[int, bytes]]:
    """The place of each task and its answer, in the order in which they come. What the journal has
    is not solved again, and what it has not is there before it is told here. Fewer where the
    listener says so. `total` is of all items.
    """
    work = Work(tasks, total, means, heard)
    try:
        yield from work.answers()
    finally:
        work.stop()


class Work:
    """What is given out, and what came back."""

    def __init__(
        self, tasks: Iterable[Task], total: int, means: Means, heard: Progress | None
    ) -> None:
        self.tasks = enumerate(tasks)
        self.total, self.heard = total, heard
        self.lanes, self.journal = means
        self.begun: dict[Future, Given] = {}
        self.done = self.answered = 0
        self.goes_on = True

    def answers(self) -> Iterator[tuple[int, bytes]]:
        more = True
        while self.goes_on and (more or self.begun):
            room = self.lanes.ahead - len(self.begun)
            while more and room > 0 and self.goes_on:
                known, more, room = *self._give_out(), room - 1
                if known is not None:
                    yield known
            if self.begun and self.goes_on:
                yield from self._come_back(self.lanes.done(self.begun))
            self._tell(0)
        yield from self._come_back([one for one in self.begun if one.done()])

    def _give_out(self) -> tuple[tuple[int, bytes] | None, bool]:
        """The answer of the next task where it is known, and whether there may be more."""
        if (following := next(self.tasks, None)) is None:
            return None, False
        place, task = following
        key = task.key
        answer = self.journal.get(key) if self.journal is not None else None
        if answer is None:
            self._begin(Given(place, task, key, self.answered))
            return None, True
        self._tell(task.items)
        return (place, answer), True

    def _begin(self, given: Given) -> None:
        if given.in_vain >= MOST_IN_VAIN:
            raise Gone(
                f"a worker was lost {MOST_IN_VAIN} times over the same {given.task.items} items "
                f"of {given.task.question!r}: something in them ends it, or a script that asks for "
                'processes has no `if __name__ == "__main__":`'
            )
        future = self.lanes.begin(given.task, given.attempt, self._within)
        self.begun[future] = given

    def _within(self, done: int, _: int) -> bool:
        """How far a single task is; it is always ended, so that nothing half is kept."""
        self.goes_on = self._hear(self.done + done) and self.goes_on
        return True

    def _come_back(self, ended: list[Future]) -> Iterator[tuple[int, bytes]]:
        # What was given out first is also given out again first, or it might wait for ever.
        for future in sorted(ended, key=lambda one: self.begun[one].place):
            given = self.begun.pop(future)
            try:
                answer = self.lanes.answer(future)
            except Lost:
                if self.goes_on:
                    self._begin(self._once_more(given))
                continue
            self.answered += 1
            if self.journal is not None:
                self.journal.put(given.key, answer)
            self._tell(given.task.items)
            yield given.place, answer

    def _once_more(self, given: Given) -> Given:
        """One worker takes others' tasks with it, and those are not to blame: a loss counts where
        nothing was answered meanwhile. So whoever has a bad task gets all others first.
        """
        in_vain = given.in_vain + (given.answered == self.answered)
        return given._replace(answered=self.answered, attempt=given.attempt + 1, in_vain=in_vain)

    def _tell(self, items: int) -> None:
        self.done += items
        self.goes_on = self._hear(self.done) and self.goes_on

    def _hear(self, done: int) -> bool:
        return self.heard is None or self.heard(done, self.total) is not False

    def stop(self) -> None:
        """Keeps what came to its end and was not fetched, and lets go of the rest."""
        if self.journal is not None:
            for future in [one for one in self.begun if one.done()]:
                self._keep(future, self.begun.pop(future), self.journal)
        self.lanes.drop(list(self.begun))

    def _keep(self, future: Future, given: Given, journal: Journal) -> None:
        try:
            journal.put(given.key, self.lanes.answer(future))
        except Exception:  # what stopped the study is what is told
            return
