"""Spark and knock: the chance as driven, the chance without it, and what is left of every means."""

from __future__ import annotations

from collections.abc import Iterator

from windwall.quantities.measures import ANGLE, SHARE
from windwall.report.text_layout import Blocks, bullet, section
from windwall.report.wording.knock import blocked, of_a_hundred
from windwall.results.knock import OTHER_BAND, KnockBand, beyond_bands, held_late
from windwall.results.outcome import Outcome
from windwall.results.record import Record

__all__ = [
    "FAR", "NOTHING", "at_idle", "dry", "knock_lines", "left", "means", "second_opinion",
    "sentences",
]  # fmt: skip

FAR = 2  # standard deviations, from which on two opinions say the same
NOTHING = 5e-4  # of lambda, below the last digit shown


def knock_lines(answer: Outcome) -> Blocks:
    """Of a point or a top speed: detonation as a probability, and what holding it off takes."""
    heading = "Knock and spark"
    if answer.knock_band is None:
        return section(heading, bullet("A torque curve says nothing of knock."))
    system = answer.scenario_info.system
    held_back = answer.status == "knock_limited"
    opening = answer.point.engine.opening if held_back else 1.0
    if getattr(answer, "idles", False):
        said = at_idle(answer.point.knock, answer.knock_band, system)
    else:
        said = sentences(answer.point.knock, answer.knock_band, opening, system)
    lines = [line for one in said for line in bullet(one)]
    return section(heading, lines + [line for one in dry(answer) for line in bullet(one)])


def dry(answer: Outcome) -> Iterator[str]:
    """What is left without the spray, where there is one."""
    margin = answer.get("margin_without_spray")
    if margin is not None:
        yield blocked(margin, answer.knock_band.sigma, "a jet of the spray")


def sentences(knock: Record, band: KnockBand, opening: float, system: str) -> Iterator[str]:
    yield f"{band.sentence[0].upper()}{band.sentence[1:]}."
    held = list(means(knock, opening, system))
    if held:
        chance = of_a_hundred(knock.probability_at_best_spark)
        yield (
            f"At the spark of best torque and the engine's own mixture it would be "
            f"{knock.margin_at_best_spark:+z.1f}, a chance of {chance} %. To hold the margin "
            f"{'; '.join(held)}: that costs power, and a late spark heats the exhaust and its "
            "valves."
        )
        yield f"Left after that: {left(knock, system)}."
    if knock.integral_margin is not None:
        yield second_opinion(knock, band)


def at_idle(knock: Record, band: KnockBand, system: str) -> Iterator[str]:
    """Knock has no say in the spark of an idle."""
    yield f"{band.sentence[0].upper()}{band.sentence[1:]}."
    if held_late(knock.retard) > 0:
        late = ANGLE.text(knock.retard, system, 2)
        yield (
            f"The spark is that of an idle, {late} behind the one of best torque (`idle_retard`): "
            "for its steadiness, and not to hold off knock."
        )
    if knock.integral_margin is not None:
        yield second_opinion(knock, band)


def means(knock: Record, opening: float, system: str) -> Iterator[str]:
    """What is used, in the order in which it is used."""
    if held_late(knock.retard) > 0:
        yield f"the spark is held {ANGLE.text(knock.retard, system, 2)} later"
    if knock.enrichment > NOTHING:
        yield f"the mixture is richer by {knock.enrichment:.2f} of lambda"
    if opening < 1:
        yield f"the throttle stands at {SHARE.text(opening, system, 2)} of its travel"


def left(knock: Record, system: str) -> str:
    spark = f"{ANGLE.text(knock.retard_left, system, 2)} of spark"
    if knock.retard_left <= NOTHING:
        spark = "nothing of the spark"
    richer = f"{knock.enrichment_left:.2f} of lambda"
    if knock.enrichment_left <= NOTHING:
        richer = "nothing of the mixture"
    return f"{spark}, {richer}, and less boost"


def second_opinion(knock: Record, band: KnockBand) -> str:
    """The ignition delay of the end gas, known at the same anchor."""
    said = (
        f"A second opinion, the ignition delay of the end gas from the same anchor, leaves "
        f"{knock.integral_margin:+z.1f}"
    )
    if not beyond_bands(knock.integral_margin - knock.margin, band.sigma):
        return f"{said}: within the bands of both."
    if min(knock.integral_margin, knock.margin) > FAR * max(band.sigma, OTHER_BAND):
        return f"{said}: both are far from knock."
    return (
        f"{said}: further apart than the bands of both. Listen to this engine before believing "
        "either."
    )
