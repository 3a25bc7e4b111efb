"""The engine held at one condition."""

from __future__ import annotations

from typing import Any

from windwall.results.outcome import Outcome

__all__ = ["OperatingPoint"]


class OperatingPoint(Outcome):
    """One operating point. The rows of the point itself are attributes too: `.manifold.boost`."""

    __slots__ = ()
    question = "operating_point"

    def __getattr__(self, key: str) -> Any:
        if key.startswith("_") or key in self.numbers:
            return super().__getattr__(key)
        return getattr(self.point, key)

    def __dir__(self) -> list[str]:
        return [*super().__dir__(), *(self.point if self.answered else ())]
