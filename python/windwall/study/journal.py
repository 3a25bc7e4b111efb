"""What a study has solved so far, in one SQLite file: kept through kills, full disks, power cuts.

Every answer is its own transaction, under the key of its task. So nothing is counted twice, two
studies may write at once, and a study that is asked again goes on where it was.
"""

from __future__ import annotations

import errno
import hashlib
import os
import shutil
import sqlite3
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from typing import Any, Self

from windwall.errors import Problem, ScenarioError
from windwall.scenario import files
from windwall.scenario.data import ScenarioData
from windwall.study.tasks import solver

__all__ = [
    "FORMAT", "LITTLE", "MARK", "PATIENCE", "TABLES", "Journal", "JournalLike", "JournalPath",
    "opened", "study_key",
]  # fmt: skip

FORMAT = "windwall-journal/1"
MARK = 0x57574A31  # SQLite's application_id of it
PATIENCE = 60.0  # s that another writer is waited for
LITTLE = 1 << 18  # bytes of room, below which a write that failed is put down to the disk
TABLES = """
CREATE TABLE about (name TEXT PRIMARY KEY, value TEXT NOT NULL) WITHOUT ROWID;
CREATE TABLE answers (key TEXT PRIMARY KEY, answer BLOB NOT NULL, digest TEXT NOT NULL);
"""

JournalPath = str | os.PathLike[str]


class Journal:
    """Answers of one scenario, of one build of windwall, by the keys of their tasks."""

    def __init__(self, path: JournalPath, scenario: ScenarioData) -> None:
        self.path = os.fspath(path)
        with self._told():
            self._base = _connected(self.path)
            try:
                self._begin(scenario)
                self._check(scenario)
            except BaseException:
                self._base.close()
                raise

    def __enter__(self) -> Self:
        return self

    def __exit__(self, *_: object) -> None:
        self.close()

    def close(self) -> None:
        # The last one to close folds the log into the file; where there is no room it stays.
        self._base.close()

    def __len__(self) -> int:
        with self._told():
            return self._base.execute("SELECT count(*) FROM answers").fetchone()[0]

    def get(self, key: str) -> bytes | None:
        """The answer under a key; None where there is none, or none that is whole."""
        with self._told():
            found = self._base.execute(
                "SELECT answer, digest FROM answers WHERE key = ?", (key,)
            ).fetchone()
        return found[0] if found and _digest(found[0]) == found[1] else None

    def put(self, key: str, answer: bytes) -> None:
        """Keeps an answer for good before it returns. The same key has the same answer, so the
        second one is no news.
        """
        row = (key, answer, _digest(answer))
        with self._told():
            self._base.execute("INSERT OR REPLACE INTO answers VALUES (?, ?, ?)", row)

    def settled(self, name: str, make: Callable[[], int]) -> int:
        """A number that whoever comes first decides for all who go on."""
        with self._told():
            if (found := self._value(name)) is None:
                row = (name, str(make()))
                self._base.execute("INSERT OR IGNORE INTO about VALUES (?, ?)", row)
                found = self._value(name)
        return int(str(found))

    def _value(self, name: str) -> str | None:
        found = self._base.execute("SELECT value FROM about WHERE name = ?", (name,)).fetchone()
        return found[0] if found else None

    def _begin(self, scenario: ScenarioData) -> None:
        """Makes the tables in an empty file, all of them or none."""
        if not self._is_empty():
            return
        base = self._base
        base.execute("BEGIN IMMEDIATE")
        try:
            if self._is_empty():  # still, now that nobody else writes
                base.execute(f"PRAGMA application_id = {MARK}")
                for line in filter(str.strip, TABLES.split(";")):
                    base.execute(line)
                rows = [("format", FORMAT), *self._owner(scenario).items()]
                base.executemany("INSERT INTO about VALUES (?, ?)", rows)
            base.execute("COMMIT")
        except BaseException:
            if base.in_transaction:
                base.execute("ROLLBACK")
            raise

    def _is_empty(self) -> bool:
        return not self._base.execute("SELECT count(*) FROM sqlite_master").fetchone()[0]

    @staticmethod
    def _owner(scenario: ScenarioData) -> dict[str, str]:
        title = scenario.name
        return {"digest": scenario.digest, "title": title, "solver": solver()}

    def _check(self, scenario: ScenarioData) -> None:
        """Refuses what is no journal, or one of something else."""
        mark = self._base.execute("PRAGMA application_id").fetchone()[0]
        if mark != MARK:
            raise self._wrong("this is a data base of something else, no journal of windwall")
        if (found := self._value("format")) != FORMAT:
            raise self._wrong(f"this is {found!r}, and this version reads {FORMAT!r}")
        held = f"its answers ({len(self)}) are"
        owner = self._owner(scenario)
        if (digest := self._value("digest")) != owner["digest"]:
            raise self._wrong(
                f"{held} of another scenario, {self._value('title')!r} ({digest[:12]}…), not of "
                f"{owner['title']!r} ({owner['digest'][:12]}…): name another file for this one"
            )
        if (made_by := self._value("solver")) != owner["solver"]:
            raise self._wrong(
                f"{held} by {made_by}, and this is {owner['solver']}: answers of two builds are "
                "not mixed, so name another file and begin anew, or go on with that one"
            )

    def _wrong(self, said: str) -> ScenarioError:
        return ScenarioError([Problem("journal", 0, 0, said)], files.shown(self.path))

    @contextmanager
    def _told(self) -> Iterator[None]:
        """What SQLite says, in words that help."""
        try:
            yield
        except sqlite3.DatabaseError as failed:
            raise self._in_words(failed) from failed

    def _in_words(self, failed: sqlite3.DatabaseError) -> Exception:
        code = getattr(failed, "sqlite_errorcode", 0) & 0xFF
        if code == sqlite3.SQLITE_FULL or (code == sqlite3.SQLITE_IOERR and self._is_full()):
            return OSError(
                errno.ENOSPC,
                "no room is left on the disk of the journal; what it holds is whole: make room and "
                "ask again",
                self.path,
            )
        if code in (sqlite3.SQLITE_NOTADB, sqlite3.SQLITE_CORRUPT):
            return self._wrong(f"this is no journal, or a damaged one ({failed})")
        if code == sqlite3.SQLITE_BUSY:
            return self._wrong(f"another program has held it for {PATIENCE:.0f} s")
        return OSError(errno.EIO, f"the journal cannot be used: {failed}", self.path)

    def _is_full(self) -> bool:
        return shutil.disk_usage(os.path.dirname(os.path.abspath(self.path))).free < LITTLE


def _connected(path: str) -> sqlite3.Connection:
    """Open, and such that what is written stays written, whatever ends the program or the power."""
    base = sqlite3.connect(path, timeout=PATIENCE, isolation_level=None)
    try:
        _with_log(base)
        base.execute("PRAGMA synchronous = FULL")
    except BaseException:
        base.close()
        raise
    return base


def _with_log(base: sqlite3.Connection) -> None:
    """Several who open a new file at once take turns, for which SQLite has no patience here."""
    until = time.monotonic() + PATIENCE
    while True:
        try:
            base.execute("PRAGMA journal_mode = WAL")
            return
        except sqlite3.OperationalError as failed:
            if failed.sqlite_errorcode != sqlite3.SQLITE_BUSY or time.monotonic() > until:
                raise
            time.sleep(0.05)


def _digest(answer: bytes) -> str:
    return hashlib.blake2b(answer, digest_size=16).hexdigest()


JournalLike = JournalPath | Journal | None


@contextmanager
def opened(journal: JournalLike, scenario: ScenarioData) -> Iterator[Journal | None]:
    """The journal that is named, if any; one that is open stays so."""
    if journal is None or isinstance(journal, Journal):
        yield journal
        return
    with Journal(journal, scenario) as made:
        yield made


def study_key(*what: Any) -> str:
    """The name of a study in its journal."""
    return hashlib.sha256(repr(what).encode()).hexdigest()[:16]
