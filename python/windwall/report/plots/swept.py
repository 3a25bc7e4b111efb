"""A sweep read as pictures need it: axes in shown units, what is refused, words for both."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any, NamedTuple

from windwall.quantities.measures import SPEED, Measure
from windwall.report.plot_axes import human, title
from windwall.results.answer import answer_rows
from windwall.results.record import result_row
from windwall.scenario.titles import titles

if TYPE_CHECKING:
    import xarray

__all__ = [
    "HEADINGS", "NO_ANSWER", "PASSES", "PATH", "Axis", "Swept", "capital", "edges", "heading",
    "limit_names",
]  # fmt: skip

PATH = "charge_path/"  # stands before too many names to say anything
NO_ANSWER = "no answer"
PASSES = "passes a limit: {names}"
HEADINGS = {"speed": "Speed", "balance_speed": "Balance speed"}


class Axis(NamedTuple):
    """Values in the unit shown, and what they are."""

    values: Any
    short: str
    unit: str  # empty for a plain number

    @property
    def name(self) -> str:
        """As an axis has it."""
        return f"{capital(self.short)}, {self.unit}".rstrip(", ")


class Swept:
    """What is drawn of a sweep: one result over its one or two inputs."""

    def __init__(self, dataset: xarray.Dataset, of: str = "speed") -> None:
        self.dataset, self.of = dataset, of
        self.system = dataset.attrs.get("system", "metric")
        self.title = dataset.attrs.get("title", "")
        self.dims = [str(dim) for dim in dataset[of].dims if dataset.sizes[dim] > 1] or [
            str(dataset[of].dims[0])
        ]
        self.still = [str(dim) for dim in dataset[of].dims if str(dim) not in self.dims]

    def grid(self, name: str) -> Any:
        """A variable over the dims that vary, in their order."""
        one = self.dataset[name].isel(dict.fromkeys(self.still, 0))
        return one.transpose(*self.dims).values

    def axis(self, dim: str) -> Axis:
        """An input, with a name that people read."""
        found = self.dataset[dim]
        address = found.attrs.get("address", dim)
        short = titles([address])[address].replace(": ", " ")
        if "dimension" not in found.attrs:
            unit = found.attrs.get("units", "")
            return Axis(found.values, short, "" if unit == "1" else unit)
        measure = Measure(found.attrs["dimension"], found.attrs["shown_as"])
        return Axis(measure.values(found.values, self.system), short, measure.shown(self.system))

    @property
    def values(self) -> Any:
        return self.measure.values(self.grid(self.of).astype(float), self.system)

    @property
    def measure(self) -> Measure:
        """What the result measures."""
        address = self.dataset[self.of].attrs.get("address", self.of)
        row = answer_rows("sweep").get(address) or result_row(address)
        return Measure.of_row(row) if row else SPEED

    @property
    def name(self) -> str:
        """The result, with its unit."""
        address = self.dataset[self.of].attrs.get("address", "")
        said = HEADINGS.get(self.of) or human(address.replace("/", " ")) or human(self.of)
        return f"{capital(said)}, {self.measure.shown(self.system)}".rstrip(", ")

    @property
    def unanswered(self) -> Any:
        """Where there is none."""
        import numpy as np

        return np.isnan(self.grid(self.of).astype(float))

    @property
    def passed(self) -> Any:
        """The addresses of the limits that each variant passes, a text; None if nobody asked."""
        return self.grid("passed") if "passed" in self.dataset else None

    def refused(self) -> list[tuple[str, Any]]:
        """What is refused, worded, and where: no answer first, then every limit that is passed."""
        found = [(NO_ANSWER, self.unanswered)] if self.unanswered.any() else []
        if self.passed is not None and (beyond := self.passed != "").any():
            found.append((PASSES.format(names=limit_names(self.passed)), beyond))
        return found


def limit_names(passed: Any) -> str:
    """The limits that are passed anywhere, as people call them."""
    addresses = dict.fromkeys(line for text in passed.ravel() for line in str(text).splitlines())
    return ", ".join(human(one.removeprefix(PATH).replace("/", " ")) for one in addresses)


def heading(swept: Swept) -> str:
    """`Speed over blower drive ratio and body mass`."""
    inputs = " and ".join(swept.axis(dim).short for dim in swept.dims)
    result = swept.name.partition(",")[0]
    return title(f"{result} over {inputs}", swept.title)


def capital(text: str) -> str:
    return text[:1].upper() + text[1:]


def edges(values: Any) -> Any:
    """Where one value's cell ends and the next one's begins: half way between them."""
    import numpy as np

    if len(values) < 2:
        half = abs(values[0]) / 20 or 1.0
        return np.array([values[0] - half, values[0] + half])
    middle = (values[1:] + values[:-1]) / 2
    return np.concatenate([[2 * values[0] - middle[0]], middle, [2 * values[-1] - middle[-1]]])
