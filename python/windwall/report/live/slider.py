"""One slider: what it moves, in round steps of the unit that is shown."""

from __future__ import annotations

from math import ceil, floor, log10
from typing import Any, NamedTuple

from windwall.errors import ScenarioError
from windwall.quantities.measures import TEMPERATURE_DIFFERENCE, Measure
from windwall.scenario.data import ScenarioData

__all__ = ["FIVES", "STEPS", "Slider", "furthest", "known_to", "loads", "round_step", "slider"]

STEPS = 100  # at least, over the whole span
FIVES = (5, 2, 1)


class Slider(NamedTuple):
    """An input of the file and where it may be moved to: `base + k * step`, for whole k from `low`
    to `high`, over ten to the power of `decimals`; all of them whole numbers. At k = 0 stands what
    the file says, to its last digit.
    """

    address: str
    label: str
    unit: str  # as shown, and as files state it
    decimals: int
    base: int
    step: int
    low: int
    high: int
    stated: str  # what the file says, as people read it
    hint: str  # how well it is known; empty where it is taken as exact

    def text(self, k: int) -> str:
        """What a file would state after so many steps: `354 kg`."""
        number = self.base + k * self.step
        digits = str(abs(number)).rjust(self.decimals + 1, "0")
        cut = len(digits) - self.decimals
        whole = digits[:cut] + ("." + digits[cut:] if self.decimals else "")
        return f"{'-' if number < 0 else ''}{whole} {self.unit}".rstrip()

    def given(self, k: int) -> str | float:
        """The same as `set` takes it, where what has no unit is a number."""
        return self.text(k) if self.unit else float(self.text(k))

    def nearer(self, share: float) -> Slider:
        """The same with less way to go."""
        return self._replace(low=ceil(self.low * share), high=floor(self.high * share))


def slider(
    scenario: ScenarioData, address: str, label: str, span: tuple[float, float], whole: bool = False
) -> Slider | None:
    """A slider over a span in shown units; None where it could not be moved at all."""
    measure, system = scenario.measure(address), scenario.system
    value = measure.value(scenario.get(address), system)
    step, decimals = (1, 0) if whole else round_step(span[1] - span[0])
    scale = 10**decimals
    base = round(value * scale)
    made = Slider(
        address=address,
        label=label,
        unit=measure.shown(system),
        decimals=decimals,
        base=base,
        step=step,
        low=min(0, ceil((round(span[0] * scale) - base) / step)),
        high=max(0, floor((round(span[1] * scale) - base) / step)),
        stated=measure.short(scenario.get(address), system),
        hint=known_to(scenario, address, measure),
    )
    made = made._replace(
        low=-furthest(scenario, made, -1, -made.low), high=furthest(scenario, made, 1, made.high)
    )
    return made if made.low < made.high else None


def round_step(span: float) -> tuple[int, int]:
    """A step of 1, 2 or 5 times a power of ten, with its decimals: 0.05 is (5, 2)."""
    power = floor(log10(span / STEPS))
    step = next(one for one in FIVES if one * 10.0**power <= span / STEPS * (1 + 1e-9))
    return (step, -power) if power < 0 else (step * 10**power, 0)


def furthest(scenario: ScenarioData, made: Slider, way: int, most: int) -> int:
    """How many steps one way the file may still be loaded with."""
    good, bad = 0, most + 1
    while bad - good > 1:
        tried = most if bad > most else (good + bad) // 2
        good, bad = (tried, bad) if loads(scenario, made, way * tried) else (good, tried)
    return good


def loads(scenario: ScenarioData, made: Slider, k: int) -> bool:
    """Whether a file that states this is a file."""
    try:
        scenario.set({made.address: made.given(k)})
    except ScenarioError:
        return False
    return True


def known_to(scenario: ScenarioData, address: str, measure: Measure) -> str:
    """How well the file knows it: `± 5 kg`."""
    sigma: Any = scenario.sigma(address)
    if not sigma > 0:
        return ""
    spread = TEMPERATURE_DIFFERENCE if measure.dimension == "temperature" else measure
    return f"± {spread.short(sigma, scenario.system, 2).replace('delta_', '')}"
