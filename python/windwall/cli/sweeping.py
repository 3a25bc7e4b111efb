"""`windwall sweep`: top speeds over a grid of inputs."""

from __future__ import annotations

import argparse
import json
import os
from math import isnan
from pathlib import Path
from typing import Any

from windwall.cli.solvers import add_solvers, solvers
from windwall.errors import Problem, ScenarioError
from windwall.quantities.measures import Measure
from windwall.report.text_layout import as_text, table
from windwall.results.answer import answer_rows
from windwall.results.record import result_row
from windwall.scenario import files
from windwall.scenario.data import ScenarioData

__all__ = ["FORMATS", "Swept", "Written", "add_grid", "sweep_grid"]

FORMATS = (".zarr", ".nc")


class Swept:
    """Top speeds over a grid of inputs, one row for each variant."""

    def __init__(self, scenario: ScenarioData, found: Any) -> None:
        self.system, self.scenario, self.found = scenario.system, scenario, found
        self.answered = True

    def to_dict(self) -> dict[str, Any]:
        rows = json.loads(self._rows().to_json(orient="records"))
        units = {name: one.attrs.get("units", "") for name, one in self.found.variables.items()}
        return {"variants": rows, "units": units}

    def _rows(self) -> Any:
        return self.found.to_dataframe().reset_index()

    def summary(self) -> str:
        frame, system = self._rows(), self.system
        measures = [self._measure(name) for name in frame.columns]
        heads = [
            f"{name}, {measure.shown(system)}".rstrip(", ") if measure else name
            for name, measure in zip(frame.columns, measures, strict=True)
        ]
        rows = (zip(row, measures, strict=True) for row in frame.itertuples(index=False))
        cells = [[_cell(value, measure, system) for value, measure in row] for row in rows]
        return as_text([self.found.attrs["title"], "", *table(cells, left=(), head=heads)])

    def _measure(self, name: str) -> Measure | None:
        """What a column measures; None of a word."""
        address = self.found[name].attrs.get("address", name)
        if name in self.found.coords:
            return self.scenario.measure(address)
        row = answer_rows("sweep").get(name) or result_row(address) if name != "status" else None
        return Measure.of_row(row) if row else None


def _cell(value: Any, measure: Measure | None, system: str) -> str:
    if measure is None or isinstance(value, str):
        return str(value)
    return "-" if isnan(value) else measure.number(value, system, 5)


class Written:
    """A sweep in a file."""

    answered = True

    def __init__(self, found: Any, path: str) -> None:
        self.variants, self.path = int(found["speed"].size), path

    def to_dict(self) -> dict[str, Any]:
        return {"variants": self.variants, "written": self.path}

    def summary(self) -> str:
        return f"{self.variants} variants written to {files.shown(self.path)}"


def sweep_grid(scenario: ScenarioData, arguments: argparse.Namespace) -> Swept | Written:
    """Sweeps, prints or writes."""
    from windwall.study.sweep import sweep

    grid = {address: values for address, *values in arguments.vary}
    output, suffix = arguments.output, _suffix(arguments.output)
    with solvers(arguments) as means:
        to = output if suffix == ".zarr" else None
        found = sweep(scenario, grid, arguments.read, to=to, **means)
    if output is None:
        return Swept(scenario, found)
    if suffix == ".nc":
        _write(found, output)
    return Written(found, output)


def _suffix(output: str | None) -> str:
    suffix = Path(output or "").suffix.lower()
    if output is not None and suffix not in FORMATS:
        said = f"a sweep is written as {' or '.join(FORMATS)}, by the end of its name"
        raise ScenarioError([Problem(files.shown(output), 0, 0, said)], "sweep")
    return suffix


def _write(found: Any, output: str) -> None:
    """A file that is there is replaced once the new one is whole."""
    half = f"{output}.half"
    try:
        found.to_netcdf(half, engine="scipy")
        os.replace(half, output)
    finally:
        Path(half).unlink(missing_ok=True)


def add_grid(made: argparse.ArgumentParser) -> None:
    """What is varied and read, who solves it, and where it goes."""
    made.add_argument(
        "--vary",
        nargs="+",
        action="append",
        required=True,
        metavar=("ADDRESS", "VALUE"),
        help='an input and its values, such as body/mass "330 kg" "350 kg"; any number of times',
    )
    made.add_argument(
        "--read", nargs="+", default=[], metavar="RESULT", help="results to read beside the speed"
    )
    made.add_argument(
        "-o", "--output", metavar="NEW", help="write it; its name ends in zarr, for any size, or nc"
    )
    add_solvers(made)
