"""What was learned as a plain document for JSON."""

from __future__ import annotations

from typing import Any

from windwall.report.text.learned import remarks
from windwall.results.posterior import HeldFact, Interval, LearnedInput, Posterior
from windwall.results.views import document

__all__ = ["learned_document"]


@document.register(Posterior)
def learned_document(found: Posterior) -> dict[str, Any]:
    """What was learned; the draws stay in Python."""
    return {
        "title": found.title,
        "digest": found.digest,
        "speed": {"before": _interval(found.before), "after": _interval(found.after)},
        "inputs": [_input(one) for one in found.inputs],
        "facts": [_fact(one) for one in found.facts],
        "circumstances": [
            {"name": name, "moved": moved, "left": left}
            for name, moved, left in found.circumstances
        ],
        "trades": [one._asdict() for one in found.trades],
        "unlearned": list(found.unlearned),
        "unasked": list(found.unasked),
        "tails": found.tails,
        "equal_draws": found.equal_draws,
        "evaluations": found.evaluations,
        "converged": found.converged,
        "sentences": list(remarks(found)),
        "units": {"speed": "m/s"},
    }


def _interval(one: Interval | None) -> dict[str, Any] | None:
    return None if one is None else one._asdict()


def _input(one: LearnedInput) -> dict[str, Any]:
    known = one.input
    return {
        "address": known.address,
        "stated": known.given,
        "described": {"value": known.value, "sigma": known.sigma},
        "before": one.before,
        "value": one.value,
        "sigma": one.sigma,
        "moved": one.moved,
        "left": one.left,
        "unit": known.measure.si,
    }


def _fact(one: HeldFact) -> dict[str, Any]:
    made = {key: value for key, value in one._asdict().items() if key != "measure"}
    return made | {"unexplained": one.unexplained, "unit": one.measure.si}
