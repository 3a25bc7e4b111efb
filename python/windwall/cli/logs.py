"""What is typed about logs: `windwall logs`."""

from __future__ import annotations

import argparse
from typing import TYPE_CHECKING

from windwall.scenario import files
from windwall.scenario.data import ScenarioData

if TYPE_CHECKING:
    from windwall.results.log import ReadLog

__all__ = ["add_log", "logs"]


def add_log(reading: argparse.ArgumentParser) -> None:
    """Which log, and what its columns are."""
    reading.add_argument(
        "log", metavar="LOG", help="a text with a row for each moment, such as CSV"
    )
    reading.add_argument(
        "--mapping", metavar="FILE", help="what its columns are; else LOG.mapping.json beside it"
    )
    reading.add_argument(
        "--write-mapping", metavar="FILE", help="writes what its columns were taken for"
    )


def logs(scenario: ScenarioData, arguments: argparse.Namespace) -> ReadLog:
    from windwall.logs.against import read_against  # only where it is asked

    found = read_against(scenario, arguments.log, arguments.mapping)
    if arguments.write_mapping:
        files.write(arguments.write_mapping, found.mapping, over=False)
    return found
