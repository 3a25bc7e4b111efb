"""What to measure and which fault fits, as plain documents for JSON and as tables."""

from __future__ import annotations

from dataclasses import fields
from typing import TYPE_CHECKING, Any

from windwall.results.faults import Alternative, FactRead, FaultsThatFit
from windwall.results.measure import Taught, ToMeasure, Worth
from windwall.results.views import document, frame

if TYPE_CHECKING:
    import pandas

__all__ = ["MEASURE_UNITS", "faults_document", "faults_frame", "measure_document", "measure_frame"]

MEASURE_UNITS = {
    "speed": "m/s",
    "sigma": "m/s",
    "ahead": "m/s",
    "ahead_sigma": "m/s",
    "perfect": "m/s",
    "rows/cost": "EUR",
    "rows/hours": "h",
    "rows/by_lines/gain": "m/s",
    "rows/by_curves/gain": "m/s",
    "rows/by_curves/error": "m/s",
}


@document.register(ToMeasure)
def measure_document(answer: ToMeasure) -> dict[str, Any]:
    """The answer to `windwall measure`."""
    made: dict[str, Any] = {"title": answer.title, "answered": answer.answered}
    made["sentence"] = answer.sentence
    for field in fields(answer):
        if field.name not in {"title", "system", "rows"}:
            made[field.name] = getattr(answer, field.name)
    made["rows"] = [_worth(one, answer) for one in answer.rows]
    return made | {"units": MEASURE_UNITS | {"price": f"{answer.currency} s/m"}}


def _worth(one: Worth, answer: ToMeasure) -> dict[str, Any]:
    made = one._asdict()
    made["measures"] = [each.si for each in one.measures]
    made["addresses"], made["sigmas"] = list(one.addresses), list(one.sigmas)
    made |= {key: getattr(one, key)._asdict() for key in ("by_lines", "by_curves")}
    return made | {"money": answer.money(one.by_curves.gain)}


@frame.register(ToMeasure)
def measure_frame(answer: ToMeasure) -> pandas.DataFrame:
    """One row for each thing to measure, in SI."""
    import pandas as pd

    keys = ("title", "cost", "hours")
    rows = [[getattr(one, key) for key in keys] + list(one.by_curves) for one in answer.rows]
    columns = [*keys, *Taught._fields]
    made = pd.DataFrame(rows, columns=columns, index=[one.id for one in answer.rows])
    made.attrs["units"] = {"gain": "m/s", "error": "m/s", "cost": "EUR", "hours": "h"}
    return made


@document.register(FaultsThatFit)
def faults_document(answer: FaultsThatFit) -> dict[str, Any]:
    """The answer to `windwall faults`."""
    return {
        "title": answer.title,
        "answered": answer.answered,
        "sentence": answer.sentence,
        "facts": [_fact(one) for one in answer.facts],
        "alternatives": [_alternative(one) for one in answer.alternatives],
        "impossible": list(answer.impossible),
        "telling": None if answer.telling is None else answer.telling._asdict(),
        "before": answer.before,
        "units": {"telling/hours": "h", "telling/apart": "1", "alternatives/chance": "1"},
    }


def _fact(one: FactRead) -> dict[str, Any]:
    return one._asdict() | {"measure": one.measure.si, "off": one.off}


def _alternative(one: Alternative) -> dict[str, Any]:
    made = one._asdict() | {"measure": one.measure.si if one.measure else None}
    del made["told"]
    made["shows"] = [each._asdict() | {"measure": each.measure.si} for each in one.shows]
    return made


@frame.register(FaultsThatFit)
def faults_frame(answer: FaultsThatFit) -> pandas.DataFrame:
    """One row for each alternative, in SI."""
    import pandas as pd

    keys = ("title", "chance", "prior", "severity", "spread", "evidence")
    rows = [[getattr(one, key) for key in keys] for one in answer.alternatives]
    made = pd.DataFrame(rows, columns=list(keys), index=[one.id for one in answer.alternatives])
    made.attrs["units"] = {one.id: one.measure.si for one in answer.alternatives if one.measure}
    return made
