"""`windwall new` on a terminal as somebody has it: arrow keys move in the line that is typed."""

import json
import os
import select
import subprocess
import sys

import pytest

pty = pytest.importorskip("pty")
pytest.importorskip("readline")

LEFT, RIGHT, UP, DOWN = "\x1b[D", "\x1b[C", "\x1b[A", "\x1b[B"
BACKSPACE, ENTER, END_OF_INPUT = "\x7f", "\r", "\x04"
PATIENCE = 60  # s, until a talk that says nothing is taken for stuck


class Terminal:
    """A talk on a pseudo-terminal: what was shown, and what is typed at each prompt."""

    def __init__(self, *words, cwd):
        self._hand, line = pty.openpty()
        plain = {"TERM": "xterm", "INPUTRC": os.devnull, "HOME": str(cwd), "COLUMNS": "100"}
        self._talk = subprocess.Popen(
            [sys.executable, "-m", "windwall", *words], cwd=cwd, env=os.environ | plain,
            stdin=line, stdout=line, stderr=line, start_new_session=True,
        )  # fmt: skip
        os.close(line)
        self.shown = ""

    def __enter__(self):
        return self

    def __exit__(self, *_):
        self._talk.kill()
        self._talk.wait()
        os.close(self._hand)

    def answer(self, keys):
        self._read(lambda: self.shown.endswith("> "))
        self.shown = ""
        os.write(self._hand, keys.encode())

    def ends(self):
        self._read(lambda: False)
        return self._talk.wait(PATIENCE)

    def _read(self, is_enough):
        while not is_enough():
            ready, _, _ = select.select([self._hand], [], [], PATIENCE)
            assert ready, self.shown
            try:
                read = os.read(self._hand, 4096).decode("utf-8", "replace")
            except OSError:  # as a closed terminal is told
                read = ""
            if not read:
                assert self._talk.wait(PATIENCE) is not None
                return
            self.shown += read


@pytest.fixture
def talked(tmp_path):
    """What the draft keeps of answers that are typed, by the names of their questions."""

    def run(*answers):
        with Terminal("new", "mine.json", cwd=tmp_path) as terminal:
            for keys in answers:
                terminal.answer(keys + ENTER)
            terminal.answer(END_OF_INPUT)
            terminal.ends()
        return json.loads((tmp_path / "mine.answers.json").read_text("utf-8"))

    return run


def test_left_and_right_move_in_the_answer(talked):
    kept = talked("asp" + 3 * LEFT + "W", "meXric" + 3 * LEFT + BACKSPACE + "t" + 3 * RIGHT)
    assert kept == {"title": "Wasp", "units": "metric"}


def test_up_brings_back_what_was_typed_and_down_leaves_it(talked):
    kept = talked("?", UP + DOWN + "Wasp", "us", "back", UP + UP)
    assert kept == {"title": "Wasp", "units": "us"}
