"""Arguments of a question, as the core reads them."""

from __future__ import annotations

from functools import cache
from typing import Any

from windwall import _core
from windwall.errors import Problem, ScenarioError
from windwall.quantities.measures import Measure
from windwall.quantities.si import SI, accepted

__all__ = ["exact", "listed", "several", "stated", "uncertain", "wrong"]


@cache
def _rows() -> dict[str, dict[str, Any]]:
    return _core.question_rows()["rows"] | _core.flyweights_question_rows()["rows"]


def stated(**arguments: Any) -> dict[str, str | float]:
    """Arguments as the core reads them; a bare number only where there is no unit to forget."""
    return {
        key: _stated(key, value, _rows()[key])
        for key, value in arguments.items()
        if value is not None
    }


def several(value: Any) -> bool:
    """Whether this is a list, an array or a column of values rather than one."""
    return isinstance(value, (list, tuple, range)) or getattr(value, "ndim", 0) > 0


def listed(key: str, value: Any, example: str) -> list[Any]:
    """The entries of what has to be a list; a text alone would be read letter by letter."""
    if isinstance(value, str):
        raise wrong(key, f"a list is wanted here, such as {example}; found the text {value!r}")
    return list(value)


def _stated(key: str, value: Any, row: dict[str, Any]) -> str | float:
    return _with_unit(key, value, row["unit"], row["si"])


def _with_unit(key: str, value: Any, unit: str, si: str) -> str | float:
    taken = accepted(value, si)
    plain = isinstance(value, (int, float)) and not isinstance(value, SI)
    if plain and si != "1":
        shown = f"{value:g}"
        message = f'{shown} what? Write "{shown} {unit}", or si({shown}) for {shown} {si}'
        raise wrong(key, message)
    return taken


def wrong(key: str, message: str) -> ScenarioError:
    """That one argument of a question is wrong."""
    return ScenarioError([Problem(key, 0, 0, message)])


def uncertain(key: str, value: Any, measure: Measure, example: str) -> tuple[float, float]:
    """An argument that Python itself reckons with, in SI: `"0 ± 1 m/s"`, or `si(x)` without a
    spread; its standard deviation is 0 where none is stated.
    """
    taken = _with_unit(key, value, measure.unit, measure.si)
    if not isinstance(taken, str):
        return taken, 0.0
    try:
        read, sigma = _core.read_quantity(taken, measure.dimension, measure.unit, example)
    except ValueError as refused:
        raise wrong(key, str(refused)) from None
    return read, sigma or 0.0


def exact(key: str, value: Any, measure: Measure, example: str) -> float:
    """The same of what has no spread."""
    return uncertain(key, value, measure, example)[0]
