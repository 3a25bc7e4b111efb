"""What people read of a drive, kept word for word, driven anew each time. Our own numbers: no proof
of anything, only a guard. To accept a change: `pytest tests/regression --regenerate`.
"""

import difflib
from pathlib import Path

import pytest

from windwall.cli.main import main

ROOT = Path(__file__).parents[2]
KEPT = Path(__file__).parent / "driven"
DRIVEN = {"airfield_cyclecar": "three_runs", "lakebed_streamliner": "record"}


@pytest.mark.parametrize("name", DRIVEN)
def test_a_drive_reads_as_it_did(name, capsys, monkeypatch, regenerate):
    monkeypatch.chdir(ROOT)
    assert main(["drive", f"scenarios/{name}.json", DRIVEN[name]]) == 0
    said = capsys.readouterr().out
    kept = KEPT / f"{name}.txt"
    if regenerate:
        kept.write_text(said, encoding="utf-8")
    expected = kept.read_text(encoding="utf-8")
    difference = "\n".join(difflib.unified_diff(expected.splitlines(), said.splitlines(), n=0))
    assert said == expected, f"{name} reads otherwise than kept:\n{difference}"
    assert max(map(len, said.splitlines())) <= 100


def test_no_drive_is_kept_that_nobody_asks():
    assert {path.stem for path in KEPT.glob("*.txt")} == set(DRIVEN)
