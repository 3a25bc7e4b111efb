"""What was answered of the engine before any change, as the values of a file."""

from __future__ import annotations

from collections.abc import Callable
from math import pi, sqrt
from typing import Any

from windwall.cli.new_readings import Values
from windwall.errors import Problem, ScenarioError

__all__ = [
    "BORE", "DISPLACEMENT", "PRINTED_TO", "STOCK_RATIO", "STROKE", "Read", "agree", "as_answered",
]  # fmt: skip

# Answers that are no inputs, but tell of some.
DISPLACEMENT = "stock/displacement"  # m3, of all cylinders
STOCK_RATIO = "stock/compression_ratio"

BORE, STROKE = "engine/bore", "engine/stroke"
PRINTED_TO = 0.02  # of a displacement, which is rounded, and the name of a model as often
Read = Callable[[str, Any, str], float]  # SI of what was typed at an address


def as_answered(values: Values, read: Read) -> Values:
    """The values with what follows from the answers that are no inputs."""
    made = dict(values)
    volume, ratio = made.pop(DISPLACEMENT, None), made.pop(STOCK_RATIO, None)
    if ratio is not None:
        made.setdefault("engine/compression_ratio", ratio)
        if any(address.startswith("engine/rated/") for address in made):
            made["engine/rated/compression_ratio"] = ratio
    return made if volume is None else made | _missing_size(made, volume, read)


def _missing_size(made: Values, volume: float, read: Read) -> Values:
    """Bore or stroke, where the other one and the displacement are answered."""
    if (BORE in made) == (STROKE in made) or "engine/cylinders" not in made:
        return {}
    one = volume / made["engine/cylinders"]
    if BORE in made:
        stroke = one / (pi / 4 * read(BORE, made[BORE], BORE) ** 2)
        return {STROKE: f"{1e3 * stroke:.4g} mm"}
    area = one / read(STROKE, made[STROKE], STROKE)
    return {BORE: f"{1e3 * sqrt(4 / pi * area):.4g} mm"}


def agree(values: Values, read: Read) -> None:
    """Bore, stroke and displacement tell one thing twice; a ScenarioError where they differ."""
    if any(key not in values for key in (DISPLACEMENT, BORE, STROKE)):
        return
    printed, count = values[DISPLACEMENT], values["engine/cylinders"]
    bore, stroke = (read(key, values[key], key) for key in (BORE, STROKE))
    made = count * pi / 4 * bore**2 * stroke
    if abs(made - printed) > PRINTED_TO * printed:
        message = (
            f"{count} x {values[BORE]} x {values[STROKE]} make {1e6 * made:.0f} cm3, and "
            f"{1e6 * printed:.0f} cm3 were printed; empty takes it from those. If the slip is in "
            "an answer above, Ctrl-C ends without writing"
        )
        raise ScenarioError([Problem(STROKE, 0, 0, message)])
