"""What is typed about learning: `windwall learn`."""

from __future__ import annotations

import argparse
from collections.abc import Callable
from typing import TYPE_CHECKING, Any

from windwall.scenario.data import ScenarioData

if TYPE_CHECKING:
    from windwall.results.posterior import Posterior

__all__ = ["Learned", "add_learning", "learn", "told_by"]


class Learned:
    """What was learned, and where the scenario that has learned it was written."""

    answered = True

    def __init__(self, posterior: Posterior, scenario: ScenarioData | None, path: str) -> None:
        self.posterior, self.scenario, self.path = posterior, scenario, path

    def to_dict(self) -> dict[str, Any]:
        made = self.posterior.to_dict()
        if self.scenario is None:
            return made
        return made | {"written": {"file": self.path, "digest": self.scenario.digest}}

    def summary(self) -> str:
        text = self.posterior.summary()
        return text if self.scenario is None else f"{text}\n\nWritten to {self.path}."


def learn(scenario: ScenarioData, arguments: argparse.Namespace) -> Learned:
    """From the logs that are named, else from what the file has observed."""
    from windwall.study.calibrate import calibrate  # only where it is asked
    from windwall.study.learned import learned

    posterior = calibrate(scenario, told_by(scenario, arguments.logs))
    if arguments.output is None:
        return Learned(posterior, None, "")
    made = learned(scenario, posterior)
    made.save(arguments.output)
    return Learned(posterior, made, arguments.output)


def told_by(scenario: ScenarioData, logs: list[str]) -> list[dict[str, Any]] | None:
    """The facts of logs; None where none is named."""
    if not logs:
        return None
    from windwall.logs.against import read_against  # only where there is a log to read

    read = (read_against(scenario, path) for path in logs)
    return [fact._asdict() for log in read for fact in log.facts]


def add_learning(commands: Any, add_question: Callable[..., argparse.ArgumentParser]) -> None:
    """The question, what it learns from, and where to."""
    says = "what the vehicle must be like, as it was seen"
    learning = add_question(commands, "learn", learn, says)
    learning.add_argument(
        "logs", nargs="*", metavar="LOG", help="logs of pulls; else what the file has observed"
    )
    learning.add_argument(
        "-o", "--output", metavar="NEW", help="where to write the scenario that has learned"
    )
