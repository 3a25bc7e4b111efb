"""Whole-vehicle performance model for small, blown, home-made vehicles.

import windwall as ww

car = ww.load("scenarios/airfield_cyclecar.json")
car.top_speed()
ww.rank(car)
"""

from __future__ import annotations

from importlib import import_module
from typing import Any

from windwall._core import build_info
from windwall.errors import NoAnswer, Problem, ScenarioError
from windwall.quantities import si
from windwall.ranking import Ranking, rank
from windwall.scenario import Scenario, load, loads
from windwall.schema import schema
from windwall.sweeping import sweep
from windwall.top_speed import TopSpeed

__version__ = build_info()["windwall"]

__all__ = [
    "NoAnswer",
    "Problem",
    "Ranking",
    "Scenario",
    "ScenarioError",
    "TopSpeed",
    "build_info",
    "load",
    "loads",
    "physics",
    "plot",
    "rank",
    "schema",
    "si",
    "sweep",
]


def __getattr__(name: str) -> Any:
    # Plotting and the handbook load what they need only when somebody asks for them.
    if name in {"physics", "plot"}:
        return import_module(f"windwall.{name}")
    raise AttributeError(f"module 'windwall' has no attribute {name!r}")


def __dir__() -> list[str]:
    return sorted({*globals(), *__all__})
