"""What people read, kept word for word. Our own numbers: no proof of anything, only a guard.

To accept a change on purpose: WINDWALL_REGENERATE=1 pytest tests/regression, then read the diff.
"""

import difflib
import os
from pathlib import Path

import pytest

from windwall.command import main

ROOT = Path(__file__).parents[2]
TEXTS = Path(__file__).parent / "text"

ASKED = {
    "speed_airfield_cyclecar": ["speed", "scenarios/airfield_cyclecar.json"],
    "speed_village_microcar": ["speed", "scenarios/village_microcar.json"],
    "rank_airfield_cyclecar": ["rank", "scenarios/airfield_cyclecar.json"],
    "check_airfield_cyclecar": ["check", "scenarios/airfield_cyclecar.json"],
    "check_ten_mistakes": ["check", "scenarios/invalid/ten_mistakes.json"],
}


@pytest.mark.parametrize("name", ASKED)
def test_reads_as_it_did(name, capsys, monkeypatch):
    monkeypatch.chdir(ROOT)
    main(ASKED[name])
    said = capsys.readouterr()
    text = said.out + said.err
    kept = TEXTS / f"{name}.txt"
    if os.environ.get("WINDWALL_REGENERATE"):
        kept.write_text(text, encoding="utf-8")
    expected = kept.read_text(encoding="utf-8")
    difference = "\n".join(difflib.unified_diff(expected.splitlines(), text.splitlines(), n=0))
    assert text == expected, f"{name} reads otherwise than kept:\n{difference}"
