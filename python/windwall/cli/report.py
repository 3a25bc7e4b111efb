"""A page that can be sent: `windwall report`."""

from __future__ import annotations

import argparse
import errno
import os
from pathlib import Path
from typing import Any

from windwall.cli.counts import draws
from windwall.errors import Problem, ScenarioError
from windwall.scenario import files
from windwall.scenario.data import ScenarioData

__all__ = ["Reported", "add_report", "default_name"]


class Reported:
    """A page in a file."""

    def __init__(self, scenario: ScenarioData, arguments: argparse.Namespace) -> None:
        import matplotlib as mpl

        from windwall.report.page import write_page  # only where it is asked

        mpl.use("Agg")
        self.output = arguments.output or default_name(arguments.file)
        if not Path(self.output).absolute().parent.is_dir():  # said before the long part
            raise FileNotFoundError(errno.ENOENT, os.strerror(errno.ENOENT), self.output)
        self.answered = write_page(
            scenario, self.output, draws=arguments.draws, budget=arguments.budget
        )

    def to_dict(self) -> dict[str, Any]:
        return {"report": self.output}

    def summary(self) -> str:
        without = "" if self.answered else "; the vehicle has no answer, and the page says why"
        return f"written to {files.shown(self.output)}{without}"


def default_name(file: str) -> str:
    """`car.html` of `folder/car.json`, where one is; a page that is there is not written over."""
    page = f"{Path(file).stem if file != '-' else 'page'}.html"
    if Path(page).exists():
        message = "this page is there already; say -o to write over it, or to name another"
        raise ScenarioError([Problem("", 0, 0, message)], files.shown(page))
    return page


def add_report(question: argparse.ArgumentParser) -> None:
    """Where it goes, and whether it says how sure the ranking is."""
    question.add_argument(
        "-o",
        "--output",
        metavar="PAGE",
        help="its name; else that of the file with .html behind it, in the folder you are in",
    )
    question.add_argument(
        "--draws",
        type=draws,
        default=0,
        metavar="N",
        help="how sure the ranking is: in so many worlds, a power of two such as 256",
    )
