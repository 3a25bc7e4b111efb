"""Numbers of things, as they are typed."""

from __future__ import annotations

import argparse

from windwall.study.draws import checked_count

__all__ = ["count", "draws", "workers"]


def count(text: str) -> int:
    """A number of threads."""
    number = int(text)
    if not 0 <= number <= 1024:
        raise ValueError(text)
    return number


def draws(text: str) -> int:
    """A number of worlds."""
    return checked_count(int(text))


def workers(text: str) -> int:
    """A number of processes."""
    number = int(text)
    if not 1 <= number <= 1024:
        raise argparse.ArgumentTypeError(f"{number} is no number of workers from 1 to 1024")
    return number
