"""How likely detonation is."""

from __future__ import annotations

from windwall.results.knock import OTHER_BAND, KnockBand, beyond_bands
from windwall.results.views import sentence

__all__ = [
    "AGREED", "APART", "BAND", "BLOCKED", "MEASURED_WATER", "WATER", "apart", "band_sentence",
    "blocked", "octane", "of_a_hundred", "water",
]  # fmt: skip

BAND = (
    "detonation {word}: {margin:+z.1f} octane numbers to spare, known to +/- {sigma:.1f}; of 100 "
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
    "further apart than the bands of both, {sigma:.1f} and {other:.1f}. Trusted here is the rule: "
    "its slopes were measured on engines, and the delay makes less than half of what a hotter "
    "charge or head was measured to ask for. Listen to this engine before believing either. If the "
    "delay is right:"
)
BLOCKED = (
    "The moment {jet} is blocked the margin is {margin:+z.1f} octane numbers at that spark, and of "
    "100 engines described like this about {chance} would knock."
)
WATER = (
    " Its water is {water:.2f} of the fuel by mass; what water does for knock was measured to "
    "{measured}, and beyond that is extrapolated."
)
MEASURED_WATER = 0.6  # of the fuel


def blocked(margin: float, sigma: float, jet: str) -> str:
    """What a spark that needs a spray is worth without it."""
    chance = of_a_hundred(KnockBand(margin, sigma).chance)
    return BLOCKED.format(jet=jet, margin=margin, chance=chance)


def water(per_fuel: float | None) -> str:
    """That more is sprayed than was ever measured; nothing within that."""
    if per_fuel is None or per_fuel <= MEASURED_WATER:
        return ""
    return WATER.format(water=per_fuel, measured=MEASURED_WATER)


def octane(margin: float | None) -> str:
    """A margin in a column."""
    return "-" if margin is None else f"{margin:+z.1f}"


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
