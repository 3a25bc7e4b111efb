"""What two scenario files differ in, entry by entry, and what each difference does to the speed."""

from __future__ import annotations

import copy
import json
from collections.abc import Iterator
from typing import Any

from windwall.errors import ScenarioError
from windwall.results.differences import Difference, Differences
from windwall.results.top_speed import TopSpeed
from windwall.scenario.data import ScenarioData
from windwall.scenario.info import scenario_info
from windwall.study.solve import top_speed

__all__ = ["GONE", "WORDS", "Path", "compare_files"]

GONE = object()  # there is nothing in that file
WORDS = ("$schema", "title", "notes", "units", "format")  # that change no answer
Path = tuple[str, ...]


def compare_files(one: ScenarioData, other: ScenarioData) -> Differences:
    """Where two scenarios differ in what they mean, however they are typed, and what the first one
    would do with each entry of the second alone.
    """
    info = scenario_info(one)
    before, after = one.document(), other.document()
    found = []
    if one.digest != other.digest:
        speed = _speed(one)
        for path in _paths(before, after):
            made = _with(one, path, after)
            if isinstance(made, ScenarioData) and made.digest == one.digest:
                continue  # typed in another way, and the same
            found.append(_difference(path, before, after, made, speed))
    return Differences(
        title=info.title,
        other=other.name,
        system=info.system,
        speed=_speed(one),
        other_speed=_speed(other),
        found=tuple(found),
        source=one.source,
        other_source=other.source,
    )


def _difference(
    path: Path, before: Any, after: Any, made: ScenarioData | str, speed: float | None
) -> Difference:
    refused = made if isinstance(made, str) else ""
    then = None if isinstance(made, str) else _speed(made)
    change = None if then is None or speed is None else then - speed
    return Difference("/".join(path), _shown(before, path), _shown(after, path), change, refused)


def _speed(scenario: ScenarioData) -> float | None:
    found: TopSpeed = top_speed(scenario, brief=True)
    return found.goal_speed if found.answered else None


def _paths(before: Any, after: Any, path: Path = ()) -> Iterator[Path]:
    """The way to every entry that differs. Parts are followed by their ids while both files have
    the same ones in the same order; else their list is one entry.
    """
    if before == after:
        return
    if isinstance(before, dict) and isinstance(after, dict) and _alike(before, after):
        for key in dict.fromkeys([*before, *after]):
            if not (path == () and key in WORDS):
                yield from _paths(before.get(key, GONE), after.get(key, GONE), (*path, key))
    elif (ids := _ids(before)) and ids == _ids(after):
        for at, name in enumerate(ids):
            yield from _paths(before[at], after[at], (*path, name))
    else:
        yield path


def _alike(before: dict[str, Any], after: dict[str, Any]) -> bool:
    """Whether two objects are of one kind, so that keys of both mean the same."""
    return before.get("kind") == after.get("kind")


def _ids(entries: Any) -> list[str]:
    if not isinstance(entries, list) or not all(isinstance(one, dict) for one in entries):
        return []
    return [one["id"] for one in entries] if all("id" in one for one in entries) else []


def _step(node: Any, key: str) -> Any:
    if isinstance(node, dict):
        return node.get(key, GONE)
    if isinstance(node, list):
        return next((one for one in node if one["id"] == key), GONE)
    return GONE


def _at(document: Any, path: Path) -> Any:
    for key in path:
        document = _step(document, key)
    return document


def _with(one: ScenarioData, path: Path, after: Any) -> ScenarioData | str:
    """The first scenario with an entry of the second, or why that alone cannot be."""
    document = copy.deepcopy(one.document())
    holder, key, value = _at(document, path[:-1]), path[-1], _at(after, path)
    if isinstance(holder, list):
        holder[:] = [value if each["id"] == key else each for each in holder]
    elif value is GONE:
        del holder[key]
    else:
        holder[key] = value
    try:
        return one.restated(document)
    except ScenarioError as wrong:
        return wrong.problems[0].message


def _shown(document: Any, path: Path) -> str | None:
    """As it is typed; of a list or an object what it is made of."""
    value = _at(document, path)
    if value is GONE:
        return None
    if isinstance(value, list):
        return ", ".join(_ids(value)) or json.dumps(value, ensure_ascii=False)
    return value if isinstance(value, str) else json.dumps(value, ensure_ascii=False)
