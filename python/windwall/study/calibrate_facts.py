"""What was observed, as facts that every vehicle in range can be asked about.

A fact of a log is a mapping: `situation` (keys of `worlds.Situation`), `address` (of a result),
`value` and `sigma` (SI), `source`, `group` and `day` (SI, by address, where it is not that of the
file); of knock `heard` instead of a value.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from typing import Any, NamedTuple

import numpy as np

from windwall.errors import Problem, ScenarioError
from windwall.quantities.measures import SPEED, TIME, Measure
from windwall.results.diagnosis import RESULTS, SETTINGS, deepest
from windwall.results.diagnosis import Fact as Seen
from windwall.results.record import result_row
from windwall.results.situation import Apart
from windwall.scenario.data import ScenarioData
from windwall.study.apart import scatter
from windwall.study.calibrate_likelihood import ABOVE, BELOW, NUMBER
from windwall.study.compare import ask
from windwall.study.compare import facts as seen_facts
from windwall.study.worlds import GOAL_SPEED, answer_measure

__all__ = [
    "AMOUNTS", "EAR", "GEAR", "JAR", "MOST_ROWS", "OTHERWISE", "SHARES", "SIDES", "VOLUME", "Fact",
    "facts_of",
]  # fmt: skip

SIDES = {"heard": BELOW, "not heard": ABOVE, "at the edge": NUMBER}
# What a person hears of knock: over so many octane numbers it turns from never heard to always.
EAR = 1.0
MOST_ROWS = 12  # of a coast-down that are asked: its rows tell the same again and again
GEAR = "gear"  # is the same or another, which moves nothing by a little

# One standard deviation of what the model itself is off by in a vehicle whose every number is
# right, common to all facts of one kind: common practice, some percent or kelvin, and no source.
SHARES = {
    GOAL_SPEED: 0.005,
    RESULTS["engine_speed"]: 0.005,
    "time": 0.02,
    "fuel_used": 0.03,
    "coasting": 0.005,
    "caught": 0.01,
    "inlet_depression": 0.05,
}
AMOUNTS = {
    RESULTS["boost"]: 1000.0,
    RESULTS["charge_temperature"]: 3.0,
    RESULTS["head_temperature"]: 8.0,
    RESULTS["exhaust_temperature"]: 30.0,
    RESULTS["lambda"]: 0.02,
    RESULTS["knock"]: 0.5,
    RESULTS["retard"]: 0.02,
}
OTHERWISE = 0.02  # of the value


class Fact(NamedTuple):
    """One thing that is known of the vehicle, SI."""

    situation: tuple[tuple[str, float], ...]  # keys of a situation that are stated
    address: str  # of the result that it is compared with, or the key of what was seen apart
    value: float
    sigma: float  # of the reading
    source: str  # where it stands: observed/1/boost, or a line of a log
    group: str  # of facts that were seen together
    side: int = NUMBER
    heard: str = ""
    retard_sigma: float = 0.0  # to which the spark of its situation is known, rad
    apart: Apart | None = None
    row: int | None = None  # of the table of a coast-down
    day: tuple[tuple[str, float], ...] = ()  # what is known of it, SI; else that of the file

    @property
    def kind(self) -> str:
        """What the model's own error is common to."""
        return "inlet_depression" if self.address.endswith("inlet_depression") else self.address

    @property
    def model_sigma(self) -> float:
        """One standard deviation of what the model itself is off by."""
        if self.kind in AMOUNTS:
            return AMOUNTS[self.kind]
        return SHARES.get(self.kind, OTHERWISE) * abs(self.value)

    @property
    def measure(self) -> Measure:
        """What it measures."""
        if self.address == "coasting":
            return SPEED
        if self.apart:
            return {"time": TIME, "fuel_used": VOLUME, "caught": JAR}[self.address]
        return answer_measure(self.address)


VOLUME, JAR = Measure("volume", "L"), Measure("volume", "cm3")


def facts_of(scenario: ScenarioData, told: Iterable[Mapping[str, Any]] | None = None) -> list[Fact]:
    """What the file has observed with a +/-, and heard of knock, or what is told instead."""
    if told is not None:
        return [_told(one, at) for at, one in enumerate(told, 1)]
    return [
        fact
        for seen in seen_facts(scenario)
        if seen.key not in {*SETTINGS, GEAR} and (seen.sigma or isinstance(seen.observed, str))
        for fact in _of_a_file(seen, scenario)
    ]


def _told(one: Mapping[str, Any], at: int) -> Fact:
    heard = one.get("heard", "")
    if not heard and not (float(one["sigma"]) > 0 and np.isfinite(one["value"])):
        raise ScenarioError([Problem(f"facts/{at}", 0, 0, "needs a value and a sigma above 0")])
    if not result_row(one["address"]) and one["address"] != GOAL_SPEED:
        raise ScenarioError([Problem(f"facts/{at}", 0, 0, f"{one['address']!r} is no result")])
    stated = {key: value for key, value in one["situation"].items() if key != "kind"}
    return Fact(
        _stated(stated),
        one["address"],
        0.0 if heard else float(one["value"]),
        EAR if heard else float(one["sigma"]),
        one.get("source", ""),
        one.get("group", ""),
        SIDES[heard] if heard else NUMBER,
        heard,
        day=_stated(one.get("day", {})),
    )


def _stated(situation: Mapping[str, float | None]) -> tuple[tuple[str, float], ...]:
    return tuple(sorted((key, float(one)) for key, one in situation.items() if one is not None))


def _of_a_file(seen: Seen, scenario: ScenarioData) -> Iterator[Fact]:
    entry = f"observed/{scenario.observed.index(seen.entry) + 1}"
    asked, source = seen.situation._asdict(), f"{entry}/{seen.key}"
    apart = asked.pop("apart")
    if seen.key == "coasting":
        yield from _coasted(apart, source, entry)
        return
    heard = seen.observed if isinstance(seen.observed, str) else ""
    value, sigma = (0.0, EAR) if heard else (float(seen.observed), float(seen.sigma))
    side, spread = SIDES.get(heard, NUMBER), seen.retard_sigma
    address = seen.key if apart else _address(seen, scenario)
    yield Fact(_stated(asked), address, value, sigma, source, entry, side, heard, spread, apart)


def _address(seen: Seen, scenario: ScenarioData) -> str:
    if seen.key == "speed":
        return GOAL_SPEED
    name = RESULTS[seen.key]
    return name.format(deepest(ask(seen.situation, scenario))[0]) if "{}" in name else name


def _coasted(apart: Apart, source: str, entry: str) -> Iterator[Fact]:
    """The speeds of a table behind its first one, from which it is followed."""
    time, speed = np.array(apart.coasting).T
    sigma = scatter({"time": time, "speed": speed})
    last = len(time) - 1
    for row in sorted(set(np.linspace(1, last, min(MOST_ROWS, last)).round().astype(int))):
        value, where = float(speed[row]), f"{source}/{row + 1}"
        yield Fact((), "coasting", value, sigma, where, entry, apart=apart, row=int(row))
