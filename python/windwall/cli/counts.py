"""Numbers of things, as they are typed."""

from __future__ import annotations

from windwall.study.draws import checked_count


def count(text: str) -> int:
    """A number of threads."""
    number = int(text)
    if not 0 <= number <= 1024:
        raise ValueError(text)
    return number


def draws(text: str) -> int:
    """A number of worlds."""
    return checked_count(int(text))
