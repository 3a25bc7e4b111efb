"""The command line: exit codes, one document, nothing that moves a terminal."""

import json
import os
import signal
import subprocess
import sys
import time

import pytest

from windwall.cli.main import main


def test_each_question_is_answered_as_text_and_as_json(windwall, file):
    for question in ("speed", "rank", "check"):
        said = windwall(question, file)
        assert (said.returncode, said.stderr) == (0, "")
        assert "\x1b" not in said.stdout
        said = windwall(question, file, "--json")
        assert said.returncode == 0
        assert isinstance(json.loads(said.stdout), dict)


def test_the_command_holds_the_model_against_what_was_observed(windwall, file, car, best, ranking):
    found = car.diagnose()
    told = best.summary(found, car.drawn_speed(), car.shortfall())
    assert windwall("speed", file).stdout == told + "\n"
    challenged = car.diagnose(ranking)
    assert (
        windwall("rank", file).stdout == ranking.summary(challenged, None, car.shortfall()) + "\n"
    )
    assert json.loads(windwall("speed", file, "--json").stdout)["observed"]


def test_no_answer_is_exit_code_1(windwall, file, document):
    document["goal"]["grade"] = "20 %"
    document["body"]["mass"] = "2000 kg"
    file.write_text(json.dumps(document))
    for question in ("speed", "rank"):
        assert windwall(question, file).returncode == 1
        said = windwall(question, file, "--json")
        assert said.returncode == 1
        assert json.loads(said.stdout)["answered"] is False
    assert "clutch" in windwall("speed", file).stdout


def test_the_offending_line_is_shown_with_its_place(windwall, file, document):
    document["body"]["mass"] = "2000"
    file.write_text(json.dumps(document, indent=1))
    said = windwall("speed", file)
    assert said.returncode == 2
    assert said.stdout == ""
    complaint, line, mark, count = said.stderr.splitlines()
    assert complaint.startswith(f"{file}:")
    assert "body/mass" in complaint
    assert line.strip() == '"mass": "2000",'
    assert line[mark.index("^")] == '"'
    assert count == "1 problem"


def test_check_as_json_is_the_document_that_is_promised(windwall, file, document):
    document["body"]["mass"] = "2000"
    file.write_text(json.dumps(document, indent=1))
    said = windwall("check", file, "--json")
    assert said.returncode == 2
    made = json.loads(said.stdout)
    assert made["cautions"] == []
    (problem,) = made["problems"]
    assert set(problem) == {"address", "line", "column", "message"}


@pytest.mark.parametrize(
    "arguments",
    [
        ["speed"],
        ["sped", "car.json"],
        ["speed", "no_such_file.json"],
        ["speed", "."],
        ["rank", "car.json", "--threads", "many"],
        ["rank", "car.json", "--budget", "500 USD"],
        ["schema", "--output", "no/such/folder/schema.json"],
    ],
)
def test_wrong_words_are_exit_code_2(windwall, file, arguments):
    said = windwall(*arguments, cwd=file.parent)
    assert said.returncode == 2
    assert said.stderr
    assert "Traceback" not in said.stderr


def test_hostile_text_cannot_reach_the_terminal(windwall, file):
    file.write_bytes(b'{"title": "\x1b[2J\xff\xe2\x80\xae", "body": 1}')
    said = windwall("check", file)
    assert said.returncode == 2
    assert "\x1b" not in said.stderr
    assert "‮" not in said.stderr


def test_a_letter_that_the_terminal_lacks_does_no_harm(windwall, file, document):
    document["title"] = "Kübelwagen ☃"
    file.write_text(json.dumps(document))
    poor = os.environ | {"PYTHONIOENCODING": "ascii", "LC_ALL": "C"}
    said = subprocess.run(
        [sys.executable, "-m", "windwall", "speed", str(file)],
        capture_output=True,
        env=poor,
        check=False,
        timeout=60,
    )
    assert said.returncode == 0
    assert said.stdout.startswith(b"K\\xfcbelwagen")


def test_standard_input_is_a_file_too(windwall, file):
    said = windwall("check", "-", input=file.read_text(encoding="utf-8"))
    assert said.returncode == 0
    assert "standard input: no problems" in said.stdout


def test_a_budget_is_taken(windwall, file):
    said = windwall("rank", file, "--budget", "130 EUR", "--threads", "1", "--json")
    made = json.loads(said.stdout)
    assert made["budget"] == 130
    assert "intercooler" not in made["target"]


def test_the_schema_is_printed_or_written(windwall, tmp_path):
    printed = windwall("schema")
    path = tmp_path / "schema.json"
    written = windwall("schema", "--output", path)
    assert (printed.returncode, written.returncode, written.stdout) == (0, 0, "")
    assert json.loads(printed.stdout) == json.loads(path.read_text(encoding="utf-8"))


def test_a_reader_that_leaves_does_no_harm(file):
    said = subprocess.run(
        f"{sys.executable} -m windwall rank {file} | head -1",
        shell=True,
        capture_output=True,
        check=False,
        timeout=60,
    )
    assert said.stderr == b""


def test_versions_and_help(windwall, capsys):
    assert windwall("--version").stdout.startswith("windwall ")
    assert main(["--help"]) == 0
    assert "130 interrupted" in capsys.readouterr().out


def test_interrupted_is_exit_code_130(file, document, heeds_interrupts):
    document["upgrades"] = [
        {"id": f"lighter_{i}", "add": {"body/mass": f"-{i + 1} kg"}} for i in range(16)
    ]
    file.write_text(json.dumps(document))
    code = (
        "import sys, windwall.cli.answers as answers, windwall.cli.command as c\n"
        "ask = answers.rank\n"
        "def heard(done, total): print('working', flush=True)\n"
        "answers.rank = lambda *a, **k: ask(*a, **k, progress=heard)\n"
        "sys.exit(c.run_command(sys.argv[1:]))"
    )
    running = subprocess.Popen(
        [sys.executable, "-c", code, "rank", str(file)],
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        text=True,
    )
    assert running.stdout.readline() == "working\n"  # the workers are at it
    running.send_signal(signal.SIGINT)
    before = time.monotonic()
    _, said = running.communicate(timeout=60)
    assert running.returncode == 130
    assert said == "interrupted\n"
    assert time.monotonic() - before < 10
