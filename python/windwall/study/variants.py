"""The top speed of many variants at once, wherever they lie."""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING, Any

from windwall import _core
from windwall.results.answer import answer_rows
from windwall.scenario.data import ScenarioData

if TYPE_CHECKING:
    import numpy as np

__all__ = ["ENGINE_SPEED", "speeds"]

ENGINE_SPEED = "engine/speed"


def speeds(scenario: ScenarioData, inputs: Mapping[str, np.ndarray]) -> dict[str, np.ndarray]:
    """What a sweep answers and the engine speed, one column each, SI; `inputs` holds what each
    variant sets, one column for each address, SI. A missing number is NaN.
    """
    columns = list(inputs.values())
    found: dict[str, Any] = _core.sweep(
        scenario.core, list(inputs), columns, [ENGINE_SPEED], 0, None
    )
    return {key: found[key] for key in answer_rows("sweep")} | {ENGINE_SPEED: found["outputs"][0]}
