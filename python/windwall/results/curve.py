"""Full throttle over engine speed."""

from __future__ import annotations

from typing import Any, NamedTuple

__all__ = ["Curve"]


class Curve(NamedTuple):
    """Columns of results by their addresses, SI, and how each point ended."""

    addresses: list[str]
    columns: list[Any]
    status: list[str]
