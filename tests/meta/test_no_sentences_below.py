"""The core answers in numbers and words of closed lists; sentences about answers are made on top.

What the rows of a struct say, and what is said of a limit that a part declares, is read by people
from files and pages, and stands with the row.
"""

import re
from pathlib import Path

import pytest

CPP = Path(__file__).parents[2] / "cpp" / "windwall"
TEXT = re.compile(r'"((?:[^"\\\n]|\\.)*)"')
# Of rows: their sentences, and the descriptions of structs.
OF_ROWS = re.compile(
    r'description\s*=\s*(?:"[^"\n]*"\s*)+;'
    r"|\b(?:fact|result|group|optional_group|parts|with_default|required|optional)\((?:[^()\"]|\([^()]*\)|\"[^\"\n]*\")*\)"
)
# What limits without a part of their own say of themselves.
ALLOWED = {
    "an aluminium head softens",
    "speed symbol of the tyres",
    "load index of the tyres",
    "the rev limit of the engine",
}


def sentences(text):
    """Texts with a space in them, outside of rows and comments."""
    code = re.sub(r"//[^\n]*", "", text)
    code = re.sub(r"^\s*#include[^\n]*", "", code, flags=re.MULTILINE)
    return {said for said in TEXT.findall(OF_ROWS.sub("", code)) if " " in said} - ALLOWED


@pytest.mark.parametrize("floor", ["solve", "study"])
def test_no_sentence_is_made(floor):
    said = {
        (path.relative_to(CPP).as_posix(), one)
        for path in (CPP / floor).rglob("*.?pp")
        for one in sentences(path.read_text("utf-8"))
    }
    assert said == set()


@pytest.mark.parametrize("floor", ["solve", "study"])
def test_no_number_is_made_readable(floor):
    users = [p.name for p in (CPP / floor).rglob("*.?pp") if "readable" in p.read_text("utf-8")]
    assert users == []


def test_a_sentence_would_be_found():
    assert sentences('std::string text = "At " + rpm(speed) + " it ends.";') == {"At ", " it ends."}
    assert sentences('fact("a", at<&A::a>, "What it is"),  // a "said word"') == set()
