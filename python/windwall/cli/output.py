"""What reaches a terminal: whole, harmless, and with an exit code that is true."""

from __future__ import annotations

import errno
import json
import os
import sys
import unicodedata
from typing import TextIO

__all__ = [
    "MOVES", "complain", "harmless", "marked", "say", "show_every_letter", "silence",
    "takes_colour",
]  # fmt: skip

MOVES = {"Cc", "Cf", "Cs"}  # controls, marks of direction, and half letters


def harmless(text: str) -> str:
    """The same with everything escaped, as JSON does it, that could move a cursor."""
    if text.isascii() and text.isprintable():
        return text
    return "".join(one if one == "\n" or not _moves(one) else _escaped(one) for one in text)


def _moves(one: str) -> bool:
    return unicodedata.category(one) in MOVES


def _escaped(one: str) -> str:
    return json.dumps(one)[1:-1] if one != "\x7f" else "\\u007f"


def say(text: str) -> None:
    """One text on standard output, all of it or an OSError."""
    if sys.stdout is None:
        raise OSError(errno.EBADF, "it is closed")
    print(harmless(text), flush=True)


def complain(text: str) -> None:
    """One text on standard error, as long as somebody holds it open."""
    try:
        if sys.stderr is not None:
            shown = harmless(text)
            print(marked(shown) if takes_colour() else shown, file=sys.stderr, flush=True)
    except OSError:
        silence(sys.stderr)


def takes_colour() -> bool:
    """Whether complaints go to a person's terminal, who has not set NO_COLOR."""
    return sys.stderr.isatty() and not os.environ.get("NO_COLOR")


def marked(text: str) -> str:
    """The mark under a place in red; a terminal that shows no colour loses nothing."""
    lines = text.split("\n")
    return "\n".join(f"\x1b[31m{one}\x1b[0m" if one.strip() == "^" else one for one in lines)


def silence(stream: TextIO | None) -> None:
    """What is left in a stream that nobody takes goes nowhere, instead of failing at the end."""
    if stream is not None:
        nowhere = os.open(os.devnull, os.O_WRONLY)
        os.dup2(nowhere, stream.fileno())
        os.close(nowhere)


def show_every_letter() -> None:
    """A title may hold letters that a terminal cannot show."""
    for stream in (sys.stdout, sys.stderr):
        if hasattr(stream, "reconfigure"):
            stream.reconfigure(errors="backslashreplace")
