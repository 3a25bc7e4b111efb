"""Every default says where its number comes from, and how well it is known where nobody knows."""

import re
from collections import Counter
from pathlib import Path

import pytest

from windwall import _core
from windwall.scenario.schema import whole_schema

ROOT = Path(__file__).parents[2]
PAGE = ROOT / "docs/scenario_files.md"
READ = ["cpp", "python", "docs", "notebooks", "scenarios", "README.md", "DEVELOPERS.md"]
TEXT = {".cpp", ".hpp", ".py", ".md", ".json", ".ipynb"}

# What a number's sentence has first in this list is its kind.
KINDS = {
    "no source": r"no source|estimate|judged",
    "derived": r"^derived: |^worked back from ",
    "common practice": r"common practice",
    "a source": r"\b(?:SAE|ISO|EN|NAS|TAP-115|FEV|UCT)\b|[Hh]andbook|Manual|textbook|published"
    r"|[Mm]aker'?s|abstract|printed|owner|Consumer Reports|Rennels|Joachim|Kentucky",
    "a choice": r"chosen by the project|by definition|a reference|unless stated",
}
USUALLY = re.compile(
    r"Usually [^()]+?(?P<sigma>, give or take [^(]+?)?(?: \((?P<source>.*)\))?\.$", re.DOTALL
)
# Between the words stand blanks, and where a text is broken over lines quotes or comment marks.
BREAK = r"[\s\"'/*#>]+"
REMEMBERED = re.compile(BREAK.join(("from", "memory")))
UNCONFIRMED = re.compile(BREAK.join(("to", "be", "confirm[e]d")))


def defaults(schema, where=""):
    """The sentence about every default of a file, by address; a menu's parts are the same again."""
    if isinstance(schema, dict):
        said = schema.get("description")
        if "default" in schema and isinstance(said, str):
            yield where, said
        for key, value in schema.items():
            if key not in ("upgrades", "description", "default"):
                yield from defaults(value, f"{where}/{key}")
    elif isinstance(schema, list):
        for place, value in enumerate(schema):
            yield from defaults(value, f"{where}/{place}")


def kind(source):
    return next((name for name, words in KINDS.items() if re.search(words, source or "")), None)


def complaint(sentence):
    """What a default's sentence leaves out of where the number comes from."""
    said = USUALLY.search(sentence)
    found = kind(said["source"]) if said else None
    if found is None:
        return f"names no source and does not say so: {sentence}"
    if found == "no source" and not said["sigma"]:
        return f"has no source and no sigma: {sentence}"
    return None


@pytest.fixture(scope="module")
def sentences():
    return dict(defaults(whole_schema()))


def test_every_default_says_where_it_comes_from(sentences):
    assert len(sentences) > 200
    wrong = {where: complaint(said) for where, said in sentences.items()}
    assert {where: said for where, said in wrong.items() if said} == {}


def test_each_kind_is_one_that_somebody_has(sentences):
    kinds = Counter(kind(USUALLY.search(said)["source"]) for said in sentences.values())
    assert set(kinds) == set(KINDS)


def test_every_class_prior_has_a_source_or_says_why_not_and_a_sigma():
    exact = ("by definition", "that of the known point")
    for row in _core.class_priors():
        assert row["source"], row
        assert row["sigma"] > 0 or row["source"] in exact, row


@pytest.mark.parametrize(
    "sentence",
    [
        "Friction. Usually 0.3, give or take 0.1.",  # the source taken away
        "Friction. Usually 0.3 (no source).",  # and the sigma
        "Friction. Usually 0.3, give or take 0.1 ({} memory).".format("from"),
        "Friction. Usually 0.3, give or take 0.1 (everybody knows).",
    ],
)
def test_a_default_out_of_nowhere_is_caught(sentence):
    assert complaint(sentence)


@pytest.mark.parametrize(
    "sentence",
    [
        "Friction. Usually 0.3, give or take 0.1 (no source).",
        "Oil. Usually 0.3, give or take 0.1 (between a film (0.5) and metal; no source).",
        "Temperature. Usually 25 degC (a reference).",
        "Number. Usually 95, give or take 1 (EN 228).",
    ],
)
def test_a_default_with_its_provenance_is_not(sentence):
    assert complaint(sentence) is None


def count_sentence(sentences):
    kinds = Counter(kind(USUALLY.search(said)["source"]) for said in sentences.values())
    return (
        f"Of {len(sentences)} usual values {kinds['a source']} name a source, {kinds['derived']} "
        f"are derived, {kinds['common practice']} are common practice, {kinds['no source']} have "
        f"no source and say so, with a ±, and {kinds['a choice']} are choices or references."
    )


def test_the_page_counts_them(sentences):
    """Where it fails after a row was added, the page wants the sentence that is shown."""
    page = " ".join(PAGE.read_text("utf-8").split())
    assert count_sentence(sentences) in page


def texts(places):
    for place in (ROOT / name for name in places):
        for path in [place] if place.is_file() else sorted(place.rglob("*")):
            if path.suffix in TEXT and "__pycache__" not in path.parts:
                yield path.relative_to(ROOT).as_posix(), path.read_text("utf-8")


def test_nothing_that_is_read_leans_on_memory():
    """But the page of evidence, which says of each test whether it does."""
    said = {path for path, text in texts(READ) if REMEMBERED.search(text)}
    assert said <= {"docs/evidence.md"}


def test_nothing_is_left_to_confirm():
    places = [*READ, "tests", "pyproject.toml", "Makefile"]
    assert {path for path, text in texts(places) if UNCONFIRMED.search(text)} == set()


@pytest.mark.parametrize(
    "text", ["from\n/// memory", 'from "\n    "memory', "{} memory".format("from")]
)
def test_a_number_that_was_remembered_is_caught(text):
    assert REMEMBERED.search(text)


@pytest.mark.parametrize("text", ['to be "\n  "confirm{}d', "to\n/// be confirm{}d"])
def test_a_number_left_open_is_caught(text):
    assert UNCONFIRMED.search(text.format("e"))
