"""That the model contradicts what was observed, in a sentence that can stand before everything."""

from __future__ import annotations

from collections.abc import Iterator

from windwall.report.text.observed import label
from windwall.results.diagnosis import Compared, Diagnosis

__all__ = ["FAR", "HEARD", "NEARER", "SEEN", "contradicts_speed", "disagreement", "is_far"]

FAR = (
    "CAUTION: the model contradicts what was observed, by so many standard deviations: {facts}. "
    "What follows is worth less until that is explained."
)
NEARER = "The model is off by more than one standard deviation: {facts}."
SEEN = "{name} {observed} seen, {model} in the model ({off})"
HEARD = "{name} {observed}, {model} to spare in the model ({off})"


def disagreement(diagnosis: Diagnosis | None, system: str) -> str:
    """What is far off with both numbers, else what is a little off; empty where nothing is."""
    compared = diagnosis.compared if diagnosis else ()
    far = [one for one in compared if one.far]
    shown = far or [one for one in compared if one.challenged]
    if not shown:
        return ""
    facts = "; ".join(_facts(shown, system))
    return (FAR if far else NEARER).format(facts=facts)


def is_far(diagnosis: Diagnosis | None) -> bool:
    """Whether anything that was observed is far from the model."""
    return any(one.far for one in diagnosis.compared) if diagnosis else False


def contradicts_speed(diagnosis: Diagnosis | None) -> bool:
    """Whether what is far off is the speed that the vehicle was seen to reach."""
    compared = diagnosis.compared if diagnosis else ()
    return any(one.far and one.key == "speed" and one.fact.at_top_speed for one in compared)


def _facts(shown: list[Compared], system: str) -> Iterator[str]:
    for one in shown:
        name, off = label(one.fact, system), f"{one.off:+z.1f}"
        if isinstance(one.observed, str):  # what was heard of knock
            model = f"{one.model:+z.1f} octane numbers"
            yield HEARD.format(name=name, observed=one.observed, model=model, off=off)
            continue
        model = one.measure.short(one.model, system)
        seen = _with_sigma(one.observed, one, system)
        yield SEEN.format(name=name, observed=seen, model=model, off=off)


def _with_sigma(observed: float, one: Compared, system: str) -> str:
    """`126 +/- 3.0 km/h`."""
    number, _, unit = one.measure.short(observed, system).partition(" ")
    known = f" +/- {one.measure.spread.number(one.sigma, system, 2)}" if one.sigma else ""
    return f"{number}{known} {unit}".rstrip()
