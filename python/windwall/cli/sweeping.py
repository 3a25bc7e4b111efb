"""What is tabulated over a grid: `windwall sweep`."""

from __future__ import annotations

import argparse
import json
from math import isnan
from typing import Any

from windwall.quantities.measures import Measure
from windwall.report.text_layout import table
from windwall.results.answer import answer_rows
from windwall.results.record import result_row
from windwall.scenario.data import ScenarioData


class Swept:
    """Top speeds over a grid of inputs, one row for each variant."""

    answered = True

    def __init__(self, scenario: ScenarioData, arguments: argparse.Namespace) -> None:
        from windwall.study.sweep import sweep

        grid = {address: values for address, *values in arguments.vary}
        self.found = sweep(scenario, grid, arguments.read)
        self.system, self.scenario = scenario.system, scenario

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
        return "\n".join([self.found.attrs["title"], "", *table([heads, *cells], left=())])

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


def add_grid(made: argparse.ArgumentParser) -> None:
    """What is varied, and what else is read."""
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
