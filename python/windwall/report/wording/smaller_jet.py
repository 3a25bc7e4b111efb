"""What is said of a spray that takes far more than is usual."""

from __future__ import annotations

from windwall.quantities.measures import ANGLE, SHARE, SPEED, Measure
from windwall.results.smaller_jet import SmallerJet, Tried
from windwall.results.views import sentence

__all__ = [
    "FASTER", "JET", "MUCH", "NO_FASTER", "NO_SPARK", "SAME", "SAME_SPARK", "SPARK",
    "smaller_jet_sentence",
]  # fmt: skip

JET = Measure("volume flow", "cm3/min")
MUCH = (
    "charge_path/{part} sprays {of_fuel} of the fuel by mass, where 10 to 25 % is usual at full "
    "load (common practice, no source)."
)
FASTER = (
    "Of smaller jets the model is fastest with {share} of its flow, {flow}: {speed} instead of "
    "{fitted}, {spark}. Tried were {tried} of it. A smaller jet holds off less knock on a hotter "
    "day."
)
NO_FASTER = "With {tried} of its flow the model is no faster than the {fitted} it has."
SPARK = "with the spark {retard} late instead of {before} and {margin} octane numbers to spare"
SAME = "with the same spark and {margin} octane numbers to spare"
SAME_SPARK = 0.05 / 57.3  # rad, less than the last digit shown
NO_SPARK = "with nothing known of its knock"


@sentence.register(SmallerJet)
def smaller_jet_sentence(one: SmallerJet) -> str:
    """How much it takes, and what smaller jets make of it."""
    system, best = one.system, one.best
    much = MUCH.format(part=one.part, of_fuel=SHARE.text(one.of_fuel, system, 2))
    if not one.tried:
        return much
    said = {
        "fitted": SPEED.text(one.fitted.speed, system, 4),
        "tried": _listed([SHARE.short(each.share, system) for each in one.tried]),
    }
    if best is None:
        return f"{much} {NO_FASTER.format(**said)}"
    said |= {
        "share": SHARE.short(best.share, system),
        "flow": JET.short(best.flow, system),
        "speed": SPEED.text(best.speed, system, 4),
        "spark": _spark(best, one.fitted, system),
    }
    return f"{much} {FASTER.format(**said)}"


def _spark(one: Tried, fitted: Tried, system: str) -> str:
    if one.retard is None or fitted.retard is None or one.margin is None:
        return NO_SPARK
    if abs(one.retard - fitted.retard) < SAME_SPARK:
        return SAME.format(margin=f"{one.margin:+z.1f}")
    late, before = (ANGLE.short(each, system, 2) for each in (one.retard, fitted.retard))
    return SPARK.format(retard=late, before=before, margin=f"{one.margin:+z.1f}")


def _listed(names: list[str]) -> str:
    *others, last = names
    return f"{', '.join(others)} and {last}" if others else last
