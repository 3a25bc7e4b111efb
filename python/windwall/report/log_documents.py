"""A log that was read, as a plain document for JSON."""

from __future__ import annotations

import json
from typing import Any

from windwall.quantities.measures import Measure
from windwall.results.drive import moment_row
from windwall.results.log import ReadLog
from windwall.results.views import document

__all__ = ["log_document"]


@document.register(ReadLog)
def log_document(read: ReadLog) -> dict[str, Any]:
    """How it was read, what was mended, its mapping, its pulls and its facts."""
    log = read.log
    return {
        "title": read.scenario_info.title,
        "answered": read.answered,
        "log": {
            "source": log.source,
            "written": log.dialect,
            "clock": log.clock,
            "began": log.began,
            "rows": len(log.time),
            "parts": int(log.part[-1]) + 1,
            "duration": float(log.time[-1] - log.time[0]),
        },
        "mended": [{**one._asdict(), "lines": list(one.lines)} for one in log.mended],
        "columns": [{**one._asdict(), "reasons": list(one.reasons)} for one in read.proposed],
        "mapping": json.loads(read.mapping),
        "pulls": [one._asdict() for one in read.pulls],
        "left_out": list(read.left_out),
        "facts": [one.plain() for one in read.facts],
        "units": {one.address: Measure.of_row(moment_row(one.address)).si for one in read.facts},
    }
