"""The files speak of the project alone, and of no one machine."""

import re
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]

# One letter in brackets, so that this file passes its own test.
MACHINE_PATH = re.compile(r"(?<![\w.~$}*-])/(?:w[o]rk|h[o]me|r[o]ot|U[s]ers|t[m]p)/\w")
ELSEWHERE = re.compile(
    r"\b(?:iss[u]e #?\d+|the br[i]ef|language mod[e]l|co-auth[o]red-by)\b", re.IGNORECASE
)
# Tags of how sure a number is, written as words here.
TAG = re.compile(r"(?<=\s)\[[MCS]\](?=[\s,.;)]|$)", re.MULTILINE)
TEXT = {".py", ".cpp", ".hpp", ".md", ".txt", ".toml", ".json", ".cmake", ".ipynb", ".csv", ""}


NOT_OURS = {".git", "build", "dist", "__pycache__"}


def files(folder=ROOT):
    """Text files of the checkout, without what was built, installed or cached in it."""
    for path in sorted(folder.iterdir()):
        hidden = path.name.startswith(".") and path.name != ".ci"
        if path.is_dir() and not hidden and path.name not in NOT_OURS:
            yield from files(path)
        elif path.is_file() and path.suffix in TEXT and path.name not in NOT_OURS:
            yield path


def complaints(text):
    found = (match[0] for rule in (MACHINE_PATH, ELSEWHERE, TAG) for match in rule.finditer(text))
    return sorted(set(found))


# A logger does not always write UTF-8, and one of the invented logs keeps to that.
def test_words():
    found = {
        str(path.relative_to(ROOT)): complaints(path.read_text("utf-8", "replace"))
        for path in files()
    }
    assert {path: words for path, words in found.items() if words} == {}


@pytest.mark.parametrize(
    "text",
    [
        "see /{}/main/build".format("work"),
        '"/{}/ann/car.json"'.format("home"),
        f"as Issue #{12} says",
        "R = 287.05 [{}], dry air".format("M"),
    ],
)
def test_a_wrong_word_is_caught(text):
    assert len(complaints(text)) == 1


@pytest.mark.parametrize(
    "text", ["https://example.org/work/1", "../root/x", "gain[M] * x", "~/tmp/car.json"]
)
def test_a_right_word_is_not(text):
    assert complaints(text) == []
