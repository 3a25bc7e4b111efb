"""Where the watts go."""

from __future__ import annotations

from windwall.results.entry import Use
from windwall.results.scenario_info import ScenarioInfo
from windwall.results.views import Readable

__all__ = ["Account"]


class Account(Readable):
    """The total first, then what it is made of: what for, in which part, how many watts."""

    def __init__(self, name: str, entries: tuple[Use, ...], info: ScenarioInfo) -> None:
        self.name = name
        self.entries = entries
        self.scenario_info = info
