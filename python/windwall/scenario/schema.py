"""The JSON Schema of scenario files, for editors and for programs that write such files."""

from __future__ import annotations

import json
from collections import Counter
from collections.abc import Iterable, Iterator
from typing import Any

from windwall import _core

SHARED = "$defs"
SINGLE = ("items", "additionalProperties", "if", "then")
SEVERAL = ("allOf", "anyOf", "oneOf")
WORTH_SHARING = 120  # letters, from which what stands twice is said once


def schema() -> dict[str, Any]:
    """The schema (draft 2020-12), made from the same rows that the files are read by. What stands
    in several places, as a part does in the charge path and in an upgrade, is said once.

    >>> ww.schema()["type"]
    'object'
    """
    return shared(whole_schema())


def whole_schema() -> dict[str, Any]:
    """The same without references, each place with all that it may hold."""
    return json.loads(_core.schema_text())


def shared(whole: dict[str, Any]) -> dict[str, Any]:
    """A schema in which subschemas that are alike are one definition and references to it."""
    met: Counter[str] = Counter()
    keys: dict[str, str] = {}
    for key, node in _below(whole):
        text = json.dumps(node)
        met[text] += 1
        keys.setdefault(text, key)
    worth = [text for text, times in met.items() if times > 1 and len(text) > WORTH_SHARING]
    there = whole.get(SHARED, {})
    names = _named({text: keys[text] for text in worth}, there)
    made = _referring(whole, names)
    definitions = {name: _referring(json.loads(text), names) for text, name in names.items()}
    referred = json.dumps([made, definitions])
    kept = {name: one for name, one in definitions.items() if f'"#/{SHARED}/{name}"' in referred}
    return made | {SHARED: there | kept}


def _below(node: dict[str, Any]) -> Iterator[tuple[str, dict[str, Any]]]:
    """Every subschema, with the key that it stands at."""
    for key, inside in _children(node):
        yield key, inside
        yield from _below(inside)


def _children(node: dict[str, Any]) -> Iterator[tuple[str, dict[str, Any]]]:
    yield from node.get("properties", {}).items()
    yield from ((key, node[key]) for key in SINGLE if isinstance(node.get(key), dict))
    yield from ((key, one) for key in SEVERAL for one in node.get(key, ()))


def _referring(node: dict[str, Any], names: dict[str, str]) -> dict[str, Any]:
    """The same with references to what has a name below it."""

    def short(one: dict[str, Any]) -> dict[str, Any]:
        name = names.get(json.dumps(one))
        return {"$ref": f"#/{SHARED}/{name}"} if name else _referring(one, names)

    made = dict(node)
    if "properties" in node:
        made["properties"] = {key: short(one) for key, one in node["properties"].items()}
    made |= {key: short(node[key]) for key in SINGLE if isinstance(node.get(key), dict)}
    return made | {key: [short(one) for one in node[key]] for key in SEVERAL if key in node}


def _named(keys: dict[str, str], there: Iterable[str]) -> dict[str, str]:
    """A name for each text, by the key that it stands at first."""
    taken = Counter(list(there))
    names = {}
    for text, key in keys.items():
        taken[key] += 1
        names[text] = key if taken[key] == 1 else f"{key}_{taken[key]}"
    return names
