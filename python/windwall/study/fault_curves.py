"""What the model reads, sound and with each fault at a few severities."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from functools import cached_property
from typing import TYPE_CHECKING, Any, NamedTuple

from windwall.errors import ScenarioError
from windwall.scenario.data import ScenarioData
from windwall.study.compare import TABLE
from windwall.study.fault_changes import Faulty, with_later_spark
from windwall.study.fault_odds import Curve
from windwall.study.fault_table import FAULTS, Fault
from windwall.study.gauges import DRIVEN
from windwall.study.readings import Sensor, part_ids, sensors
from windwall.study.worlds import Situation, uncertain, world_answers

if TYPE_CHECKING:
    from numpy import ndarray

__all__ = ["STEPS", "Column", "Readings", "at_end", "curve", "possible"]

STEPS = (0.05, 0.12, 0.22, 0.35, 0.5, 0.75, 1.0)  # of the most severe; more where most happens


class Column(NamedTuple):
    """One number that the model is asked for."""

    situation: tuple[tuple[str, float], ...]
    address: str


def at_end(column: Column) -> bool:
    """Whether it is read where a pull ends."""
    return not {"engine_speed", "gear"} & dict(column.situation).keys()


class Readings:
    """The columns that a vehicle is asked for: the facts, then what gauges would read."""

    def __init__(
        self,
        scenario: ScenarioData,
        asked: Iterable[tuple[tuple[Any, ...], str]],
        shown: bool = True,
    ) -> None:
        self.scenario = scenario
        self.facts = [Column(*one) for one in asked]
        self.sensors: list[Sensor] = list(sensors(scenario, DRIVEN)) if shown else []
        pull = next((one.situation for one in self.facts if at_end(one)), ())
        gauges = [Column(pull, one.addresses[0]) for one in self.sensors]
        self.columns = [*self.facts, *gauges]

    @property
    def unread(self) -> Iterator[tuple[int, Sensor]]:
        """Gauges of the table that are not among the facts, each with its column."""
        read = {one.address for one in self.facts}
        for at, sensor in enumerate(self.sensors, len(self.facts)):
            if sensor.addresses[0] not in read:
                yield at, sensor

    @cached_property
    def _by_situation(self) -> dict[tuple[Any, ...], list[int]]:
        found: dict[tuple[Any, ...], list[int]] = {}
        for at, column in enumerate(self.columns):
            found.setdefault(column.situation, []).append(at)
        return found

    def answers(self, scenario: ScenarioData, values: ndarray, later: float = 0.0) -> ndarray:
        """(worlds, columns) of a vehicle, its spark later than was thought."""
        import numpy as np

        found = np.full((len(values), len(self.columns)), np.nan)
        for situation, places in self._by_situation.items():
            asked, there = dict(situation), scenario
            if later and "retard" in asked and not scenario.given(TABLE):
                asked["retard"] += later
            elif later:
                there = with_later_spark(scenario, later)
            results = tuple(self.columns[at].address for at in places)
            found[:, places] = world_answers(there, values, [Situation(results, **asked)]).answers
        return found

    def of(self, faulty: Faulty) -> ndarray:
        """(columns) of one vehicle as it is described."""
        values = uncertain(faulty.scenario).value[None, :]
        return self.answers(faulty.scenario, values, faulty.later)[0]


def possible(scenario: ScenarioData) -> Iterator[Fault]:
    """The faults that this vehicle can have."""
    parts = part_ids(scenario)
    for fault in FAULTS:
        if all(word in parts for word in fault.needs) and (
            not fault.gas or scenario.has_knock_anchor
        ):
            yield fault


def curve(readings: Readings, fault: Fault, scenario: ScenarioData, middle: ndarray) -> Curve:
    """Of a vehicle with a fault at each severity, those that have no answer left out."""
    import numpy as np

    solved = [(0.0, middle)]
    for step in STEPS:
        row = _with(readings, fault, scenario, step * fault.most)
        if row is not None and np.isfinite(row[np.isfinite(middle)]).all():
            solved.append((step * fault.most, row))
    severities, rows = zip(*solved, strict=True)
    return Curve(np.array(severities), np.array(rows), fault.most)


def _with(
    readings: Readings, fault: Fault, scenario: ScenarioData, severity: float
) -> ndarray | None:
    """None where no such vehicle can be described."""
    try:
        return readings.of(fault.change(scenario, severity))
    except ScenarioError:
        return None
