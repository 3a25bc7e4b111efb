"""What people read, kept word for word. Our own numbers: no proof of anything, only a guard.

To accept a change on purpose: `pytest tests/regression --regenerate`, then read the diff.
"""

import difflib
from pathlib import Path

import pytest

from windwall.cli.main import main

ROOT = Path(__file__).parents[2]
TEXTS = Path(__file__).parent / "text"

ASKED = {
    **{
        f"{question}_{name}": [question, f"scenarios/{name}.json"]
        for question in ("speed", "rank", "check")
        for name in ("airfield_cyclecar", "village_microcar", "lakebed_streamliner")
    },
    "rank_airfield_cyclecar_500_eur": [
        "rank", "scenarios/airfield_cyclecar.json", "--budget", "500 EUR",
    ],
    "check_ten_mistakes": ["check", "scenarios/invalid/ten_mistakes.json"],
}  # fmt: skip


@pytest.mark.parametrize("name", ASKED)
def test_reads_as_it_did(name, capsys, monkeypatch, regenerate):
    monkeypatch.chdir(ROOT)
    main(ASKED[name])
    said = capsys.readouterr()
    text = said.out + said.err
    kept = TEXTS / f"{name}.txt"
    if regenerate:
        kept.write_text(text, encoding="utf-8")
    expected = kept.read_text(encoding="utf-8")
    difference = "\n".join(difflib.unified_diff(expected.splitlines(), text.splitlines(), n=0))
    assert text == expected, f"{name} reads otherwise than kept:\n{difference}"


def test_nothing_is_kept_that_nobody_asks():
    assert {path.stem for path in TEXTS.glob("*.txt")} == set(ASKED)
