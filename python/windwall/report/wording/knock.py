"""How likely detonation is."""

from __future__ import annotations

from windwall.results.knock import OTHER_BAND, KnockBand, beyond_bands
from windwall.results.views import sentence

BAND = (
    "detonation {word}: {margin:+.1f} octane numbers to spare, known to +/- {sigma:.1f}; of 100 "
    "engines described like this about {chance} would knock"
)

AGREED = (
    "The rule of octane numbers, by which all of this is ranked, and the ignition delay of the end "
    "gas, known by the same anchor, are {apart:.1f} octane numbers apart for the vehicle as it is: "
    "within the bands of both."
)
APART = (
    "Everything here is ranked by a rule of octane numbers. The ignition delay of the end gas, "
    "known by the same anchor, leaves {apart:.1f} octane numbers {way} for the vehicle as it is: "
    "further apart than the bands of both, {sigma:.1f} and {other:.1f}. Listen to this engine "
    "before believing either. If the delay is right:"
)


def apart(said: float, sigma: float) -> str:
    """How far the two models of knock are apart."""
    template = APART if beyond_bands(said, sigma) else AGREED
    way = "more" if said > 0 else "less"
    return template.format(apart=abs(said), way=way, sigma=sigma, other=OTHER_BAND)


@sentence.register(KnockBand)
def band_sentence(band: KnockBand) -> str:
    """A band promises nothing."""
    chance = of_a_hundred(band.chance)
    return BAND.format(word=band.word, margin=band.margin, sigma=band.sigma, chance=chance)


def of_a_hundred(chance: float) -> int:
    """Never none and never all of them."""
    return min(max(round(100 * chance), 1), 99)
