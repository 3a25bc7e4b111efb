"""How likely detonation is."""

from __future__ import annotations

from windwall.results.knock import KnockBand
from windwall.results.views import sentence

BAND = (
    "detonation {word}: {margin:+.1f} octane numbers to spare, known to +/- {sigma:.1f}; of 100 "
    "engines described like this about {chance} would knock"
)


@sentence.register(KnockBand)
def band_sentence(band: KnockBand) -> str:
    """A band promises nothing."""
    chance = of_a_hundred(band.chance)
    return BAND.format(word=band.word, margin=band.margin, sigma=band.sigma, chance=chance)


def of_a_hundred(chance: float) -> int:
    """Never none and never all of them."""
    return min(max(round(100 * chance), 1), 99)
