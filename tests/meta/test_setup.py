"""A long build shows on a terminal that it lives, and keeps silent anywhere else."""

import os
import pty
import re
import subprocess
from pathlib import Path

SETUP = (Path(__file__).parents[2] / ".ci/setup").read_text(encoding="utf-8")
FUNCTIONS = "\n".join(
    re.search(rf"^{name}\(\) \{{.*?^\}}", SETUP, re.MULTILINE | re.DOTALL)[0]
    for name in ("quietly", "watched", "count_from")
)
BUILDS = "echo '  [1/2] Building a'; sleep 2; echo '  [2/2] Linking'; sleep 1; exit"


def script(code):
    return ["bash", "-c", f'set -euo pipefail\n{FUNCTIONS}\nwatched bash -c "{BUILDS} {code}"']


def on_a_terminal(code):
    """What is printed there, and the exit code."""
    ours, theirs = pty.openpty()
    running = subprocess.Popen(script(code), stdin=theirs, stdout=theirs, stderr=theirs)
    os.close(theirs)
    said = b""
    try:
        while part := os.read(ours, 1024):
            said += part
    except OSError:  # the terminal has closed
        pass
    os.close(ours)
    return said.decode(), running.wait()


def test_a_terminal_is_told_how_far_the_build_is():
    said, code = on_a_terminal(0)
    assert code == 0
    assert said.index("[1/2]") < said.index("[2/2]")
    assert "Building" not in said


def test_a_build_that_fails_is_shown_whole_with_its_code():
    said, code = on_a_terminal(3)
    assert code == 3
    assert "[2/2] Linking" in said


def test_nothing_is_said_where_nobody_looks():
    done = subprocess.run(script(0), capture_output=True, text=True)
    assert (done.returncode, done.stdout, done.stderr) == (0, "", "")
