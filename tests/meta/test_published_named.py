"""A check from outside names whom it was checked against."""

import ast
import re
from pathlib import Path

import pytest

TESTS = Path(__file__).parents[1]
LIBRARIES = (
    {"coolprop", "cantera", "fluids", "ht", "chemicals", "pint", "psychrolib", "ambiance"}
    | {"numpy", "scipy", "mpmath", "hashlib", "fractions", "decimal"}
    | {"jsonschema", "rfc8785"}
)
# A year, a numbered place in a book, or a body that prints standards.
PRINTED = re.compile(
    r"\b(?:1[89]|20)\d\d\b"
    r"|\b(?:table|example|figure|fig\.|eq\.|equation|chapter|section|appendix)\s+[A-Z]?\d"
    r"|\b(?:ISO|IEC|IEEE|DIN|EN|SAE|ASTM|NACA|NASA|NIST|CODATA|RFC|FIPS|ICAO|ASHRAE|IAPWS|JANAF|BIPM)\b",
    re.IGNORECASE,
)


def modules(folder):
    return sorted((TESTS / folder).glob("test_*.py"))


def names_a_source(docstring):
    words = set(re.findall(r"[\w.]+", docstring.lower().replace(".", " ")))
    return bool(PRINTED.search(docstring)) or not words.isdisjoint(LIBRARIES)


def test_every_docstring_names_a_source():
    nameless = [
        path.name
        for path in modules("published")
        if not names_a_source(ast.get_docstring(ast.parse(path.read_text("utf-8"))) or "")
    ]
    assert nameless == []


@pytest.mark.parametrize("folder", ["published", "worked"])
def test_every_module_carries_the_mark_of_its_folder(folder):
    unmarked = [
        path.name
        for path in modules(folder)
        if f"pytest.mark.{folder}" not in path.read_text("utf-8")
    ]
    assert unmarked == []


@pytest.mark.parametrize("text", ["Checks the throttle.", "", "Values of the engine are right."])
def test_a_missing_source_is_caught(text):
    assert not names_a_source(text)


@pytest.mark.parametrize("text", ["Held against CoolProp.", "White, Example 9.4.", "NACA TR 384"])
def test_a_source_is_seen(text):
    assert names_a_source(text)
