"""What a shell is offered when somebody presses the tab key, tried in a real one."""

import shutil
import subprocess
import sys
from pathlib import Path

import pytest

CAR = "scenarios/airfield_cyclecar.json"
ASK = """
eval "$(windwall completion bash)"
COMP_LINE="$1"; COMP_POINT=${#COMP_LINE}; COMP_TYPE=9; COMP_KEY=9
_python_argcomplete windwall "${1##* }" ""
printf '%s\\n' "${COMPREPLY[@]}"
"""
needs_bash = pytest.mark.skipif(shutil.which("bash") is None, reason="no bash here")


@pytest.fixture
def offered():
    def ask(line):
        path = f"{Path(sys.executable).parent}:/usr/bin:/bin"
        told = subprocess.run(
            ["bash", "-c", ASK, "ask", line],
            capture_output=True, text=True, check=True, env={"PATH": path},
        )  # fmt: skip
        assert told.stderr == ""
        return told.stdout.split()

    return ask


@needs_bash
@pytest.mark.parametrize(
    "line, words",
    [
        ("windwall re", {"report"}),
        ("windwall kinds posi", {"positive_blower"}),
        (f"windwall set {CAR} body/m", {"body/mass="}),
        (f"windwall sweep {CAR} --vary charge_path/blower/dr", {"charge_path/blower/drive_ratio"}),
        (f"windwall sweep {CAR} --read manifold/b", {"manifold/boost"}),
        (f"windwall speed {CAR} --install sh", {"shroud"}),
        (f"windwall drive {CAR} th", {"three_runs"}),
        (f"windwall plot {CAR} kn", {"knock"}),
    ],
)
def test_a_word_is_completed(offered, line, words):
    assert set(offered(line)) == words


@needs_bash
def test_only_scenarios_and_folders_are_offered_where_one_is_wanted(offered, tmp_path):
    (tmp_path / "notes.txt").write_text("none", encoding="utf-8")
    (tmp_path / "answers.json").write_text("{}", encoding="utf-8")
    (tmp_path / "folder").mkdir()
    shutil.copy(CAR, tmp_path / "mine.json")
    (tmp_path / "page.html").write_bytes(Path(CAR).read_bytes())  # a page has its scenario inside
    expected = {f"{tmp_path}/{name}" for name in ("folder/", "mine.json", "page.html")}
    assert set(offered(f"windwall speed {tmp_path}/")) == expected
    assert set(offered(f"windwall compare {CAR} {tmp_path}/m")) == {f"{tmp_path}/mine.json"}


@needs_bash
def test_a_broken_file_offers_nothing_and_says_nothing(offered, tmp_path):
    (tmp_path / "broken.json").write_text("{", encoding="utf-8")
    assert offered(f"windwall set {tmp_path}/broken.json bo") == []


@pytest.mark.parametrize("shell", ["bash", "zsh", "fish"])
def test_every_shell_has_its_script(windwall, shell):
    told = windwall("completion", shell)
    assert told.returncode == 0
    assert "windwall" in told.stdout
    assert windwall("completion", "csh").returncode == 2
