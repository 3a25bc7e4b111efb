"""An outing, driven: every moment of it, what happened, and how it ended."""

from __future__ import annotations

from collections import Counter
from difflib import get_close_matches
from functools import cache, cached_property
from typing import TYPE_CHECKING, Any, NamedTuple

from windwall import _core
from windwall.quantities.measures import Measure
from windwall.results.answer import answer_rows
from windwall.results.drive_load import DriveCaution, drive_cautions
from windwall.results.drive_summary import DriveSummary, Mark, Passed, extreme, passed
from windwall.results.entry import Told
from windwall.results.outcome import Cautioned
from windwall.results.record import result_row
from windwall.results.scenario_info import ScenarioInfo
from windwall.results.views import document, html, sentence, summary

if TYPE_CHECKING:
    import numpy
    import pandas
    import xarray

__all__ = [
    "EVENT_UNITS", "NO_ANSWER", "SOLVED", "STANDING", "Drive", "DriveEnding", "DriveEvent",
    "Outing", "moment_row",
]  # fmt: skip

STANDING = ("standing", "engine_off")
EVENT_UNITS = {"time": "s", "distance": "m", "road_speed": "m/s", "engine_speed": "rad/s"}
SOLVED = "solved"  # of a drive that broke off nowhere
NO_ANSWER = ("no_answer", "too_many_events")


class Outing(NamedTuple):
    """Which outing was driven, and what an answer repeats of its scenario beside that."""

    id: str
    title: str
    legs: tuple[str, ...]  # the kind of each
    limits: tuple[dict[str, Any], ...]  # of the scenario, stated and built in
    digest: str
    own_lambda: float | None = None  # of the engine at full throttle, where the file has one


class DriveEnding(Told):
    """How a drive ended: `word` of a closed list, in which `leg`, how fast, and a `sentence`."""

    __slots__ = ()


class DriveEvent(Told):
    """What happened at one moment: `what` of a closed list, when, where, and a `sentence`."""

    __slots__ = ()


@cache
def _drive_rows() -> dict[str, Any]:
    return {key: group["rows"] for key, group in _core.drive_rows().items()}


@cache
def _known_row(address: str) -> dict[str, Any] | None:
    """The row of a column that is no temperature of a node."""
    below = {"rows": answer_rows("operating_point")["point"]["rows"]}
    for key in address.split("/"):
        below = below.get("rows", {}).get(key, {})
    return _drive_rows()["moment"].get(address) or result_row(address) or below or None


def moment_row(address: str) -> dict[str, Any]:
    """What the row of a column says: of a moment of a drive, of an operating point, of a node."""
    return _known_row(address) or _drive_rows()["node"]["temperature"]


class Drive(Cautioned):
    """An outing over time. `drive["engine/head/temperature"]` is a column; numbers are SI."""

    def __init__(self, numbers: dict[str, Any], info: ScenarioInfo, outing: Outing) -> None:
        self._numbers = numbers
        self.scenario_info = info
        self.outing = outing

    def __reduce__(self) -> tuple[Any, ...]:
        return Drive, (self._numbers, self.scenario_info, self.outing)

    @property
    def addresses(self) -> tuple[str, ...]:
        """The columns, each by the address of its result."""
        return tuple(self._numbers["addresses"])

    @cached_property
    def columns(self) -> dict[str, numpy.ndarray]:
        """Every column by its address, SI; NaN where there is no such number."""
        return dict(zip(self._numbers["addresses"], self._numbers["columns"], strict=True))

    def __getitem__(self, address: str) -> numpy.ndarray:
        return self.columns[self.address(address)]

    def address(self, name: str) -> str:
        """The address of a column, from it or without the `/temperature` at its end; raises
        `KeyError` with the one that was probably meant where there is none.
        """
        for one in (name, f"{name}/temperature"):
            if one in self.columns:
                return one
        close = get_close_matches(str(name), self.columns, 1)
        meant = f"; did you mean {close[0]!r}?" if close else "; `addresses` has all there are"
        raise KeyError(f"no column {name!r} in {self.outing.id!r}{meant}")

    @property
    def nodes(self) -> tuple[str, ...]:
        """The columns that are temperatures of what takes time to warm up."""
        return tuple(one for one in self.addresses if not _known_row(one))

    @property
    def phases(self) -> tuple[str, ...]:
        """What the vehicle was doing at each moment, by a closed list of words."""
        return tuple(self._numbers["phase"])

    @staticmethod
    def measure(address: str) -> Measure:
        """What a column measures."""
        return Measure.of_row(moment_row(address))

    @property
    def answered(self) -> bool:
        """Whether it ended by itself, rather than for want of a balance or of time."""
        return self._numbers["ended"] not in NO_ANSWER and not self.cancelled

    @property
    def cancelled(self) -> bool:
        """Whether somebody stopped it; what was driven until then is here."""
        return self._numbers["ended"] == "cancelled"

    @property
    def ended(self) -> DriveEnding:
        """How it ended, in one word and in a sentence."""
        events = self._numbers["events"]
        leg = events[-1]["leg"] if events else 1
        numbers = {
            "word": self._numbers["ended"],
            "leg": leg,
            "kind": self.outing.legs[leg - 1],
            "road_speed": self._last("road/speed"),
            "distance": self._last("distance"),
            "time": self._last("time"),
            "status": SOLVED if self.answered else self._numbers["status"],
            "part": self._numbers["worst"],
        }
        return DriveEnding(numbers, self.scenario_info)

    def _last(self, address: str) -> float:
        column: Any = self.columns.get(address, ())
        return float(column[-1]) if len(column) else 0.0

    @property
    def happened(self) -> tuple[DriveEvent, ...]:
        """Everything that happened, in order."""
        legs = self.outing.legs
        return tuple(
            DriveEvent(one | {"kind": legs[one["leg"] - 1]}, self.scenario_info)
            for one in self._numbers["events"]
        )

    @property
    def passed(self) -> tuple[Passed, ...]:
        """Limits of the scenario that are passed on the way, in the order in which they are."""
        found = filter(None, (passed(limit, self.columns) for limit in self.outing.limits))
        in_order = sorted(found, key=lambda one: one["time"])
        return tuple(Passed(one, self.scenario_info) for one in in_order)

    def _told(self) -> tuple[DriveCaution, ...]:
        """What may hurt the engine and is no limit of the file."""
        return drive_cautions(self)

    @property
    def events(self) -> pandas.DataFrame:
        """The same as a table, SI; units in `attrs`."""
        import pandas as pd

        keys = ["time", "distance", "road_speed", "engine_speed", "gear", "leg", "what"]
        rows = [[*(one[key] for key in keys), one.sentence] for one in self.happened]
        made = pd.DataFrame(rows, columns=[*keys, "sentence"])
        made.attrs["units"] = dict(EVENT_UNITS)
        return made

    @property
    def dataset(self) -> xarray.Dataset:
        """Every column over time as an xarray Dataset, SI, with `units`, `long_name` and `address`
        as attributes. A variable is called by its address with `_` for `/`, or with `__` where
        two would be called alike.
        """
        import xarray as xr

        variables: dict[str, Any] = {
            name: ("time", self.columns[address], _attributes(address))
            for address, name in _names(self.addresses).items()
        }
        time = variables.pop("time", ("time", [], _attributes("time")))
        phase = {"long_name": "What the vehicle is doing"}
        variables["phase"] = ("time", list(self.phases), phase)
        attrs = {"title": self.scenario_info.title, "ended": self.ended.word}
        attrs |= {"outing": self.outing.id, "digest": self.outing.digest}
        return xr.Dataset(variables, {"time": time}, attrs)

    @property
    def runs(self) -> numpy.ndarray:
        """The number of the run at each moment, from 1; 0 while it stands before the first."""
        import numpy as np

        stands = np.isin(self.phases, STANDING)
        sets_out = ~stands & np.concatenate([[True], stands[:-1]]) if len(stands) else stands
        return np.cumsum(sets_out)

    @property
    def moved(self) -> range:
        """The numbers of its runs."""
        return range(1, int(max(self.runs, default=0)) + 1)

    @property
    def summary(self) -> DriveSummary:
        """What it comes to: marks, extremes, and where the energy went."""
        # A margin that is held stays the same but for the last digits: the first moment counts.
        margin: Any = self.columns.get("knock/margin", ())
        margin = margin.round(2) if len(margin) else margin
        return DriveSummary(
            marks=tuple(Mark(**one) for one in self._numbers["marks"]),
            fastest=tuple(self._fastest()),
            hottest=dict(self._hottest()),
            nearest_knock=extreme(self["time"], -margin, -1) if len(margin) else None,
            fuel_used=self._last("fuel_used"),
            liquid_used=self._last("liquid_used"),
            energy=dict(self._numbers["energy"]),
        )

    def _fastest(self) -> Any:
        for run in self.moved:
            its = self.runs == run
            found = extreme(self["time"][its], self["road/speed"][its])
            if found:
                yield found

    def _hottest(self) -> Any:
        for address, column in self.columns.items():
            if self.measure(address).dimension == "temperature":
                found = extreme(self["time"], column)
                if found:
                    yield address, found

    def to_dict(self) -> dict[str, Any]:
        """Everything as plain numbers in SI, ready for JSON."""
        return document(self)

    def text(self) -> str:
        """As people read it."""
        return summary(self)

    def __repr__(self) -> str:
        return self.text()

    def _repr_html_(self) -> str:
        return html(self)


def _names(addresses: tuple[str, ...]) -> dict[str, str]:
    """By address; two that would be called alike have `__` for `/`."""
    names = {address: address.replace("/", "_") for address in addresses}
    count = Counter(names.values())
    return {
        address: name if count[name] == 1 else address.replace("/", "__")
        for address, name in names.items()
    }


def _attributes(address: str) -> dict[str, str]:
    row = moment_row(address)
    return {"units": row["si"], "long_name": row["sentence"], "address": address}


@sentence.register(Drive)
def _ended(drive: Drive) -> str:
    return drive.ended.sentence
