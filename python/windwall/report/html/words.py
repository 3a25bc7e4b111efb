"""Texts as a browser shows them."""

from __future__ import annotations

import re
from html import escape

__all__ = ["CODE", "words"]

CODE = re.compile(r"`([^`]+)`")


def words(text: str) -> str:
    """A text, escaped: with ± where a terminal has +/-, and what is to be typed set apart instead
    of in backticks.
    """
    return CODE.sub(r"<code>\1</code>", escape(text).replace("+/-", "\N{PLUS-MINUS SIGN}"))
