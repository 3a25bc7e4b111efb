"""The compiled core for browsers, where it was built: `make live`."""

from __future__ import annotations

from base64 import b64encode
from gzip import compress
from importlib.resources import files

__all__ = ["FILE", "compiled_core"]

FILE = "core.wasm"


def compiled_core() -> str:
    """Gzipped, as base64 text; empty where nobody built it."""
    file = files("windwall.report.live").joinpath(FILE)
    return b64encode(compress(file.read_bytes(), mtime=0)).decode("ascii") if file.is_file() else ""
