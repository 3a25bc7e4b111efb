"""Streams that are closed, full or left, names and answers that are hostile: a sentence and an exit
code, never a traceback.
"""

import json
import os
import subprocess
import sys

import pytest

from windwall.cli.output import harmless


@pytest.fixture
def shell(file):
    """Runs a line of shell in which `$windwall` is the command and `$car` a file."""

    def run(line, **variables):
        usual = {key: value for key, value in os.environ.items() if key != "PYTHONUNBUFFERED"}
        given = {"windwall": f"{sys.executable} -m windwall", "car": str(file)}
        said = subprocess.run(
            ["bash", "-c", line],
            capture_output=True,
            env=usual | given | variables,
            cwd=file.parent,
            check=False,
            timeout=100,
            stdin=subprocess.DEVNULL,
        )
        assert b"Traceback" not in said.stderr
        assert b"Exception ignored" not in said.stderr
        assert b"\x1b" not in said.stderr + said.stdout
        return said.returncode, said.stdout.decode(), said.stderr.decode()

    return run


@pytest.mark.parametrize("asked", ["check $car", "schema", "check $car --json", "--help"])
def test_a_full_output_is_exit_code_2(shell, asked):
    code, _, said = shell(f"$windwall {asked} > /dev/full")
    assert code == 2
    assert said == "standard output: No space left on device\n1 problem\n"


@pytest.mark.parametrize("asked", ["check $car", "schema", "speed $car --json"])
def test_a_closed_output_is_exit_code_2(shell, asked):
    code, _, said = shell(f"$windwall {asked} >&-")
    assert (code, said) == (2, "standard output: it is closed\n1 problem\n")


@pytest.mark.parametrize("asked", ["check $car", "schema", "--help"])
def test_a_reader_that_left_is_exit_code_141(shell, asked):
    # The reader is gone before the first line is there.
    code, _, said = shell(f"(sleep 0.3; $windwall {asked}; echo $? >&2) | true")
    assert (code, said) == (0, "141\n")


def test_a_closed_input_is_exit_code_2(shell):
    assert shell("$windwall check - <&-")[0::2] == (2, "standard input: it is closed\n1 problem\n")
    code, _, said = shell("$windwall new made.json <&-")
    assert (code, said) == (2, "the answers ended before the questions; nothing is written\n")


def test_a_closed_error_stream_changes_no_exit_code(shell):
    code, said, _ = shell("$windwall check no_such_file.json 2>&-")
    assert (code, said) == (2, "")


def test_answers_nested_without_end(shell, file):
    depth = 200_000
    (file.parent / "deep.json").write_text("[" * depth + "]" * depth)
    code, _, said = shell("$windwall new made.json --answers deep.json")
    assert (code, said) == (2, "deep.json: this is nested too deeply\n1 problem\n")


@pytest.mark.parametrize("name", [b"K\xfcbel.json", b"a\x1b[2Jb.json", b"a\xe2\x80\xaeb.json"])
@pytest.mark.parametrize("is_there", [True, False])
def test_a_hostile_file_name(shell, file, name, is_there):
    path = os.path.join(os.fsencode(file.parent), name)
    if is_there:
        with open(path, "wb") as made:
            made.write(file.read_bytes())
    code, said, complaint = shell('$windwall check "$name"', name=os.fsdecode(name))
    assert code == (0 if is_there else 2)
    text = said + complaint
    assert ("no problems" if is_there else "No such file") in text
    assert "\u202e" not in text


def test_hostile_words_are_repeated_escaped(shell):
    code, _, said = shell("$windwall check $car $'\\x1b[2J'")
    assert code == 2
    assert r"\x1b[2J" in said


@pytest.mark.parametrize("one", ["\x1b", "\x7f", "\u009b", "\u202e", "\r", "\ud800"])
def test_what_moves_a_cursor_is_escaped_as_json_does_it(one):
    text = harmless(f"Kübel{one} ☃\nb")
    assert one not in text
    assert json.loads(f'"{text}"', strict=False) == f"Kübel{one} ☃\nb"


@pytest.mark.parametrize("module", ["signal", "windwall._core", "argparse", "windwall.cli.new"])
def test_an_interrupt_while_modules_load(module, heeds_interrupts):
    """Sent to itself at the very import, so that no clock decides what is tried. What comes before,
    the interpreter's own start, is not ours to answer for: `windwall` alone loads nothing.
    """
    code = (
        "import os, sys\n"
        "class Sends:\n"
        "    def find_spec(self, name, path=None, target=None):\n"
        f"        if name == {module!r}:\n"
        "            os.kill(os.getpid(), 2)\n"
        "sys.meta_path.insert(0, Sends())\n"
        "from windwall.cli.main import main\n"
        "sys.exit(main(['schema']))"
    )
    said = subprocess.run(
        [sys.executable, "-c", code], capture_output=True, text=True, check=False, timeout=60
    )
    assert (said.returncode, said.stdout, said.stderr) == (130, "", "interrupted\n")
