"""From bytes to lines: encodings, marks of byte order, and what is no text at all."""

from __future__ import annotations

import codecs
import os
import re

from windwall.errors import Problem
from windwall.logs.wrong import at, refuse
from windwall.results.log import Mended

__all__ = ["CONTROLS", "LOOKED_AT", "MARKS", "MOST_BYTES", "NO_TEXT", "decode", "read_bytes"]

MOST_BYTES = 64 << 20
MARKS = (
    (codecs.BOM_UTF32_LE, "utf-32"),
    (codecs.BOM_UTF32_BE, "utf-32"),
    (codecs.BOM_UTF8, "utf-8-sig"),
    (codecs.BOM_UTF16_LE, "utf-16"),
    (codecs.BOM_UTF16_BE, "utf-16"),
)
NO_TEXT = 0.02  # share of control characters from which a file is no text
LOOKED_AT = 4096
CONTROLS = re.compile(r"[\x00-\x08\x0b\x0e-\x1f]")


def read_bytes(path: str | os.PathLike[str]) -> bytes:
    """A file's bytes, of one that is too long no more than it takes to be told so."""
    with open(path, "rb") as file:
        return file.read(MOST_BYTES + 1)


def decode(content: bytes) -> tuple[str, str, list[Mended]]:
    """The text, what it was encoded in, and what had to be guessed. Refuses what is no text."""
    if len(content) > MOST_BYTES:
        refuse(_whole(f"it is longer than the {MOST_BYTES >> 20} MiB that are read; cut it"))
    if not content.strip():
        refuse(_whole("it is empty"))
    text, encoding, mended = _decoded(content)
    _refuse_binary(text)
    return text.replace("\r\n", "\n").replace("\r", "\n"), encoding, mended


def _whole(message: str) -> Problem:
    return at(0, "", message)


def _decoded(content: bytes) -> tuple[str, str, list[Mended]]:
    for mark, encoding in MARKS:
        if content.startswith(mark):
            return _marked(content, encoding)
    unmarked = _wide(content)
    if unmarked:
        text = content[: len(content) // 2 * 2].decode(unmarked, "replace")
        return text, unmarked, [Mended((), "", f"read as {unmarked}, though no mark says so")]
    try:
        return content.decode("utf-8"), "utf-8", []
    except UnicodeDecodeError as broken:
        if broken.end == len(content) and "end of data" in broken.reason:
            text = content[: broken.start].decode("utf-8")
            line = text.count("\n") + 1
            return text, "utf-8", [Mended((line,), "", "the file ends within a letter; cut there")]
    try:
        text = content.decode("cp1252")
    except UnicodeDecodeError:
        text = content.decode("latin-1")
    return text, "cp1252", [Mended((), "", "it is no UTF-8; read as cp1252")]


def _marked(content: bytes, encoding: str) -> tuple[str, str, list[Mended]]:
    try:
        return content.decode(encoding), encoding, []
    except UnicodeDecodeError as broken:
        text = content.decode(encoding, "replace").rstrip("\ufffd")
        if "\ufffd" in text:
            line = text[: text.index("\ufffd")].count("\n") + 1
            refuse(at(line, "", f"this is no {encoding}, though its mark says so: {broken.reason}"))
        line = text.count("\n") + 1
        return text, encoding, [Mended((line,), "", "the file ends within a letter; cut there")]


def _wide(content: bytes) -> str:
    """UTF-16 without its mark: every other byte of plain letters is nothing."""
    beginning = content[:LOOKED_AT]
    half = max(len(beginning) // 2, 1)
    for offset, encoding in ((1, "utf-16-le"), (0, "utf-16-be")):
        if beginning[offset::2].count(0) > 0.8 * half and beginning[1 - offset :: 2].count(0) == 0:
            return encoding
    return ""


def _refuse_binary(text: str) -> None:
    first = CONTROLS.search(text)
    if first is None:
        return
    if "\0" in text:
        line, letter = _place(text, text.index("\0"))
        refuse(at(line, "", f"a NUL character stands here, as letter {letter}; a log is text"))
    if len(CONTROLS.findall(text)) > NO_TEXT * len(text):
        line, letter = _place(text, first.start())
        refuse(at(line, "", f"{first[0]!r} stands here, as letter {letter}; this is no text"))


def _place(text: str, at_letter: int) -> tuple[int, int]:
    return text.count("\n", 0, at_letter) + 1, at_letter - text.rfind("\n", 0, at_letter)
