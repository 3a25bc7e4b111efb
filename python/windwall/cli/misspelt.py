"""What was probably meant by a word of the command that is none."""

from __future__ import annotations

import difflib
import re

__all__ = ["ALIKE", "CHOICE", "with_nearest"]

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
