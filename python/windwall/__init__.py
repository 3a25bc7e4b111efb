"""Whole-vehicle performance model for small, blown, home-made vehicles.

import windwall as ww

car = ww.load("scenarios/airfield_cyclecar.json")
car.top_speed()
ww.rank(car)
"""

from windwall.results.makers import makers

TYPE_CHECKING = False  # as tools read it; `typing` takes longer to load than all that is below

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
    from windwall.sliders.explore import explore
    from windwall.study.coast_down_fit import coast_down_fit
    from windwall.study.driven_gains import driven_gains
    from windwall.study.gearing import best_gearing
    from windwall.study.rank import rank
    from windwall.study.sweep import sweep

__all__ = [
    "NoAnswer",
    "Problem",
    "Ranking",
    "Scenario",
    "ScenarioError",
    "TopSpeed",
    "best_gearing",
    "build_info",
    "coast_down_fit",
    "driven_gains",
    "explore",
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
_HOMES = {
    "NoAnswer": "errors",
    "Problem": "errors",
    "Ranking": "results.ranking",
    "Scenario": "api",
    "ScenarioError": "errors",
    "TopSpeed": "results.top_speed",
    "best_gearing": "study.gearing",
    "build_info": "_core",
    "coast_down_fit": "study.coast_down_fit",
    "driven_gains": "study.driven_gains",
    "explore": "sliders",
    "load": "api",
    "loads": "api",
    "rank": "study.rank",
    "schema": "scenario.schema",
    "si": "quantities.si",
    "sweep": "study.sweep",
}
_MODULES = {"physics": "physics", "plot": "report.plots"}


def _load_report() -> None:
    import windwall.report  # noqa: F401


makers.append(_load_report)


def __getattr__(name: str) -> object:
    from importlib import import_module

    found: object
    if name in _MODULES:
        found = import_module(f"windwall.{_MODULES[name]}")
    elif name in _HOMES:
        found = getattr(import_module(f"windwall.{_HOMES[name]}"), name)
    elif name == "__version__":
        found = import_module("windwall._core").build_info()["windwall"]
    else:
        raise AttributeError(f"module 'windwall' has no attribute {name!r}")
    globals()[name] = found
    return found


def __dir__() -> list[str]:
    return sorted({*__all__, *(name for name in globals() if name.startswith("__"))})
