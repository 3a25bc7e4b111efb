"""The JSON Schema of scenario files, for editors and for programs that write such files."""

from __future__ import annotations

import json
from typing import Any

from windwall import _core


def schema() -> dict[str, Any]:
    """The schema (draft 2020-12), made from the same rows that the files are read by."""
    return json.loads(_core.schema_text())
