"""How likely what was observed is beside what a model says: numbers, and bounds where somebody
listened for knock.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

if TYPE_CHECKING:
    import numpy as np

__all__ = ["ABOVE", "BELOW", "FLAT", "NUMBER", "TAILS", "Likelihood", "hazard"]

TAILS = 4.0  # degrees of freedom of Student's t, common in robust fitting
NUMBER, ABOVE, BELOW = 0, 1, -1
FLAT = 1e-150  # of a residual, below which its slope is nothing


class Likelihood(NamedTuple):
    """Facts beside each other, SI. A number lies about its value by its sigma: by a normal
    distribution, or by Student's t of `tails` degrees of freedom. A bound is a probit: the chance
    that a model above (or below) the value by that many sigmas is heard so.
    """

    value: np.ndarray  # (facts,)
    sigma: np.ndarray  # (facts,)
    side: np.ndarray  # (facts,): NUMBER, or on which side of its value a bound wants the model
    tails: float | None = None

    @property
    def bound(self) -> np.ndarray:
        """Which of the facts are bounds."""
        return self.side != NUMBER

    def off(self, model: np.ndarray) -> np.ndarray:
        """Sigmas that a model (worlds, facts) lies above the values."""
        return (model - self.value) / self.sigma

    def log(self, model: np.ndarray) -> np.ndarray:
        """Logarithm of the likelihood of a model (worlds, facts), less its largest: (worlds,)."""
        import numpy as np

        return -0.5 * np.sum(self.residuals(model) ** 2, axis=-1)

    def residuals(self, model: np.ndarray) -> np.ndarray:
        """Numbers (worlds, facts) whose squares are twice the loss, for least squares."""
        import numpy as np

        off = self.off(model)
        loss = off if self.tails is None else self._student(off)
        return np.where(self.bound, self._probit(off), loss)

    def slopes(self, model: np.ndarray) -> np.ndarray:
        """How the residuals change with the model, per SI unit: (worlds, facts)."""
        import numpy as np

        off = self.off(model)
        slope = np.ones_like(off) if self.tails is None else self._student_slope(off)
        return np.where(self.bound, self._probit_slope(off), slope) / self.sigma

    def weights(self, model: np.ndarray) -> np.ndarray:
        """What a number counts at a model (worlds, facts), per SI unit squared: as in least squares
        that are weighted anew in each step. A bound counts nothing here.
        """
        import numpy as np

        count = np.ones_like(model)
        if self.tails is not None:
            count = (self.tails + 1) / (self.tails + self.off(model) ** 2)
        return np.where(self.bound, 0.0, count) / self.sigma**2

    def _student(self, off: np.ndarray) -> np.ndarray:
        import numpy as np

        assert self.tails is not None
        return np.sign(off) * np.sqrt((self.tails + 1) * np.log1p(off**2 / self.tails))

    def _student_slope(self, off: np.ndarray) -> np.ndarray:
        import numpy as np

        assert self.tails is not None
        there = np.abs(off) > 1e-6
        safe = np.where(there, off, 1.0)
        slope = (self.tails + 1) * safe / (self.tails + safe**2) / self._student(safe)
        return np.where(there, slope, np.sqrt((self.tails + 1) / self.tails))

    def _probit(self, off: np.ndarray) -> np.ndarray:
        import numpy as np
        from scipy.special import log_ndtr

        return np.sqrt(-2.0 * log_ndtr(self.side * off))

    def _probit_slope(self, off: np.ndarray) -> np.ndarray:
        import numpy as np

        inside, residual = self.side * off, self._probit(off)
        seen = residual > FLAT
        return np.where(seen, -self.side * hazard(inside) / np.where(seen, residual, 1.0), 0.0)


def hazard(inside: np.ndarray) -> np.ndarray:
    """Density over distribution of the standard normal, also far out."""
    import numpy as np
    from scipy.special import log_ndtr

    return np.exp(-0.5 * inside**2 - 0.5 * np.log(2 * np.pi) - log_ndtr(inside))
