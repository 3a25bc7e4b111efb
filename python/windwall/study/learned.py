"""A scenario that has learned: its numbers moved, and known as well as they then are."""

from __future__ import annotations

from typing import Any

import numpy as np

from windwall._core import build_info
from windwall.errors import Problem, ScenarioError
from windwall.results.posterior import LearnedInput, Posterior
from windwall.scenario.data import KNOCK_ANCHOR, ScenarioData
from windwall.study.prior import Prior

__all__ = [
    "DIGITS", "FEWER", "HARDLY_MOVED", "HARDLY_NARROWED", "HARDLY_TIED", "LEAST", "MARGIN",
    "MARGIN_SHARE", "MOST_PAIRS", "PLACES", "TOLD", "changed", "correlations", "kept", "learned",
    "note", "stated",
]  # fmt: skip

# What hardly changed stays as the file has it. Many that move a little move the speed together.
HARDLY_MOVED, HARDLY_NARROWED = 0.03, 0.99
MARGIN, MARGIN_SHARE = (
    "engine/spark/margin",
    0.5,
)  # of the anchor's spread, kept where none is stated
TOLD = 4  # sources that a note names
DIGITS = 8  # of a number in the file
FEWER = 4  # of its standard deviation
HARDLY_TIED = 0.005  # a correlation that is left out
MOST_PAIRS = 400  # fewer than a file may hold, for those that it has
PLACES = 4
LEAST = 0.01  # of the shortest axis squared, that a matrix of correlations keeps


def learned(scenario: ScenarioData, posterior: Posterior) -> ScenarioData:
    """The scenario with every input that moved or narrowed as it is believed afterwards, and a note
    of what it was learned from. The margin to knock that the driver keeps stays what it was.
    """
    if posterior.digest != scenario.digest:
        message = "was learned with another scenario, not with this one"
        raise ScenarioError([Problem("posterior", 0, 0, message)], scenario.source)
    changes: dict[str, Any] = {one.address: stated(one) for one in posterior.inputs if changed(one)}
    if KNOCK_ANCHOR in changes and scenario.spark_is_chosen and scenario.get(MARGIN) is None:
        changes[MARGIN] = MARGIN_SHARE * scenario.knock_sigma
    made = scenario.set(changes) if changes else scenario
    more: dict[str, Any] = {
        "notes": " ".join(filter(None, [made.document().get("notes"), note(posterior)]))
    }
    if pairs := correlations(made, posterior):
        more["correlations"] = pairs
    return made.restated(made.document() | more)


def changed(one: LearnedInput) -> bool:
    """Whether an input is believed to be something else, or known better. One that was stated at an
    end of its range was never believed to be there.
    """
    away = abs(one.value - one.input.value) / one.input.sigma
    return away > HARDLY_MOVED or one.left < HARDLY_NARROWED


def stated(one: LearnedInput) -> str:
    """As a file states it: in SI, plain numbers as they are or in percent."""
    measure, value, sigma = one.input.measure, one.value, one.sigma
    unit = measure.si if measure.si != "1" else measure.unit
    if unit == "%":
        value, sigma = 100 * value, 100 * sigma
    return f"{value:.{DIGITS}g} ± {sigma:.{FEWER}g} {unit}".rstrip()


def note(posterior: Posterior) -> str:
    """What was learned from, by what, and from which scenario."""
    sources = list(dict.fromkeys(one.source or one.group for one in posterior.facts))
    named = ", ".join(sources[:TOLD]) + (
        f" and {len(sources) - TOLD} more" if len(sources) > TOLD else ""
    )
    version = build_info()["windwall"]
    return (
        f"Learned by windwall {version} from {len(posterior.facts)} facts ({named}); before that "
        f"the digest was {posterior.digest}."
    )


def correlations(made: ScenarioData, posterior: Posterior) -> list[dict[str, Any]]:
    """As a file states them: what was learned of the inputs together, and what it said before of
    others. What is hardly tied is left out, and the rest drawn in a little where that asks for it.
    """
    uncertain = set(Prior(made).addresses)
    places = [at for at, one in enumerate(posterior.inputs) if one.address in uncertain]
    names = [posterior.inputs[at].address for at in places]
    tied = kept(posterior.correlation[np.ix_(places, places)])
    learned = [
        {"between": [names[i], names[j]], "correlation": round(float(tied[i, j]), PLACES)}
        for i, j in zip(*np.nonzero(np.triu(tied, 1)), strict=True)
    ]
    before = made.document().get("correlations", [])
    return [one for one in before if not set(one["between"]) <= set(names)] + learned


def kept(correlation: np.ndarray) -> np.ndarray:
    """The strongest of a matrix of correlations, as many as a file may hold, such that numbers can
    still be drawn by them.
    """
    strength = np.abs(np.triu(correlation, 1))
    weakest = max(HARDLY_TIED, float(np.sort(strength.ravel())[-MOST_PAIRS:].min()))
    tied = np.where(np.abs(correlation) >= weakest, correlation, 0.0)
    off = tied - np.diag(np.diag(tied))
    lowest = float(np.linalg.eigvalsh(off).min(initial=0.0))
    drawn_in = min(1.0, (1 - LEAST) / -lowest) if lowest < 0 else 1.0
    return np.eye(len(off)) + drawn_in * off
