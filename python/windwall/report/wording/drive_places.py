"""What the places of a drive are called, and when in which run something was."""

from __future__ import annotations

from windwall.report.wording.drive import time_text
from windwall.results.drive import STANDING, Drive

__all__ = ["AFTER", "AT_THE_START", "BEFORE_RUNS", "IN_RUN", "PLACES", "STOOD", "place", "when"]

AT_THE_START, AFTER = "at the start", "after {time}"
IN_RUN, STOOD, BEFORE_RUNS = ", in run {run}", ", standing after run {run}", ", before run 1"
# By address; the other parts of the engine by their own names.
PLACES = {
    "manifold": "manifold",
    "under_hood/air": "air under the bodywork",
}


def place(address: str) -> str:
    """Whose temperature stands at an address: `behind filter`, `head`, `blower case`."""
    bare = address.removesuffix("/temperature")
    if bare in PLACES:
        return PLACES[bare]
    _, *names = bare.split("/")
    if names[-1] == "outlet":
        return f"behind {names[0]}"
    return " ".join(names).removesuffix("_temperature").replace("_", " ")


def when(drive: Drive, seconds: float) -> str:
    """After which time, and of several runs in which."""
    said = AFTER.format(time=time_text(seconds)) if seconds else AT_THE_START
    runs = drive.runs
    if max(runs, default=0) < 2:
        return said
    at = min(int(drive["time"].searchsorted(seconds)), len(runs) - 1)
    if not runs[at]:
        return said + BEFORE_RUNS if seconds else said
    stands = drive.phases[at] in STANDING
    return said + (STOOD if stands else IN_RUN).format(run=runs[at])
