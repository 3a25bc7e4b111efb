"""What can be made of a result: a text, a document, a pandas object.

A result has these as methods, and does not know who makes them. The floor that does registers
itself for each kind of result; the package says where that floor is, and it is loaded when the
first view is asked for.
"""

from __future__ import annotations

from collections.abc import Callable
from functools import singledispatch
from typing import Any

from windwall.results.makers import makers

__all__ = [
    "Discussed", "Documented", "Readable", "Worded", "content", "document", "frame", "html",
    "sentence", "sentences", "summary",
]  # fmt: skip


def _once_loaded(view: Callable[..., Any], result: Any, further: dict[str, Any]) -> Any:
    if not makers:
        raise TypeError(f"nothing makes a {view.__name__} of a {type(result).__name__}")
    while makers:
        makers.pop()()
    return view(result, **further)


@singledispatch
def content(result: Any, **further: Any) -> list[Any]:
    """A result as titles, sentences and tables, of which its text and its HTML are made."""
    return _once_loaded(content, result, further)


@singledispatch
def summary(result: Any, **further: Any) -> str:
    """A result as people read it."""
    return _once_loaded(summary, result, further)


@singledispatch
def html(result: Any, **further: Any) -> str:
    """A result as people read it in a browser: a fragment that asks for nothing from elsewhere."""
    return _once_loaded(html, result, further)


@singledispatch
def document(result: Any, **further: Any) -> dict[str, Any]:
    """A result as plain numbers in SI, ready for JSON."""
    return _once_loaded(document, result, further)


@singledispatch
def frame(result: Any, **further: Any) -> Any:
    """A result as a pandas object in SI, with its units in `attrs`."""
    return _once_loaded(frame, result, further)


@singledispatch
def sentence(result: Any, **further: Any) -> str:
    """What a result comes to, in the units of its scenario."""
    return _once_loaded(sentence, result, further)


@singledispatch
def sentences(result: Any, **further: Any) -> list[str]:
    """What else there is to say of a result."""
    return _once_loaded(sentences, result, further)


class Readable:
    """Something with a `summary()`; a terminal shows that, and a notebook the same as HTML."""

    def summary(self) -> str:
        return summary(self)

    def __repr__(self) -> str:
        return self.summary()

    def _repr_html_(self) -> str:
        return html(self)


class Documented(Readable):
    """Something that is a document for programs, too."""

    def to_dict(self) -> dict[str, Any]:
        """Everything as plain numbers in SI, ready for JSON."""
        return document(self)


class Worded(Documented):
    """Something that comes to one sentence."""

    @property
    def sentence(self) -> str:
        """What it comes to, with numbers in the units of the scenario."""
        return sentence(self)


class Discussed(Worded):
    """Something of which there is more to say."""

    @property
    def sentences(self) -> list[str]:
        """What else there is to say."""
        return sentences(self)
