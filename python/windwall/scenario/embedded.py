"""A scenario inside a page that was sent: how it gets in, and how it is found again."""

from __future__ import annotations

import re

from windwall.errors import Problem, ScenarioError

__all__ = ["BEGINS", "EMPTY", "FOUND", "NAME", "embedded", "taken_out", "without_markup"]

NAME = "windwall-scenario"  # of the element that holds it
FOUND = re.compile(
    rb'<script[^>]*\bid="' + NAME.encode() + rb'"[^>]*>(.*?)</script\s*>', re.DOTALL | re.IGNORECASE
)
BEGINS = re.compile(rb"\s*(?:\xef\xbb\xbf)?\s*<(?:!doctype\s+html|html|\?xml|!--)", re.IGNORECASE)
EMPTY = (
    "this is a page and no scenario file, and no scenario is inside it; a page that `windwall "
    "report` wrote has one, unless something took it out"
)


def embedded(text: str) -> str:
    """The text of a scenario as an element of a page."""
    inside = without_markup(text).strip()
    return f'<script type="application/json" id="{NAME}">\n{inside}\n</script>'


def without_markup(text: str) -> str:
    """The same JSON, which ends no script and begins no comment of a page."""
    return text.replace("<", "\\u003c").replace(">", "\\u003e").replace("&", "\\u0026")


def taken_out(text: bytes, source: str) -> bytes:
    """The text of the scenario in a page; anything else as it is."""
    if not BEGINS.match(text[:256]):
        return text
    found = FOUND.search(text)
    if not found:
        raise ScenarioError([Problem("", 1, 1, EMPTY)], source)
    # In the lines of the page, so that what is wrong is found where it stands.
    return b"\n" * text.count(b"\n", 0, found.start(1)) + _plain(found[1].rstrip())


def _plain(text: bytes) -> bytes:
    """With the letters again that would have been markup, so that messages show them."""
    for letter in b"<>&":
        # Behind an odd number of backslashes it is a backslash and four letters.
        code = re.escape(b"\\u%04x" % letter)
        text = re.sub(rb"(?<!\\)((?:\\\\)*)" + code, rb"\g<1>%c" % letter, text)
    return text
