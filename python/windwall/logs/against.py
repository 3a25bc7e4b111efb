"""A log held against a scenario: read, mapped, cut into pulls, made facts."""

from __future__ import annotations

import os

from windwall.logs import decoding, read
from windwall.logs.channels import channels
from windwall.logs.facts import facts
from windwall.logs.gears import gears_of
from windwall.logs.mapping import Mapping, read_mapping
from windwall.logs.proposing import propose
from windwall.logs.pulls import pulls
from windwall.results.log import Proposed, ReadLog
from windwall.scenario import files
from windwall.scenario.data import ScenarioData
from windwall.scenario.info import scenario_info

__all__ = ["BESIDE", "mapping_beside", "of_bytes", "read_against"]

BESIDE = ".mapping.json"


def mapping_beside(path: str | os.PathLike[str]) -> str | None:
    """The mapping that lies beside a log: `run.csv` has `run.mapping.json`."""
    found = os.path.splitext(os.fspath(path))[0] + BESIDE
    return found if os.path.exists(found) else None


def read_against(
    scenario: ScenarioData,
    path: str | os.PathLike[str],
    mapping: str | os.PathLike[str] | None = None,
) -> ReadLog:
    """A log with its pulls and facts. `mapping` is the file that says what its columns are; else
    the one that lies beside the log, or what is proposed. Raises `ScenarioError`.
    """
    wanted = mapping or mapping_beside(path)
    content = decoding.read_bytes(path)
    stated = None
    if wanted is not None:
        stated = read_mapping(files.read(wanted), scenario, files.shown(wanted))
    return of_bytes(scenario, content, files.shown(path), stated)


def of_bytes(
    scenario: ScenarioData, content: bytes, source: str = "log", stated: Mapping | None = None
) -> ReadLog:
    """The same from the bytes of a log."""
    log = read.parse(content, source, stated.stated if stated else None)
    if stated is None:
        mapping, proposed = propose(log, scenario)
    else:
        mapping = stated
        proposed = tuple(Proposed(m.column, m.address, m.unit, (m.why,)) for m in stated.columns)
    found, silent = channels(log, mapping, scenario)
    log = log._replace(mended=(*log.mended, *silent))
    gears = gears_of(scenario)
    cut, left_out = pulls(log, found, gears, mapping, scenario)
    told = facts(log, found, cut, gears, scenario)
    info = scenario_info(scenario)
    return ReadLog(log, mapping.text(), proposed, cut, left_out, told, info)
