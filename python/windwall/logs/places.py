"""Where each value of a JSON text stands."""

from __future__ import annotations

import json
import re
from json.decoder import scanstring  # type: ignore[attr-defined]

__all__ = ["SPACE", "Path", "Places"]

SPACE = re.compile(r"[ \t\n\r]*")
Path = tuple[str, ...]


class Places:
    """Line and column, from 1, of every value of a JSON text that is one, by its keys."""

    def __init__(self, text: str) -> None:
        self.text = text
        self.starts: dict[Path, int] = {}
        self.twice: list[Path] = []  # keys that stand twice in one object
        self._value((), 0)

    def of(self, *path: str) -> tuple[int, int]:
        """Of a value; of what it would stand in where it is missing."""
        while path not in self.starts:
            path = path[:-1]
        start = self.starts[path]
        before = self.text.rfind("\n", 0, start)
        return self.text.count("\n", 0, start) + 1, start - before

    def _skip(self, here: int) -> int:
        found = SPACE.match(self.text, here)
        return found.end() if found else here

    def _value(self, path: Path, here: int) -> int:
        here = self._skip(here)
        if path in self.starts:
            self.twice.append(path)
        self.starts[path] = here
        if self.text[here] == "{":
            return self._members(path, here, "}")
        if self.text[here] == "[":
            return self._members(path, here, "]")
        return json.JSONDecoder().raw_decode(self.text, here)[1]

    def _members(self, path: Path, here: int, end: str) -> int:
        here, count = self._skip(here + 1), 0
        while self.text[here] != end:
            count += 1
            key = str(count)
            if end == "}":
                key, here = scanstring(self.text, here + 1)
                here = self._skip(here) + 1
            here = self._skip(self._value((*path, key), here))
            if self.text[here] == ",":
                here = self._skip(here + 1)
        return here + 1
