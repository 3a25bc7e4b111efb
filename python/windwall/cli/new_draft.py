"""Answers of a talk that was broken off, kept beside the file that they are for."""

from __future__ import annotations

import json
import shlex
from collections.abc import Mapping
from pathlib import Path

from windwall.scenario import files

__all__ = ["GOES_ON", "KEPT", "LOST", "NOTHING", "counted", "draft_of", "goes_on", "keep"]

NOTHING = "nothing is written"
KEPT = "no scenario is written. {count} in {draft}; to go on type\n  windwall new {path}"
LOST = "nothing is written, and the answers cannot be kept either ({why}): {answers}"
GOES_ON = (
    "{count} in {draft} since the last time, and the questions go on behind them: back returns to "
    "each, and without that file they start over."
)


def draft_of(path: Path) -> Path:
    """`mine.answers.json` beside `mine.json`; it is a file of answers like any other."""
    return path.with_name(f"{path.stem}.answers.json")


def keep(path: Path, answers: Mapping[str, str]) -> str:
    """Writes what was answered so far, where anything was; says where it is and how to go on."""
    draft = draft_of(path)
    if not any(answers.values()) and not draft.exists():
        return NOTHING
    text = json.dumps(answers, ensure_ascii=False, indent=2)
    try:
        files.write(draft, text + "\n")
    except OSError as failed:
        why = failed.strerror or str(failed)
        return LOST.format(why=why, answers=json.dumps(answers, ensure_ascii=False))
    again = shlex.quote(files.shown(path))
    return KEPT.format(count=counted(answers), draft=files.shown(draft), path=again)


def goes_on(path: Path, answers: Mapping[str, str]) -> str:
    """What is said before the first question that is left."""
    return GOES_ON.format(count=counted(answers), draft=files.shown(draft_of(path)))


def counted(answers: Mapping[str, str]) -> str:
    count = sum(bool(text) for text in answers.values())
    return "One answer is kept" if count == 1 else f"{count} answers are kept"
