"""What only a terminal shows: colour, and none where it is not wanted."""

import os
import pty
import subprocess
import sys

import pytest

import windwall as ww


def on_a_terminal(*words, **environment):
    """What a command complains about where standard error is a terminal."""
    ours, theirs = pty.openpty()
    bare = {key: value for key, value in os.environ.items() if key != "NO_COLOR"}
    command = [sys.executable, "-m", "windwall", *map(str, words)]
    subprocess.run(command, stderr=theirs, env=bare | environment, check=False, timeout=60)
    said = os.read(ours, 1 << 16).decode()
    os.close(ours)
    os.close(theirs)
    return said


def test_the_mark_is_red_on_a_terminal_alone(windwall, file, document):
    file.write_text('{"body": {"mass": "2000"}}')
    assert "^\x1b[0m" in on_a_terminal("check", file)
    assert "\x1b" not in on_a_terminal("check", file, NO_COLOR="1")
    assert "\x1b" not in windwall("check", file).stderr


def test_a_file_s_name_is_not_ranked():
    with pytest.raises(TypeError, match=r'rank\(load\("car.json"\)\)'):
        ww.rank("car.json")
