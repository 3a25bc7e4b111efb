"""The most probable vehicle: standard normals that a model and its facts agree on best."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from windwall.study.calibrate_likelihood import Likelihood
from windwall.study.slopes import Model, slopes

if TYPE_CHECKING:
    import numpy as np

__all__ = ["CLOSE", "MOST_STEPS", "STEP", "UNANSWERED", "Maximum", "find_maximum"]

STEP = 0.1  # standard deviations either way, for slopes: small beside what is known, large beside
# the corners of a solver
UNANSWERED = 1e6  # of a residual, where a world has no answer: no step ends there
MOST_STEPS = 40
CLOSE = 1e-5  # what is left of a sum of squares or a step is nothing beside what is in doubt


class Maximum(NamedTuple):
    """Where prior and facts together are most probable."""

    z: np.ndarray  # (inputs,)
    model: np.ndarray  # (facts,), there
    slopes: np.ndarray  # (facts, inputs), of the model per standard deviation
    cost: float  # half the sum of squares of residuals and z
    steps: int
    converged: bool


def find_maximum(model: Model, likelihood: Likelihood, start: np.ndarray) -> Maximum:
    """Least squares of the residuals and of z, which is the prior, by SciPy's trust region. Slopes
    are central differences, all of them one batch of worlds.
    """
    import numpy as np
    from scipy.optimize import least_squares

    def residuals(z: np.ndarray) -> np.ndarray:
        found = likelihood.residuals(model(z[None, :]))[0]
        return np.concatenate([z, np.where(np.isfinite(found), found, UNANSWERED)])

    def jacobian(z: np.ndarray) -> np.ndarray:
        here, gradient = slopes(z, model, STEP)
        of_facts = likelihood.slopes(here[None, :])[0][:, None] * gradient
        return np.vstack([np.eye(len(z)), of_facts])

    found = least_squares(
        residuals, start, jacobian, xtol=CLOSE, ftol=CLOSE, gtol=CLOSE, max_nfev=MOST_STEPS
    )
    here, gradient = slopes(found.x, model, STEP)
    return Maximum(found.x, here, gradient, float(found.cost), int(found.nfev), found.status > 0)
