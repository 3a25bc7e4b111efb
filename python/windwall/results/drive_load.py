"""What a drive asks of its engine under load: both ends of each run, and how rich it was."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any, NamedTuple, Protocol

from windwall.results.drive_summary import Extreme, extreme, lasting
from windwall.results.entry import Told

if TYPE_CHECKING:
    import numpy

__all__ = [
    "CASE", "DRIVE_CAUTIONS", "LAMBDA", "LEANER", "POWERED", "DriveCaution", "Mixture", "Moments",
    "clutch_energy", "drive_cautions", "mixture", "run_ends", "under_load",
]  # fmt: skip

DRIVE_CAUTIONS = ("lean",)
# Of lambda beyond the engine's own, chosen by the project: more than its default is known to.
LEANER = 0.05
POWERED = ("slipping", "driving", "holding")
_FULL = 0.999  # of the pedal's travel
LAMBDA = "engine/lambda"
CASE = "/case/temperature"  # how the columns of blower cases end


class Moments(Protocol):
    """What is read of a drive here: its columns, and what it was doing at each moment."""

    outing: Any
    scenario_info: Any

    @property
    def addresses(self) -> tuple[str, ...]: ...

    @property
    def phases(self) -> tuple[str, ...]: ...

    @property
    def runs(self) -> numpy.ndarray: ...

    def __getitem__(self, address: str) -> numpy.ndarray: ...


class DriveCaution(Told):
    """Something to know about a drive, at an `address`: `about` of a closed list; the worst
    `found` beside the engine's `own`, with the `boost` and the speed of crank and road there and
    the `time` of it; when it is so `first`, and for how long in all, `lasting`. SI.
    """

    __slots__ = ()


class Mixture(NamedTuple):
    """Lambda under load, at its richest and at its leanest; and the engine's own."""

    richest: Extreme
    leanest: Extreme
    own: float | None


def under_load(drive: Moments) -> numpy.ndarray:
    """The moments in which the engine drives with boost, or with the pedal down."""
    import numpy as np

    boosted = drive["manifold/boost"] > 0  # NaN is no boost
    return np.isin(drive.phases, POWERED) & (boosted | (drive["pedal"] >= _FULL))


def mixture(drive: Moments) -> Mixture | None:
    """How rich and how lean it ran under load; None where nothing is known of it."""
    if not {LAMBDA, "manifold/boost", "pedal"} <= set(drive.addresses):
        return None
    import numpy as np

    # A mixture that is held moves in its last digits: the first moment of them counts.
    found = np.where(under_load(drive), drive[LAMBDA].round(4), np.nan)
    leanest, richest = extreme(drive["time"], found), extreme(drive["time"], -found, -1)
    if leanest is None or richest is None:
        return None
    return Mixture(richest, leanest, drive.outing.own_lambda)


def drive_cautions(drive: Moments) -> tuple[DriveCaution, ...]:
    """What may hurt the engine and is no limit of the file."""
    ran = mixture(drive)
    if ran is None or ran.own is None or ran.leanest.value <= ran.own + LEANER:
        return ()
    return (DriveCaution(_lean(drive, ran.own), drive.scenario_info),)


def _lean(drive: Moments, own: float) -> dict[str, Any]:
    import numpy as np

    found = np.where(under_load(drive), drive[LAMBDA], np.nan)
    beyond = np.nan_to_num(found - own - LEANER, nan=-np.inf)
    worst, time = int(np.argmax(beyond)), drive["time"]
    there = ("time", "manifold/boost", "road/speed", "engine/speed")
    keys = ("time", "boost", "road_speed", "engine_speed")
    where = {key: float(drive[of][worst]) for key, of in zip(keys, there, strict=True)}
    return where | {
        "about": "lean",
        "address": LAMBDA,
        "found": float(found[worst]),
        "own": own,
        "first": float(time[int(np.argmax(beyond > 0))]),
        "lasting": lasting(time, beyond),
    }


def run_ends(drive: Moments, address: str, run: int) -> tuple[float, float] | None:
    """A column where a run sets out and where the engine drives it for the last time; None where
    it holds no number there.
    """
    import numpy as np

    its = (drive.runs == run) & np.isin(drive.phases, POWERED)
    column = drive[address][its]
    known = column[np.isfinite(column)]
    return (float(known[0]), float(known[-1])) if len(known) else None


def clutch_energy(drive: Moments, run: int) -> float:
    """What a run turned into heat where crank and wheels turn apart, J; by trapezoids."""
    import numpy as np

    its = np.flatnonzero(drive.runs == run)
    heat, time = np.nan_to_num(drive["clutch_heat"])[its], drive["time"]
    # The moment before is told as it was before the run; the clutch slips from there on.
    first = float(heat[0] * (time[its[0]] - time[max(its[0] - 1, 0)]))
    return first + float(np.trapezoid(heat, time[its]))
