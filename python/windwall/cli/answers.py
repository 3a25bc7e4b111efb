"""The questions that the command asks of a scenario, each answered as a text and as a document."""

from __future__ import annotations

import argparse
from typing import Any

from windwall.cli.solvers import solvers
from windwall.errors import NoAnswer
from windwall.report import documents
from windwall.report.text.check import check_text
from windwall.report.text_layout import as_text, paragraph
from windwall.results.diagnosis import Diagnosis
from windwall.results.drawn import DrawnRanking, DrawnSpeed
from windwall.results.driven_ranking import DrivenRanking
from windwall.results.ranking import Chosen, Ranking, label
from windwall.results.top_speed import TopSpeed
from windwall.scenario.data import ScenarioData
from windwall.study.diagnosis import diagnose
from windwall.study.drive import drive
from windwall.study.rank import rank
from windwall.study.smaller_jet import smaller_jets
from windwall.study.solve import top_speed
from windwall.study.standing_start import driven_end

__all__ = [
    "Check", "Diagnosed", "Driven", "Installed", "Speed", "add_outing", "diagnosed", "rank_menu",
]  # fmt: skip


def diagnosed(scenario: ScenarioData, found: TopSpeed | Ranking) -> Diagnosis:
    """What was observed beside the model, with what it makes of a ranking's first gains, and how
    many such vehicles reach the goal with the sets that it judges.
    """
    if not isinstance(found, Ranking):
        return diagnose(scenario)
    from windwall.study.goal_chances import judge  # what draws loads slowly

    return judge(scenario, found)


class Diagnosed:
    """An answer held against what was observed and a driven run, as far as there is an answer."""

    def __init__(
        self,
        found: TopSpeed | Ranking,
        scenario: ScenarioData,
        drawn: DrawnSpeed | DrawnRanking | None = None,
    ) -> None:
        self.found, self.drawn = found, drawn
        self.answered = found.answered
        self.interrupted = getattr(drawn, "interrupted", False)
        self.diagnosis = diagnosed(scenario, found) if found.answered else None
        self.driven = driven_end(scenario) if found.answered else None

    def to_dict(self) -> dict[str, Any]:
        made, driven = self.found.to_dict(self.diagnosis, self.drawn), self.driven
        if isinstance(driven, NoAnswer):
            return made | {"driven": {"sentence": driven.sentence}}
        return made | {"driven": driven and driven.to_dict()}

    def summary(self) -> str:
        return self.found.summary(self.diagnosis, self.drawn, self.driven)


class Installed:
    """An answer of a vehicle that upgrades were fitted to, which says which and how."""

    def __init__(
        self, found: Diagnosed | Driven | DrivenRanking, ids: list[str], values: tuple[Chosen, ...]
    ) -> None:
        self.found, self.answered = found, found.answered
        self.interrupted = getattr(found, "interrupted", False)
        self.ids, self.values = ids, values

    def to_dict(self) -> dict[str, Any]:
        values = [one.to_dict() for one in self.values]
        return {"installed": {"upgrades": self.ids, "chosen": values}} | self.found.to_dict()

    def summary(self) -> str:
        names = ", ".join(label(one, self.values) for one in dict.fromkeys(self.ids))
        return as_text([*paragraph(f"Fitted first: {names}.", ""), self.found.summary()])


class Driven:
    """A drive as an answer; one that was interrupted is printed as far as it came."""

    def __init__(self, scenario: ScenarioData, arguments: argparse.Namespace) -> None:
        self.found = drive(scenario, arguments.outing)
        self.answered, self.interrupted = self.found.answered, self.found.cancelled

    def to_dict(self) -> dict[str, Any]:
        return self.found.to_dict()

    def summary(self) -> str:
        return self.found.text()


def add_outing(question: argparse.ArgumentParser, of: str = "") -> None:
    """Which outing is driven."""
    says = f"{of}its id or title; if several"
    question.add_argument("outing", nargs="?", metavar="OUTING", help=says)


class Speed(Diagnosed):
    """The quick answer, with how sure it is and what smaller jets would make of a spray."""

    def __init__(self, scenario: ScenarioData, _arguments: argparse.Namespace) -> None:
        from windwall.study.speed_draws import draw_speed  # only where it is asked

        found = top_speed(scenario)
        drawn = draw_speed(scenario, progress=False) if found.answered else None
        super().__init__(found, scenario, drawn)
        self.sprays = smaller_jets(scenario, found)

    def to_dict(self) -> dict[str, Any]:
        return super().to_dict() | {"sprays": [one.to_dict() for one in self.sprays]}

    def summary(self) -> str:
        return self.found.summary(self.diagnosis, self.drawn, self.driven, self.sprays)


def rank_menu(scenario: ScenarioData, arguments: argparse.Namespace) -> Diagnosed | DrivenRanking:
    how = {"threads": arguments.threads}
    with solvers(arguments) as means:
        ranking = rank(scenario, arguments.budget, by=arguments.by, **how, **means)
        if isinstance(ranking, DrivenRanking):
            return ranking
        if not arguments.draws or not ranking.complete or not ranking.answered:
            return Diagnosed(ranking, scenario)
        from windwall.study.rank_draws import draw_ranking

        drawn = draw_ranking(scenario, ranking, arguments.draws, **how, **means)
    return Diagnosed(ranking, scenario, drawn)


class Check:
    """A file without problems, as an answer."""

    answered = True

    def __init__(self, scenario: ScenarioData, _arguments: argparse.Namespace) -> None:
        self.scenario = scenario

    def to_dict(self) -> dict[str, Any]:
        return documents.check_document(self.scenario)

    def summary(self) -> str:
        return check_text(self.scenario)
