"""Every kind of part and group of a file, and the keys that each has."""

from __future__ import annotations

import difflib
from collections.abc import Iterator
from functools import cache
from typing import Any, NamedTuple

from windwall.errors import Problem, ScenarioError
from windwall.scenario.schema import whole_schema
from windwall.scenario.units_told import in_system

__all__ = ["Key", "Kind", "all_kinds", "kinds"]


class Key(NamedTuple):
    """One key: what it means with its range and its usual value, and what it is measured in."""

    name: str
    needed: bool
    meaning: str
    example: str


class Kind(NamedTuple):
    """A kind of part, or a group of a file, with its keys."""

    name: str
    place: str  # the list or group of a file that it stands in
    meaning: str
    keys: tuple[Key, ...]

    def to_dict(self) -> dict[str, Any]:
        return self._asdict() | {"keys": [one._asdict() for one in self.keys]}


@cache
def all_kinds(system: str = "metric") -> tuple[Kind, ...]:
    """In the order of a file, with ranges, usual values and examples in metric or us units."""
    return tuple(_kinds_in(in_system(whole_schema(), system), ""))


def kinds(name: str | None = None, system: str = "metric") -> list[Kind]:
    """All of them, or those of a name: a kind, or the place where kinds stand."""
    found = [one for one in all_kinds(system) if name is None or name in (one.name, one.place)]
    if found:
        return found
    names = list(dict.fromkeys(word for one in all_kinds() for word in (one.name, one.place)))
    near = difflib.get_close_matches(str(name), names, 1) or _beginning(str(name), names)
    meant = f'; did you mean "{near[0]}"?' if near else f"; there are {', '.join(names)}"
    raise ScenarioError([Problem("", 0, 0, f'there is no kind "{name}"{meant}')], "kinds")


def _beginning(letters: str, names: list[str]) -> list[str]:
    """The first of the names in which a word begins with the letters."""
    return [one for one in names if letters and f"_{letters}" in f"_{one}".replace("/", "_")]


def _kinds_in(node: dict[str, Any], place: str) -> Iterator[Kind]:
    for key, inner in node.get("properties", {}).items():
        yield from _kinds_at(inner, f"{place}/{key}" if place else key)


def _kinds_at(node: dict[str, Any], where: str) -> Iterator[Kind]:
    """Those of one place: a list of parts, a part of one of several kinds, or a group."""
    entry = _entry(node)
    for one in entry.get("allOf", []):
        kind = one["if"]["properties"]["kind"]["const"]
        yield from _kind(one["then"], kind, where)
    if "allOf" not in entry and entry.get("properties"):
        yield from _kind(entry, where, where)


def _entry(node: dict[str, Any]) -> dict[str, Any]:
    """What stands in a list or behind any address, or the group itself."""
    if node.get("type") == "array":
        return node.get("items", {})
    return node.get("additionalProperties") or node


def _kind(node: dict[str, Any], name: str, place: str) -> Iterator[Kind]:
    needed = set(node.get("required", []))
    keys = tuple(
        _key(key, one, key in needed)
        for key, one in node["properties"].items()
        if key not in ("id", "kind") and not one.get("properties")
    )
    yield Kind(name, place, node.get("description", ""), keys)
    for key, one in node["properties"].items():
        if one.get("properties"):
            yield from _kind(one, f"{name}/{key}", place)
        elif _entry(one).get("allOf"):  # parts of their own, as legs of an outing are
            yield from _kinds_at(one, f"{name}/{key}")


def _key(name: str, node: dict[str, Any], needed: bool) -> Key:
    examples = node.get("examples") or [node.get("default", "")]
    if "enum" in node:
        examples = [" | ".join(map(str, node["enum"]))]
    return Key(name, needed, node.get("description", ""), str(examples[0]))
