"""Arguments of a question, as the core reads them."""

from __future__ import annotations

from functools import cache
from typing import Any

from windwall import _core
from windwall.errors import Problem, ScenarioError
from windwall.quantities.si import SI, accepted


@cache
def _rows() -> dict[str, dict[str, Any]]:
    return _core.question_rows()["rows"]


def stated(**arguments: Any) -> dict[str, str | float]:
    """Arguments as the core reads them; a bare number only where there is no unit to forget."""
    return {
        key: _stated(key, value, _rows()[key])
        for key, value in arguments.items()
        if value is not None
    }


def _stated(key: str, value: Any, row: dict[str, Any]) -> str | float:
    taken = accepted(value, row["si"])
    plain = isinstance(value, (int, float)) and not isinstance(value, SI)
    if plain and row["si"] != "1":
        shown = f"{value:g}"
        message = (
            f'{shown} what? Write "{shown} {row["unit"]}", or si({shown}) for {shown} {row["si"]}'
        )
        raise ScenarioError([Problem(key, 0, 0, message)])
    return taken
