"""A drive over time or distance, with what happened on the way."""

from __future__ import annotations

from itertools import cycle
from typing import TYPE_CHECKING, Any

from windwall.quantities.measures import LENGTH, TIME, Measure
from windwall.report.plot_axes import (
    INK,
    LINE_STYLES,
    MARKER_SIZE,
    PALE,
    describe,
    finish,
    human,
    instead,
    new_axes,
    title,
)
from windwall.report.wording.drive_places import place
from windwall.results.drive import STANDING, Drive

if TYPE_CHECKING:
    from matplotlib.axes import Axes

__all__ = [
    "EARLY", "HAPPENED", "LONG", "MINUTES", "NO_RUN", "column_of", "over_distance", "over_time",
    "runs_overlaid",
]  # fmt: skip

MINUTES = Measure("time", "min")
EARLY = ", stopped early"
NO_RUN = "There is no run to draw: nothing was driven."
LONG = 600  # s, from which a time axis counts minutes
# What is marked on a line of a drive, and how.
HAPPENED = {
    "clutch_grips": ("o", "clutch grips"),
    "shift_begins": ("v", "shift"),
    "ratio_begins": ("<", "variator leaves its lowest gearing"),
    "ratio_ends": (">", "variator at its highest gearing"),
    "rev_limit": ("x", "rev limit"),
    "tyres_spin": ("s", "tyres spin"),
    "line_full": ("^", "nozzle sprays"),
    "speed_lost": ("d", "speed lost"),
}


def over_time(drive: Drive, address: str = "road/speed", ax: Axes | None = None) -> Axes:
    """A column of a drive over the whole outing, with what happened; a line where a leg begins. A
    temperature may be named as the text names it: `"head"`, `"blower case"`.
    """
    if not len(drive["time"]):
        return instead(ax, _heading(drive, address), drive.ended.sentence)
    ax, address = new_axes(ax), column_of(drive, address)
    time = MINUTES if drive["time"][-1] > LONG else TIME
    x = time.values(drive["time"], drive.scenario_info.system)
    ax.plot(x, _shown(drive, address), color=INK, linewidth=1)
    _events(drive, address, x, ax)
    for at in _places(drive, "leg_begins"):
        ax.axvline(x[at], color=PALE, linewidth=0.8, zorder=0)
    if x[-1] > x[0]:
        ax.set_xlim(x[0], x[-1])
    return _finish(drive, address, f"Time, {time.shown(drive.scenario_info.system)}", ax)


def over_distance(
    drive: Drive, address: str = "road/speed", run: int = 1, ax: Axes | None = None
) -> Axes:
    """A column of one run over the distance from where it set out, with what happened."""
    return runs_overlaid({f"run {run}": (drive, run)}, address, ax)


def runs_overlaid(
    runs: dict[str, tuple[Drive, int]], address: str = "road/speed", ax: Axes | None = None
) -> Axes:
    """The same column of several runs, each `{label: (drive, number of the run)}`, over distance:
    the first and the third of an afternoon, or one that sets out hot and one that sets out cold.
    """
    if not runs:
        return instead(ax, human(address.replace("/", " ")).capitalize(), NO_RUN)
    ax = new_axes(ax)
    address = column_of(next(iter(runs.values()))[0], address)
    for (label, (drive, run)), line in zip(runs.items(), cycle(LINE_STYLES), strict=False):
        its = _on_the_way(drive, run)
        x = LENGTH.values(drive["distance"] - drive["distance"][its][0], drive.scenario_info.system)
        ax.plot(x[its], _shown(drive, address)[its], line, color=INK, label=label)
        _events(drive, address, x, ax, its)
    ax.set_xlim(left=0)
    early = next((one for one, _ in runs.values() if not one.answered), drive)
    return _finish(early, address, f"Distance, {LENGTH.shown(drive.scenario_info.system)}", ax)


def column_of(drive: Drive, name: str) -> str:
    """The address of a column, from it or from the name that the text gives it."""
    called = {place(one): one for one in drive.nodes}
    called |= {place(one): one for one in drive.addresses if one.endswith("/outlet/temperature")}
    return called[name] if name in called else drive.address(name)


def _heading(drive: Drive, quantity: str) -> str:
    """What is drawn, and that it is not the whole of it."""
    return (drive.outing.title or quantity) + ("" if drive.answered else EARLY)


def _on_the_way(drive: Drive, run: int) -> Any:
    """The moments of a run, without those in which it stands afterwards: they have no distance."""
    import numpy as np

    its = (drive.runs == run) & ~np.isin(drive.phases, STANDING)
    if not its.any():
        raise ValueError(f"there is no run {run} in {drive.outing.id!r}")
    return its


def _shown(drive: Drive, address: str) -> Any:
    return drive.measure(address).values(drive[address], drive.scenario_info.system)


def _places(drive: Drive, what: str) -> list[int]:
    """The moments at which something happened."""
    import numpy as np

    times = [one.time for one in drive.happened if one.what == what]
    return [int(at) for at in np.searchsorted(drive["time"], times)]


def _events(drive: Drive, address: str, x: Any, ax: Axes, its: Any = None) -> None:
    """Marks of what happened, each word once in the legend."""
    known = set(ax.get_legend_handles_labels()[1])
    y = _shown(drive, address)
    for what, (marker, label) in HAPPENED.items():
        at = [place for place in _places(drive, what) if its is None or its[place]]
        if at:
            shown = None if label in known else label
            ax.plot(x[at], y[at], marker, color=INK, markersize=MARKER_SIZE, label=shown)


def _finish(drive: Drive, address: str, along: str, ax: Axes) -> Axes:
    measure, system = drive.measure(address), drive.scenario_info.system
    if min(min(line.get_ydata()) for line in ax.get_lines()) == 0:
        ax.set_ylim(bottom=0)
    quantity = human(address.replace("/", " "))
    quantity = quantity[0].upper() + quantity[1:]
    heading = _heading(drive, quantity)
    describe(ax, f"{quantity} over {along.partition(',')[0].lower()}. {drive.ended.sentence}")
    return finish(
        ax, title(heading, drive.scenario_info), along, f"{quantity}, {measure.shown(system)}"
    )
