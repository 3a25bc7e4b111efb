"""Chances as people count them."""

from __future__ import annotations

from windwall.results.drawn import share_error

__all__ = ["RARE", "of_hundred", "of_ten"]

RARE = 0.05


def of_ten(chance: float, worlds: int) -> str:
    """`3 of 10`, nearer to never and always `2 of 100`, and both by what was counted."""
    if chance in (0, 1):
        return f"{'none' if chance == 0 else 'all'} of {worlds}"
    if chance < RARE:
        return f"{max(round(100 * chance), 1)} of 100"
    if chance > 1 - RARE:
        return f"{min(round(100 * chance), 99)} of 100"
    return f"{10 * chance:.0f} of 10"


def of_hundred(chance: float, worlds: int) -> str:
    """`31 +/- 1 of 100`, by its standard error where that is seen; nearer to never and always as
    `of_ten` has it.
    """
    if not RARE <= chance <= 1 - RARE:
        return of_ten(chance, worlds)
    error = max(round(100 * share_error(chance, worlds)), 1)
    return f"{100 * chance:.0f} +/- {error} of 100"
