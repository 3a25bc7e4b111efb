"""Files read and written as wholes, and how a file's name is shown."""

from __future__ import annotations

import os
import secrets
import stat
from pathlib import Path

__all__ = ["LARGEST_FILE", "read", "shown", "write"]

LARGEST_FILE = 4 << 20  # bytes; the core refuses more as well


def read(path: str | os.PathLike[str]) -> bytes:
    """A file's bytes, of one that is too long no more than it takes to be told so."""
    with open(path, "rb") as file:
        return file.read(LARGEST_FILE + 1)


def shown(name: str | os.PathLike[str]) -> str:
    """A file's name with everything escaped that is no letter, or would move a cursor."""
    text = os.fsencode(name).decode("utf-8", "backslashreplace")
    return "".join(
        one if one.isprintable() else one.encode("unicode_escape").decode("ascii") for one in text
    )


def write(path: str | os.PathLike[str], text: str, over: bool = True) -> None:
    """Writes a whole file or none: one that is there stays as it is until all of the new one is on
    the disk. Its permissions stay, and a link still points at it. Raises `OSError`.
    """
    target = Path(os.path.realpath(path))
    if over and target.exists() and not target.is_file():
        # A device, a pipe or a folder cannot be replaced, and has nothing that could be lost.
        target.write_text(text, encoding="utf-8")
        return
    reserved = not over
    if reserved:
        target.touch(exist_ok=False)
    try:
        _replace(target, text.encode("utf-8"))
    except BaseException:
        if reserved:
            target.unlink(missing_ok=True)
        raise


def _replace(target: Path, content: bytes) -> None:
    if target.exists():
        os.close(os.open(target, os.O_WRONLY))  # what may not be written is not replaced either
    beside = target.with_name(f".{secrets.token_hex(8)}.part")
    try:
        with open(beside, "xb") as file:
            if target.exists():
                os.chmod(beside, stat.S_IMODE(target.stat().st_mode))
            file.write(content)
            file.flush()
            os.fsync(file.fileno())
        beside.replace(target)
    except BaseException:
        beside.unlink(missing_ok=True)
        raise
