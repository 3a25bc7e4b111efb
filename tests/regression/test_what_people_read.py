"""What people read, kept word for word. Our own numbers: no proof of anything, only a guard.

Speeds and rankings are read from `stored/`, so that wording changes here and physics in
`test_numbers.py`. To accept a change of words: `pytest tests/regression --regenerate`, then read
the diff; of numbers: `python tests/regression/compare_answers.py --keep` before it.
"""

import difflib
from pathlib import Path

import pytest

import windwall as ww
from regression.stored import STORED, stored
from windwall.cli.main import main

ROOT = Path(__file__).parents[2]
TEXTS = Path(__file__).parent / "text"
SCENARIOS = ("airfield_cyclecar", "village_microcar", "lakebed_streamliner")

CHECKED = {f"check_{name}": f"scenarios/{name}.json" for name in SCENARIOS}
CHECKED["check_ten_mistakes"] = "scenarios/invalid/ten_mistakes.json"
ANSWERED = [f"{question}_{name}" for question in ("speed", "rank") for name in SCENARIOS]
ANSWERED.append("rank_airfield_cyclecar_500_eur")
DRAWN = ("drawn_speed_airfield_cyclecar", "drawn_rank_airfield_cyclecar")
DRAWS = 32
SMALL_MENU = ["small_pulley", "fairing", "diet"]


def hold(name, text, regenerate):
    """The text against the one that is kept."""
    kept = TEXTS / f"{name}.txt"
    if regenerate:
        kept.write_text(text, encoding="utf-8")
    expected = kept.read_text(encoding="utf-8")
    difference = "\n".join(difflib.unified_diff(expected.splitlines(), text.splitlines(), n=0))
    assert text == expected, f"{name} reads otherwise than kept:\n{difference}"


@pytest.mark.parametrize("name", CHECKED)
def test_a_check_reads_as_it_did(name, capsys, monkeypatch, regenerate):
    monkeypatch.chdir(ROOT)
    main(["check", CHECKED[name]])
    said = capsys.readouterr()
    hold(name, said.out + said.err, regenerate)


@pytest.mark.parametrize("name", ANSWERED)
def test_an_answer_reads_as_it_did(name, regenerate):
    answer, diagnosis = stored(name)
    hold(name, answer.summary(diagnosis) + "\n", regenerate)


@pytest.fixture(scope="module")
def drawn():
    """Solved, since worlds are not kept as numbers."""
    car = ww.load(ROOT / "scenarios/airfield_cyclecar.json")
    ranking = ww.rank(car, upgrades=SMALL_MENU, progress=False)
    found = car.drawn_speed(DRAWS), car.drawn_ranking(ranking, DRAWS, progress=False)
    return dict(zip(DRAWN, found, strict=True))


@pytest.mark.parametrize("name", DRAWN)
def test_what_worlds_say_reads_as_it_did(name, drawn, regenerate):
    hold(name, drawn[name].summary() + "\n", regenerate)


def test_nothing_is_kept_that_nobody_asks():
    assert {path.stem for path in TEXTS.glob("*.txt")} == {*CHECKED, *ANSWERED, *DRAWN}
    assert {path.stem for path in STORED.glob("*.json")} == {*ANSWERED}
