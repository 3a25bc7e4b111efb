"""What is to be fitted: ids of upgrades, values of their choices, sets of a ranking."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from windwall.errors import whole_letters
from windwall.quantities.si import accepted
from windwall.results.ranking import UpgradeSet

__all__ = ["Fitted", "for_core", "typed"]

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
