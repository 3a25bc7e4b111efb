"""What was read, as the faults are held against it."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any, NamedTuple

from windwall.results.diagnosis import RESULTS
from windwall.results.situation import Situation
from windwall.scenario.data import ScenarioData
from windwall.study.compare import facts
from windwall.study.fault_odds import HEARD
from windwall.study.readings import part_ids
from windwall.study.worlds import GOAL_SPEED

__all__ = ["ADDRESSES", "Read", "as_read", "observed", "situation"]

# What is held against the model: not what was chosen, a gear or a spark.
ADDRESSES = {"speed": GOAL_SPEED} | {
    key: address for key, address in RESULTS.items() if key not in {"gear", "retard"}
}


class Read(NamedTuple):
    """One number that was read, SI, or a word that was heard of knock."""

    situation: tuple[
        tuple[str, float], ...
    ]  # where the model is asked for it; the pull's end if none
    address: str
    value: float | str
    sigma: float  # of the sensor; 0 of a word
    source: str = ""


def observed(scenario: ScenarioData) -> list[dict[str, Any]]:
    """What the file says was observed, as facts. A number without its ± is none."""
    blower = part_ids(scenario).get("blower", "")
    return [
        {
            "situation": situation(fact.situation),
            "address": ADDRESSES[fact.key].format(blower),
            "value": fact.observed,
            "sigma": fact.sigma or 0.0,
            "source": f"observed/{scenario.observed.index(fact.entry) + 1}/{fact.key}",
        }
        for fact in facts(scenario)
        if not fact.apart and fact.key in ADDRESSES and (fact.sigma or fact.key == "knock")
    ]


def situation(one: Situation) -> dict[str, Any]:
    """Where the core is asked: held at an engine speed or in a gear, else at the end of a pull."""
    said = one._asdict().items()
    return {key: value for key, value in said if key != "apart" and value is not None}


def as_read(given: Iterable[dict[str, Any]]) -> list[Read]:
    """Facts as they are handed over, checked."""
    return [_checked(at, one) for at, one in enumerate(given, 1)]


def _checked(at: int, fact: dict[str, Any]) -> Read:
    value, sigma = fact["value"], float(fact.get("sigma") or 0.0)
    word = isinstance(value, str)
    if word and value not in {*HEARD, "at the edge"}:
        raise ValueError(
            f'fact {at}: knock is "heard", "not heard" or "at the edge", not {value!r}'
        )
    if not word and not sigma > 0:
        raise ValueError(f"fact {at}, {fact['address']}: a reading needs its sigma, above zero")
    where = {key: one for key, one in (fact.get("situation") or {}).items() if one is not None}
    where.pop("kind", None)  # a gear or an engine speed says the same
    asked = tuple(sorted(where.items()))
    return Read(asked, fact["address"], value, sigma, fact.get("source", ""))
