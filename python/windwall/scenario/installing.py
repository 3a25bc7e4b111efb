"""What is to be fitted: ids of upgrades, values of their choices, sets of a ranking."""

from __future__ import annotations

import difflib
import re
from collections.abc import Iterable, Iterator, Mapping
from typing import Any

from windwall.errors import ScenarioError, whole_letters
from windwall.quantities.si import accepted
from windwall.results.ranking import UpgradeSet

__all__ = ["NO_UPGRADE", "Fitted", "for_core", "typed", "with_meant"]

NO_UPGRADE = re.compile(r'there is no upgrade "([^"]*)"')

# An id alone, ids with the values of their choices, or a set that a ranking found.
Fitted = str | Mapping[str, Any] | UpgradeSet


def for_core(what: tuple[Fitted, ...]) -> tuple[list[str], list[tuple[str, str, Any]]]:
    """The ids, and each stated value as (id, address or nothing, value)."""
    ids: list[str] = []
    values: list[tuple[str, str, Any]] = []
    for one in what:
        ids += [whole_letters(name) for name in _ids(one)]
        values += _values(one)
    return ids, values


def with_meant(wrong: ScenarioError, menu: Iterable[str]) -> ScenarioError:
    """The same refusal, with the upgrade that was probably meant, and all that there are."""
    problems = []
    for one in wrong.problems:
        if unknown := NO_UPGRADE.fullmatch(one.message):
            near = difflib.get_close_matches(unknown[1], menu := list(menu), 1)
            meant = f'; did you mean "{near[0]}"?' if near else ""
            there = f"there are {', '.join(menu)}" if menu else "the file lists none"
            one = one._replace(message=f"{one.message}{meant}; {there}")
        problems.append(one)
    return ScenarioError(problems, wrong.source)


def _ids(one: Fitted) -> list[str]:
    if isinstance(one, UpgradeSet):
        return list(one.upgrades)
    if isinstance(one, (str, Mapping)):
        return [one] if isinstance(one, str) else list(one)
    raise TypeError(
        "expected the id of an upgrade, ids with the values of their choices or a set of a "
        f"ranking, not {one!r}"
    )


def _values(one: Fitted) -> Iterator[tuple[str, str, Any]]:
    """A set names its values by their places, which are whole numbers; whoever types, by value."""
    if isinstance(one, UpgradeSet):
        yield from ((won.upgrade, won.address, won.place) for won in one.chosen)
    elif isinstance(one, Mapping):
        for name, value in one.items():
            by_address = value if isinstance(value, Mapping) else {"": value}
            for address, stated in by_address.items():
                yield whole_letters(name), whole_letters(address), _value(stated)


def _value(stated: Any) -> Any:
    if stated is None or isinstance(stated, bool):
        return stated
    if isinstance(stated, (list, tuple)):
        return [float(entry) for entry in stated]
    return accepted(stated, "")


def typed(words: str) -> Fitted:
    """What a shell says: `cooler`, `gearing=27`, `gearing/driveline/chain/teeth_rear=27`."""
    place, stated, value = words.partition("=")
    if not stated:
        return words
    name, below, address = place.partition("/")
    read: Any = {"true": True, "false": False}.get(value, value)
    return {name: {address: read} if below else read}
