"""What is typed about the pedal: `windwall hold` and `windwall idle`."""

from __future__ import annotations

import argparse
from typing import Any

from windwall.report.text_layout import as_text
from windwall.results.part_load import PartLoad
from windwall.scenario.data import ScenarioData
from windwall.study import solve

__all__ = ["Held", "add_engine_speed", "add_speeds", "hold", "idle"]


class Held:
    """One answer after the other; answered where all of them are."""

    def __init__(self, found: list[PartLoad]) -> None:
        self.found = found
        self.answered = all(one.answered for one in found)

    def to_dict(self) -> dict[str, Any]:
        made = [one.to_dict() for one in self.found]
        return made[0] if len(made) == 1 else {"held": made}

    def summary(self) -> str:
        from windwall.report.text.part_load import several_text

        if len(self.found) == 1:
            return self.found[0].summary()
        return as_text(several_text(self.found))


def hold(scenario: ScenarioData, arguments: argparse.Namespace) -> Held:
    return Held([solve.hold_speed(scenario, one, arguments.gear) for one in arguments.speeds])


def idle(scenario: ScenarioData, arguments: argparse.Namespace) -> Held:
    return Held([solve.idle(scenario, arguments.engine_speed)])


def add_speeds(holding: argparse.ArgumentParser) -> None:
    """What is held, and how."""
    holding.add_argument("speeds", nargs="+", metavar="SPEED", help='such as "50 km/h"')
    holding.add_argument(
        "--gear", type=int, metavar="N", help="counted from 1; else the highest that can hold it"
    )


def add_engine_speed(idling: argparse.ArgumentParser) -> None:
    idling.add_argument("--engine-speed", metavar="SPEED", help="else the one it idles at")
