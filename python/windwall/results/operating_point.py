"""The engine held at one condition."""

from __future__ import annotations

from typing import Any

from windwall.results.knock import KnockBand
from windwall.results.outcome import Outcome


class OperatingPoint(Outcome):
    """One operating point. The results' own rows are its attributes: `point.manifold.boost`."""

    def __getattr__(self, key: str) -> Any:
        if key.startswith("_"):
            raise AttributeError(key)
        return getattr(self.point, key)

    def __dir__(self) -> list[str]:
        return [*super().__dir__(), *(self.point if self.answered else ())]

    @property
    def knock_band(self) -> KnockBand | None:
        """The margin with its band; `word` is likely, marginal or unlikely."""
        return KnockBand.of(self.point.knock, self._info.knock_sigma)
