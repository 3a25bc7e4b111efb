"""The JSON Schema of scenario files, for editors and for programs that write such files."""

from __future__ import annotations

import json
import re
from collections import Counter
from collections.abc import Callable, Iterable, Iterator
from typing import Any

from windwall import _core

__all__ = [
    "NAMED", "NAMED_ANEW", "NAMELESS", "ORIGIN", "SEVERAL", "SHARED", "SINGLE", "WORTH_SHARING",
    "schema", "schema_text", "shared", "whole_schema",
]  # fmt: skip

SHARED = "$defs"
NAMED = ("properties", SHARED)
SINGLE = ("items", "additionalProperties", "if", "then")
SEVERAL = ("allOf", "anyOf", "oneOf")
NAMED_ANEW: dict[str, Any] = {"required": ["id"]}
NAMELESS: dict[str, Any] = {"properties": {"id": {"not": {}}}}
ORIGIN = re.compile(r"(Usually [^()]+) \(.*\)\.$", re.DOTALL)
WORTH_SHARING = 120  # letters, from which what stands twice is said once


def schema() -> dict[str, Any]:
    """The schema (draft 2020-12), made from the same rows that the files are read by. What stands
    in several places, as a part does in the charge path and in an upgrade, is said once; where
    usual values come from is left to ``windwall kinds``.

    >>> ww.schema()["type"]
    'object'
    """
    return _short(whole_schema())


def schema_text(whole: dict[str, Any]) -> str:
    """A whole schema made short, as one line that can be sent along."""
    return json.dumps(_short(whole), ensure_ascii=False, separators=(",", ":"))


def _short(whole: dict[str, Any]) -> dict[str, Any]:
    return shared(_parts_once(_for_editors(whole, "")))


def whole_schema() -> dict[str, Any]:
    """The same without references, each place with all that it may hold."""
    return json.loads(_core.schema_text())


def shared(whole: dict[str, Any]) -> dict[str, Any]:
    """A schema in which subschemas that are alike are one definition and references to it."""
    met: Counter[str] = Counter()
    keys: dict[str, str] = {}
    for key, text in _met(whole, met):
        keys.setdefault(text, key)
    worth = [text for text, times in met.items() if times > 1 and len(text) > WORTH_SHARING]
    there = whole.get(SHARED, {})
    names = _named({text: keys[text] for text in worth}, there)
    made = _referring(whole, names)
    definitions = {name: _referring(json.loads(text), names) for text, name in names.items()}
    return made | {SHARED: made.get(SHARED, {}) | definitions}


def _met(node: dict[str, Any], met: Counter[str]) -> Iterator[tuple[str, str]]:
    """The key and the text of every subschema. What is below one that stood before is not met
    again: where that is said once, so is all that it holds."""
    for key, inside in _children(node):
        text = json.dumps(inside)
        met[text] += 1
        yield key, text
        if met[text] == 1:
            yield from _met(inside, met)


def _for_editors(node: dict[str, Any], key: str) -> dict[str, Any]:
    """The same without what nobody reads while typing: where a usual value comes from, an example
    beside it, and what a kind is a second time."""
    made = _with_children(node, _for_editors)
    if "description" in made:
        made["description"] = ORIGIN.sub(r"\1.", made["description"])
    if key == "kind":
        made.pop("description", None)
    if "default" in made:
        made.pop("examples", None)
    return made


def _parts_once(whole: dict[str, Any]) -> dict[str, Any]:
    """The same with each part said once: where it is fitted it has an id, and where it takes the
    place of another it has that one's."""
    parts: dict[str, str] = {}
    defined: dict[str, Any] = {}

    def nameless(node: dict[str, Any]) -> str:
        left = {key: one for key, one in node["properties"].items() if key != "id"}
        needed = [key for key in node["required"] if key != "id"]
        return json.dumps(node | {"properties": left, "required": needed})

    def collect(node: dict[str, Any]) -> None:
        for key, inside in _children(node):
            if key == "then" and "id" in inside["required"]:
                name = inside["properties"]["kind"]["const"]
                parts[nameless(inside)] = name
                needed = [one for one in inside["required"] if one != "id"]
                defined[name] = inside | {"required": needed}
            collect(inside)

    def short(node: dict[str, Any], key: str) -> dict[str, Any]:
        name = parts.get(nameless(node)) if key == "then" else None
        if name is None:
            return _with_children(node, short)
        own = NAMED_ANEW if "id" in node["required"] else NAMELESS
        return {"$ref": f"#/{SHARED}/{name}"} | own

    collect(whole)
    definitions = {name: _with_children(one, short) for name, one in defined.items()}
    return _with_children(whole, short) | {SHARED: whole.get(SHARED, {}) | definitions}


def _children(node: dict[str, Any]) -> Iterator[tuple[str, dict[str, Any]]]:
    for several in NAMED:
        yield from node.get(several, {}).items()
    yield from ((key, node[key]) for key in SINGLE if isinstance(node.get(key), dict))
    yield from ((key, one) for key in SEVERAL for one in node.get(key, ()))


def _with_children(
    node: dict[str, Any], change: Callable[[dict[str, Any], str], dict[str, Any]]
) -> dict[str, Any]:
    """The same with every subschema right below it changed."""
    made = dict(node)
    for several in NAMED:
        if several in node:
            made[several] = {key: change(one, key) for key, one in node[several].items()}
    made |= {key: change(node[key], key) for key in SINGLE if isinstance(node.get(key), dict)}
    return made | {key: [change(one, key) for one in node[key]] for key in SEVERAL if key in node}


def _referring(node: dict[str, Any], names: dict[str, str]) -> dict[str, Any]:
    """The same with references to what has a name below it."""

    def short(one: dict[str, Any], key: str) -> dict[str, Any]:
        name = names.get(json.dumps(one))
        return {"$ref": f"#/{SHARED}/{name}"} if name else _with_children(one, short)

    return _with_children(node, short)


def _named(keys: dict[str, str], there: Iterable[str]) -> dict[str, str]:
    """A name for each text, by the key that it stands at first."""
    taken = Counter(list(there))
    names = {}
    for text, key in keys.items():
        taken[key] += 1
        names[text] = key if taken[key] == 1 else f"{key}_{taken[key]}"
    return names
