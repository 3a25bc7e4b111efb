"""Numbers that are none: NaN and the infinities, which neither JSON nor `==` can deal with."""

from __future__ import annotations

import math
from typing import Any

__all__ = ["finite"]


def finite(value: Any) -> Any:
    """The same with None for every number that is none."""
    if isinstance(value, dict):
        return {key: finite(inside) for key, inside in value.items()}
    if isinstance(value, (list, tuple)):
        return [finite(inside) for inside in value]
    return None if isinstance(value, float) and not math.isfinite(value) else value
