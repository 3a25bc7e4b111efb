"""Whole-vehicle performance model for small, blown, home-made vehicles.

import windwall as ww

car = ww.load("scenarios/airfield_cyclecar.json")
car.top_speed()
ww.rank(car)
"""

from __future__ import annotations

from importlib import import_module
from typing import TYPE_CHECKING, Any

from windwall.results import views

if TYPE_CHECKING:
    from windwall import physics
    from windwall._core import build_info
    from windwall.api import Scenario, load, loads
    from windwall.errors import NoAnswer, Problem, ScenarioError
    from windwall.quantities.si import si
    from windwall.report import plots as plot
    from windwall.results.ranking import Ranking
    from windwall.results.top_speed import TopSpeed
    from windwall.scenario.schema import schema
    from windwall.study.rank import rank
    from windwall.study.sweep import sweep

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

# Nothing is loaded before it is used; a module stands here by its own name, a thing with it.
HOMES = {
    "NoAnswer": "errors",
    "Problem": "errors",
    "Ranking": "results.ranking",
    "Scenario": "api",
    "ScenarioError": "errors",
    "TopSpeed": "results.top_speed",
    "build_info": "_core",
    "load": "api",
    "loads": "api",
    "rank": "study.rank",
    "schema": "scenario.schema",
    "si": "quantities.si",
    "sweep": "study.sweep",
}
MODULES = {"physics": "physics", "plot": "report.plots"}

views.made_by(lambda: import_module("windwall.report"))


def __getattr__(name: str) -> Any:
    if name in MODULES:
        found: Any = import_module(f"windwall.{MODULES[name]}")
    elif name in HOMES:
        found = getattr(import_module(f"windwall.{HOMES[name]}"), name)
    elif name == "__version__":
        found = import_module("windwall._core").build_info()["windwall"]
    else:
        raise AttributeError(f"module 'windwall' has no attribute {name!r}")
    globals()[name] = found
    return found


def __dir__() -> list[str]:
    return sorted({*globals(), *__all__})
