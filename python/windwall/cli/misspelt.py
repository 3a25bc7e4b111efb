"""What was probably meant by a word of the command that is none, or by a file that is not there."""

from __future__ import annotations

import difflib
import re
from pathlib import Path

from windwall.scenario import files

__all__ = ["ALIKE", "CHOICE", "meant_file", "with_nearest"]

CHOICE = re.compile(r"invalid choice: '([^']*)' \(choose from (.*)\)$", re.DOTALL)
ALIKE = 0.6  # of the letters, from which a word is offered


def with_nearest(message: str) -> str:
    """A complaint about a word, with the one of those allowed that is most like it."""
    found = CHOICE.search(message)
    if not found:
        return message
    allowed = re.findall(r"'([^']+)'", found[2]) or found[2].split(", ")
    near = difflib.get_close_matches(found[1], allowed, 1, ALIKE)
    return f"{message}; did you mean {near[0]}?" if near else message


def meant_file(failed: OSError) -> str:
    """Where there is no such file, the one in its folder whose name is most like it."""
    if not isinstance(failed, FileNotFoundError) or failed.filename is None:
        return ""
    wanted = Path(failed.filename)
    beside = [one.name for one in wanted.parent.glob("*")] if wanted.parent.is_dir() else []
    near = difflib.get_close_matches(wanted.name, beside, 1, ALIKE)
    return f'; did you mean "{files.shown(wanted.with_name(near[0]))}"?' if near else ""
