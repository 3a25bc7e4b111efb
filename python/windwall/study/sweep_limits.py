"""Which variants of a sweep pass a limit on the way to their top speed."""

from __future__ import annotations

from typing import TYPE_CHECKING

from windwall.quantities.si import si
from windwall.scenario.data import ScenarioData
from windwall.study.progress import Progress, listener
from windwall.study.solve import top_speed

if TYPE_CHECKING:
    import xarray

__all__ = ["NEXT", "with_limits"]

NEXT = "\n"  # stands between two addresses


def with_limits(
    scenario: ScenarioData, swept: xarray.Dataset, progress: bool | Progress | None = None
) -> xarray.Dataset:
    """The same Dataset with `passed`: the addresses of the limits that each variant passes at full
    throttle, a line for each; empty where it passes none or has no answer. Solves every variant
    once more, and whole, so it takes longer than the sweep did.
    """
    import numpy as np

    inputs = {name: swept[name].attrs["address"] for name in swept["speed"].dims}
    found = np.full(swept["speed"].shape, "", dtype=object)
    with listener(progress, "limits", "variant") as callback:
        for done, at in enumerate(np.ndindex(found.shape)):
            here = zip(inputs.items(), at, strict=True)
            changes = {address: si(float(swept[name][place])) for (name, address), place in here}
            found[at] = NEXT.join(_passed(scenario.set(changes)))
            if callback is not None and callback(done + 1, found.size) is False:
                break
    attrs = {"long_name": "Limits passed at full throttle, by their addresses"}
    return swept.assign(passed=(swept["speed"].dims, found.astype(str), attrs))


def _passed(variant: ScenarioData) -> list[str]:
    best = top_speed(variant)
    return [one.address for one in best.passed] if best.answered else []
