"""Common draws: the same worlds for every set of upgrades that is compared in them."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from windwall.study.prior import Prior
    from windwall.study.worlds import Array

__all__ = [
    "FEWEST", "FOR_CHANCES", "MOST", "SEED", "checked_count", "drawn_values", "for_chances",
    "is_even_count", "normal_draws",
]  # fmt: skip

FEWEST = 256
FOR_CHANCES = 4 * FEWEST  # a chance is known less well than a mean: docs/decisions/0022
MOST = 65536
SEED = 20110


def is_even_count(count: int, least: int = 2, most: int = MOST) -> bool:
    """Whether the sequence is even over so many: over powers of two alone."""
    return least <= count <= most and not count & (count - 1)


def for_chances(count: int) -> int:
    """How many draws a chance is counted over where means are taken over so many."""
    return min(count * (FOR_CHANCES // FEWEST), MOST)


def checked_count(count: int) -> int:
    """A number of draws that the sequence is even over."""
    if not is_even_count(count):
        raise ValueError(f"draws come in powers of two up to {MOST}, such as {FEWEST}, not {count}")
    return count


def normal_draws(numbers: int, count: int = FEWEST, seed: int = SEED) -> Array:
    """Standard normal numbers, (count, numbers), by a scrambled Sobol sequence: the same for the
    same seed. Counts are powers of two, since the sequence is even over those alone.
    """
    from scipy.special import ndtri  # here, since scipy.stats takes a second to load
    from scipy.stats import qmc

    shares = qmc.Sobol(numbers, scramble=True, rng=seed).random(checked_count(count))
    return ndtri(shares.clip(2**-40, 1 - 2**-40))


def drawn_values(prior: Prior, count: int = FEWEST, seed: int = SEED) -> Array:
    """Values of every uncertain number in so many worlds, SI, (count, numbers)."""
    return prior.to_values(normal_draws(len(prior), count, seed))
