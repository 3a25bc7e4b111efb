"""Chances as people count them."""

from __future__ import annotations

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
