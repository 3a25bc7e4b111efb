"""The command tells by its exit code whether it answered."""

import json
import signal
import subprocess
import sys
import time


def test_answered(windwall, file):
    assert windwall("speed", file).returncode == 0
    said = windwall("speed", file, "--json")
    assert said.returncode == 0
    assert json.loads(said.stdout)["status"] == "solved"


def test_no_answer(windwall, file, document):
    document["goal"]["grade"] = "20 %"
    document["body"]["mass"] = "2000 kg"
    file.write_text(json.dumps(document))
    said = windwall("speed", file)
    assert said.returncode == 1
    assert "clutch" in said.stdout + said.stderr


def test_wrong_input(windwall, file, document):
    document["body"]["mass"] = "2000"
    file.write_text(json.dumps(document))
    said = windwall("check", file, "--json")
    assert said.returncode == 2
    problems = json.loads(said.stdout)["problems"]
    assert [problem["address"] for problem in problems] == ["body/mass"]
    assert windwall("speed", file).returncode == 2
    assert windwall("speed", file.parent / "none.json").returncode == 2


def test_interrupted(file, document):
    """More upgrades than can be ranked in the time it takes to interrupt."""
    document["upgrades"] = [
        {"id": f"lighter_{i}", "cost": "1 EUR", "add": {"body/mass": f"-{i + 1} kg"}}
        for i in range(14)
    ]
    file.write_text(json.dumps(document))
    running = subprocess.Popen(
        [sys.executable, "-m", "windwall", "rank", str(file)],
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
    )
    time.sleep(3)
    running.send_signal(signal.SIGINT)
    running.communicate(timeout=60)
    assert running.returncode == 130


def test_the_schema_agrees_with_the_reader(windwall, document, oracle):
    jsonschema = oracle("jsonschema")
    said = windwall("schema")
    assert said.returncode == 0
    schema = json.loads(said.stdout)
    jsonschema.Draft202012Validator.check_schema(schema)
    validator = jsonschema.Draft202012Validator(schema)
    assert validator.is_valid(document)
    for break_it in (
        lambda d: d["body"].update(mass="340"),
        lambda d: d["body"].update(mas="340 kg"),
        lambda d: d["body"].pop("drag_area"),
        lambda d: d["charge_path"][2].update(kind="rotary_blower"),
        lambda d: d["engine"].update(bore="80 psi"),
    ):
        broken = json.loads(json.dumps(document))
        break_it(broken)
        assert not validator.is_valid(broken)
