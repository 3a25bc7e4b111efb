"""What is to be moved and what is to be shown: checked as a file is, all problems at once."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping
from typing import Any

from windwall import _core
from windwall.errors import Problem, ScenarioError
from windwall.quantities.si import accepted, si
from windwall.report.live.chosen import sliders
from windwall.report.live.slider import Slider
from windwall.scenario.data import ScenarioData

__all__ = ["MOVED", "NO_NUMBER", "RANGE", "SHOWN", "STUCK", "Moved", "moved", "shown"]

MOVED = 'a list of addresses, ["body/mass"], or {"body/mass": ("300 kg", "400 kg")} is expected'
RANGE = 'a range is two values, ("300 kg", "400 kg"), not {found!r}'
STUCK = "it can be moved nowhere between these: {low} to {high}"
NO_NUMBER = "only a number that the file states or has a usual value for can be moved"
SHOWN = 'a list of result addresses, ["manifold/boost"], is expected, not {found!r}'
Moved = Mapping[str, tuple[Any, Any] | None] | Iterable[str] | None


def moved(scenario: ScenarioData, inputs: Moved) -> list[Slider]:
    """A slider for each address; the usual ones where none are named. Raises `ScenarioError`."""
    if inputs is None:
        return sliders(scenario)
    if isinstance(inputs, (str, bytes)) or not isinstance(inputs, Iterable):
        raise ScenarioError([Problem("explore", 0, 0, f"{inputs!r}: {MOVED}")], scenario.source)
    spans = inputs if isinstance(inputs, Mapping) else dict.fromkeys(inputs)
    asked = [(one, lambda one=one, span=span: _checked(scenario, one, span))
             for one, span in spans.items()]  # fmt: skip
    _all_or_none(scenario, asked)
    return sliders(scenario, spans)


def _checked(scenario: ScenarioData, address: Any, span: Any) -> Iterator[Problem]:
    """What is wrong with one of them."""
    if not isinstance(address, str):
        yield Problem(repr(address), 0, 0, MOVED)
    elif span is not None and not _is_pair(span):
        yield Problem(address, 0, 0, RANGE.format(found=span))
    elif not isinstance(scenario.get(address), float):
        yield Problem(address, 0, 0, NO_NUMBER)
    else:
        ends = [_number(scenario, address, end) for end in span or ()]
        nowhere = span is not None and ends[0] == ends[1]
        if nowhere or not sliders(scenario, {address: span}):
            low, high = span or (scenario.readable(address),) * 2
            yield Problem(address, 0, 0, STUCK.format(low=low, high=high))


def _number(scenario: ScenarioData, address: str, end: Any) -> float:
    """An end of a range, SI, as a file would have it."""
    taken = accepted(end, scenario.measure(address).si)
    return scenario.set({address: taken if isinstance(taken, str) else si(taken)}).get(address)


def _is_pair(span: Any) -> bool:
    return isinstance(span, (tuple, list)) and len(span) == 2


def shown(scenario: ScenarioData, results: Iterable[str]) -> list[str]:
    """The addresses of results that are told beside the speed. Raises `ScenarioError`."""
    if isinstance(results, (str, bytes)) or not isinstance(results, Iterable):
        problem = Problem("show", 0, 0, SHOWN.format(found=results))
        raise ScenarioError([problem], scenario.source)
    asked = list(results)
    checks = [(one, lambda one=one: _readable(scenario, one)) for one in asked]
    _all_or_none(scenario, checks)
    return list(dict.fromkeys(asked))


def _readable(scenario: ScenarioData, address: Any) -> Iterator[Problem]:
    """The core knows the results of a vehicle, and which was probably meant."""
    if not isinstance(address, str):
        yield Problem(repr(address), 0, 0, SHOWN.format(found=address))
    else:
        _core.sweep(scenario.core, ["body/mass"], [[scenario.get("body/mass")]], [address], 0, None)


def _all_or_none(
    scenario: ScenarioData, checks: list[tuple[Any, Callable[..., Iterator[Problem]]]]
) -> None:
    problems: list[Problem] = []
    for address, check in checks:
        try:
            problems += check()
        except ScenarioError as wrong:
            problems += wrong.problems
        except (TypeError, ValueError) as wrong:
            problems.append(Problem(str(address), 0, 0, str(wrong)))
    if problems:
        raise ScenarioError(problems, scenario.source)
