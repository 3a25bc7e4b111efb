"""Every term of the notation page that is set as code is spelt so in the code."""

import re
from pathlib import Path

ROOT = Path(__file__).parents[2]
PAGE = ROOT / "docs" / "notation.md"
TERM = re.compile(r"`([A-Za-z]\w+)`")


def words():
    files = [*(ROOT / "cpp").rglob("*.?pp"), *(ROOT / "python").rglob("*.py")]
    return {word for path in files for word in re.findall(r"\w+", path.read_text("utf-8"))}


def terms(text):
    """The terms in the first column of its tables, and abilities named beside them."""
    return {
        term for line in text.splitlines() if line.startswith("|") for term in TERM.findall(line)
    }


def test_every_term_is_in_the_code():
    assert terms(PAGE.read_text("utf-8")) - words() == set()


def test_the_terms_are_read():
    found = terms(PAGE.read_text("utf-8"))
    assert {"FieldPath", "EquilibriumSpeed", "Metering", "Values"} <= found
    assert len(found) > 50


def test_a_term_that_nobody_uses_is_caught():
    assert terms("| `Row`, `NoSuchTerm` | x |\nno `Table` here") - words() == {"NoSuchTerm"}
