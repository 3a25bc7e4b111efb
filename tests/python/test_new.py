"""A scenario from questions: answers typed, left empty, mended, prepared and broken off."""

import json
import os
import signal
import subprocess
import sys

import pytest

import windwall as ww
from python.new_answers import ANSWERS, LEAST, typed
from windwall.cli.new_asked import asked
from windwall.cli.new_questions import QUESTIONS, document, stand_in, trial

ADDRESSES = {question.name: question.address for question in QUESTIONS}


@pytest.fixture
def path(tmp_path):
    return tmp_path / "mine.json"


def test_answers_make_a_file_that_answers(windwall, path):
    said = windwall("new", path, input=typed(ANSWERS))
    assert (said.returncode, said.stderr) == (0, "")
    made = json.loads(path.read_text("utf-8"))
    assert made["title"] == "Orchard racer"
    assert made["body"] == {"mass": "348 ± 5 kg", "drag_area": "0.70 ± 0.05 m2"}
    assert [part["kind"] for part in made["driveline"]] == ["chain", "gearbox", "chain"]
    assert made["driveline"][1]["ratios"] == [3.2, 2.0, 1.45, 1.1]
    assert made["day"] == {"temperature": "33 degC", "pressure": "98.4 kPa"}
    assert made["observed"] == [
        {
            "what": "top speed",
            "speed": "122 ± 2 km/h",
            "gear": 4,
            "boost": "29 ± 4 kPa",
            "knock": "not heard",
        }
    ]
    assert windwall("check", path).returncode == 0
    answer = windwall("speed", path)
    assert (answer.returncode, answer.stderr) == (0, "")
    assert answer.stdout.startswith("Orchard racer")


def test_a_measured_speed_that_the_model_is_far_from_is_said_at_the_end(windwall, path):
    sets = [word for name, text in (ANSWERS | {"seen_speed": "90 ± 2 km/h"}).items()
            for word in ("--set", f"{name}={text}")]  # fmt: skip
    said = " ".join(windwall("new", path, *sets).stdout.split())
    model = ww.load(path).top_speed().goal_speed * 3.6
    assert f"The model has {model:.1f} km/h where 90 km/h was observed: +" in said
    assert said.index("standard deviations off. CAUTION: the model is over 2") < said.index(
        "Values"
    )
    near = windwall("new", path, "--force", *sets, "--set", f"seen_speed={model:.0f} ± 2 km/h")
    assert "standard deviations off." in " ".join(near.stdout.split())
    assert "CAUTION" not in near.stdout


def test_empty_answers_stay_out_of_the_file(windwall, path):
    said = windwall("new", path, input=typed(LEAST))
    assert said.returncode == 0
    made = json.loads(path.read_text("utf-8"))
    assert set(made) == {
        "format", "day", "body", "charge_path", "engine", "driveline", "tyres",
    }  # fmt: skip
    assert [part["id"] for part in made["charge_path"]] == ["throttle"]
    assert [part["id"] for part in made["driveline"]] == ["gearbox"]
    assert "blower_ratio" not in said.stdout
    assert "seen_gear" not in said.stdout


def test_a_direct_gearbox_with_a_final_drive_gets_an_answer(windwall, path):
    least = LEAST | {"gears": "3.2 2.0 1.4 1", "final_drive": "4.1", "tyre": "265 mm"}
    said = windwall("new", path, input=typed(least))
    made = json.loads(path.read_text("utf-8"))
    assert said.returncode == 0
    assert made["tyres"] == {"rolling_radius": "265 mm"}
    assert made["driveline"][1] == {"id": "final_drive", "kind": "final_drive", "ratio": 4.1}
    assert windwall("speed", path).returncode == 0


WRONG = {
    "cylinders": "many",
    "bore": "76 kg",
    "throttle": "3 m",
    "mass": "348 kgs",
    "tyre": "round",
    "altitude": "14 psi",
    "gears": "1.1, 2.0",
    "seen_knock": "a little",
}


def test_a_wrong_answer_is_told_in_the_words_of_the_loader_and_asked_again(windwall, path):
    lines = []
    for line in QUESTIONS:
        lines += [WRONG[line.name]] if line.name in WRONG else []
        lines.append(ANSWERS.get(line.name, ""))
    said = windwall("new", path, input="\n".join([*lines, ""]))
    assert said.returncode == 0
    bad = json.loads(trial({}))
    bad["body"]["mass"] = WRONG["mass"]
    with pytest.raises(ww.ScenarioError) as caught:
        ww.loads(json.dumps(bad))
    (problem,) = caught.value.problems
    assert f" body/mass: {problem.message} " in " ".join(said.stdout.split())
    for word in ("cylinders", "bore", "compression_ratio"):
        assert said.stdout.count(f"\n{word}: ") == 1  # the question stands once, whatever comes
    told = [line for line in said.stdout.splitlines() if line.startswith("  ")]
    for name in WRONG:
        address = {"altitude": "day/pressure"}.get(name, ADDRESSES[name])
        assert any(line.startswith(f"  {address}") for line in told), name
    assert ww.load(path).get("body/mass") == 348


def test_something_needed_is_asked_until_it_is_there(windwall, path):
    missing = typed(LEAST).replace(f"{LEAST['mass']}\n", f"\n\n{LEAST['mass']}\n")
    said = windwall("new", path, input=missing)
    assert said.returncode == 0
    told = [line for line in said.stdout.splitlines() if line.startswith("  body")]
    assert len(told) >= 2
    assert told[0] == told[1]
    assert "is missing" in told[0]


def test_an_end_in_the_middle_keeps_the_answers_and_says_how_to_go_on(windwall, path):
    lines = typed(ANSWERS).split("\n")
    said = windwall("new", path, input="\n".join([*lines[:5], ""]))
    assert said.returncode == 2
    assert "no scenario is written. 3 answers are kept in" in said.stderr
    assert f"windwall new {path}" in said.stderr
    assert not path.exists()
    draft = path.with_name("mine.answers.json")
    kept = json.loads(draft.read_text("utf-8"))
    assert [kept["cylinders"], kept["bore"]] == ["2", "76 mm"]
    again = windwall("new", path, input="\n".join(lines[5:]))
    assert (again.returncode, again.stderr) == (0, "")
    assert "\nbore: " not in again.stdout
    assert ww.load(path).get("engine/bore") == pytest.approx(76e-3)
    assert not draft.exists()


def test_an_interrupt_writes_nothing(path, heeds_interrupts):
    running = subprocess.Popen(
        [sys.executable, "-u", "-m", "windwall", "new", str(path)],
        stdin=subprocess.PIPE,
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        text=True,
        env=os.environ | {"PYTHONIOENCODING": "utf-8"},
    )
    while not running.stdout.readline().startswith("title: "):
        pass
    running.send_signal(signal.SIGINT)
    _, said = running.communicate(timeout=60)
    assert running.returncode == 130
    assert said == "interrupted; nothing is written\n"
    assert not path.exists()


def test_a_file_is_never_overwritten_without_being_told(windwall, path):
    path.write_text("precious", encoding="utf-8")
    said = windwall("new", path, input=typed(LEAST))
    assert said.returncode == 2
    assert "--force" in said.stderr
    assert path.read_text("utf-8") == "precious"
    assert "title:" not in said.stdout  # said before anybody answers anything
    assert windwall("new", path, "--force", input=typed(LEAST)).returncode == 0
    assert ww.load(path).get("engine/cylinders") == 2


def test_height_and_width_give_a_guess_that_says_so(windwall, path):
    said = windwall("new", path, input=typed(LEAST | {"drag_area": "1.2 m x 130 cm"}))
    assert said.returncode == 0
    car = ww.load(path)
    assert car.get("body/drag_area") == pytest.approx(0.85 * 0.55 * 1.2 * 1.3, rel=1e-3)
    # 0.05 of 0.85 and 0.12 of 0.55, in quadrature
    assert car.sigma("body/drag_area") / car.get("body/drag_area") == pytest.approx(0.226, abs=0.01)
    assert "guess" in car.document()["notes"]


def test_answers_may_be_prepared(windwall, path, tmp_path):
    answers = tmp_path / "answers.json"
    prepared = {**ANSWERS, "gears": [3.2, 2.0, 1.45, 1.1], "cylinders": 2, "title": None}
    answers.write_text(json.dumps(prepared), encoding="utf-8")
    said = windwall("new", path, "--answers", answers, "--set", "mass=320 kg")
    assert (said.returncode, said.stderr) == (0, "")
    made = ww.load(path)
    assert made.get("body/mass") == 320
    assert made.title == ""


def test_everything_wrong_with_prepared_answers_is_said_at_once(windwall, path):
    pairs = LEAST | {"mass": "heavy", "bore": "", "colour": "red"}
    sets = [word for name, text in pairs.items() for word in ("--set", f"{name}={text}")]
    said = windwall("new", path, *sets)
    assert said.returncode == 2
    assert "3 problems" in said.stderr
    for name in ("mass", "bore", "colour"):
        assert f"answers {name}: " in said.stderr
    assert not path.exists()


@pytest.mark.parametrize(
    "words",
    [["-"], ["a.json", "--set", "mass"], ["a.json", "--answers", "no_such.json"], ["no/folder/a"]],
)
def test_wrong_words_end_with_2(windwall, tmp_path, words):
    said = windwall("new", *words, cwd=tmp_path, input=typed(LEAST))
    assert said.returncode == 2
    assert said.stderr
    assert "Traceback" not in said.stderr
    assert list(tmp_path.iterdir()) == []


def test_the_defaults_leaned_on_are_listed_by_what_they_are_worth(windwall, path):
    said = windwall("new", path, input=typed(ANSWERS))
    leant_on = said.stdout.partition("Values that were not stated")[2]
    lines = [line for line in leant_on.splitlines() if line.startswith("  - ")]
    assert lines
    speeds = [float(line.split()[1]) for line in lines]
    assert speeds == sorted(speeds, reverse=True)
    car = ww.load(path)
    speed, address = lines[0].split()[1], lines[0].split()[3].rstrip(",")
    assert not car.given(address)
    here, sigma = car.get(address), car.known_to(address)
    base = car.top_speed().goal_speed
    anchor = address.endswith("octane_number")  # known as well wherever it lies
    changes = [
        abs(car.set({address: f"{here + way * sigma} ± {sigma}"}).top_speed().goal_speed - base)
        if anchor
        else abs(car.set({address: here + way * sigma}).top_speed().goal_speed - base)
        for way in (-1, 1)
    ]
    assert float(speed) == pytest.approx(3.6 * max(changes), rel=0.06)
    tail = said.stdout.splitlines()[-4:]
    assert tail == [f"  windwall {one} {path}" for one in ("check", "speed", "rank", "report")]


def test_a_question_is_one_line_made_from_its_row():
    for question in QUESTIONS:
        line = asked(question)
        assert "\n" not in line
        assert question.example in line
    rows = ww.schema()["properties"]["body"]["properties"]
    mass = next(asked(one) for one in QUESTIONS if one.name == "mass")
    assert rows["mass"]["description"].partition(".")[0] in mass
    assert "from 20 to 5000 kg" in mass


def test_the_examples_make_a_scenario_themselves():
    assert ww.loads(json.dumps(document(stand_in({})))).get("engine/cylinders") == 2
