"""What the columns of a log probably are, and why: by word, by unit, by range, by each other."""

from __future__ import annotations

from windwall.logs.addresses import known_addresses, measure_of
from windwall.logs.guesses import Guess, guess
from windwall.logs.mapping import Mapped, Mapping
from windwall.logs.tying import by_each_other, by_gear
from windwall.logs.words import CALLED
from windwall.results.log import Log, LogColumn, Proposed
from windwall.scenario.data import ScenarioData

__all__ = ["propose"]


def propose(log: Log, scenario: ScenarioData) -> tuple[Mapping, tuple[Proposed, ...]]:
    """A mapping with its reasons, and what was left out and why."""
    known = known_addresses(scenario)
    guesses = [
        made
        for one in CALLED
        if one.address in known
        for column in log.columns
        if (made := guess(column, one, measure_of(scenario, one.address)))
    ]
    chosen, told = _one_each(log, sorted(guesses, key=lambda one: -one.score))
    chosen, told = by_gear(chosen, told, scenario)
    chosen, told = by_each_other(chosen, told, log)
    order = [column.name for column in log.columns]
    chosen.sort(key=lambda one: order.index(one.column.name))
    found = [Proposed(one.column.name, one.called.address, one.unit, one.reasons) for one in chosen]
    said = sorted([*found, *told], key=lambda one: order.index(one.column))
    return Mapping(tuple(map(_mapped, chosen)), {"column": log.clock}), tuple(said)


def _mapped(one: Guess) -> Mapped:
    why = "; ".join(one.reasons)
    return Mapped(one.column.name, one.called.address, one.unit, "0 s", one.called.sigma, why)


def _one_each(log: Log, guesses: list[Guess]) -> tuple[list[Guess], list[Proposed]]:
    """The best column for each result, and for each column its best result."""
    chosen: list[Guess] = []
    left: dict[str, str] = {}
    for one in guesses:
        if any(one.column is other.column for other in chosen):
            continue
        rival = next((c for c in chosen if c.called.address == one.called.address), None)
        if rival is None:
            chosen.append(one)
        else:
            left[one.column.name] = f'"{rival.column.name}" is taken for {one.called.address}'
    taken = {one.column.name for one in chosen}
    told = [
        Proposed(column.name, "", column.unit, (left.get(column.name) or _unknown(column),))
        for column in log.columns
        if column.name not in taken
    ]
    return chosen, told


def _unknown(column: LogColumn) -> str:
    if column.unread:
        return f'"{column.unread[1][:30]}" in line {column.unread[0]} is no number'
    return "no word, unit and range of it fit one result"
