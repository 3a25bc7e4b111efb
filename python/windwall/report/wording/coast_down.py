"""What coasting down tells of a vehicle, and what it does not."""

from __future__ import annotations

from windwall.quantities.measures import AREA, DENSITY, FORCE, SHARE, SPEED, WIND, Measure
from windwall.results.coast_down import SEPARABLE, CoastDownFit, Estimate
from windwall.results.views import sentence, sentences

__all__ = [
    "ALIASED", "ALIASED_BUT", "ASIDE", "CORRELATED", "LESS_THAN_NOTHING", "ONE_WAY", "PLAIN",
    "REFERENCE", "SCATTER", "SEPARATED", "TOGETHER", "WINDY", "coast_down_sentence",
    "coast_down_sentences", "spread",
]  # fmt: skip

PLAIN = Measure("plain number", "")
SEPARATED = (
    "Drag area {drag}, rolling resistance {rolling}; together they hold the vehicle back by "
    "{force} at {middle}."
)
TOGETHER = (
    "Between {lowest} and {highest} drag and rolling resistance cannot be told apart: the highest "
    "speed has to be {ratio} times the lowest at least. Together they hold the vehicle back by "
    "{force} at {middle}."
)
REFERENCE = (
    "The drag area goes with air of {density}, that of the day; rolling resistance is that of "
    "tyres, bearings and road as they were, with whatever the driveline drags in neutral."
)
ASIDE = "Those who drove there had a headwind of {wind} and a grade of {grade}."
ONE_WAY = (
    "One way only: a grade goes straight into the rolling resistance and a wind into both, so wind "
    "and grade are as stated or as a level road hides them, not measured."
)
CORRELATED = (
    "The two go together by {correlation}: a larger one goes with a smaller other, and the force "
    "is better known than either."
)
ALIASED = "What rolling resistance gains with the square of speed is counted as drag area."
ALIASED_BUT = "Rolling resistance is taken to have risen by {rise} at 100 km/h, as stated."
SCATTER = "One speed lies {scatter} about the fitted run; {memory:.0%} of an error is in the next."
LESS_THAN_NOTHING = "CAUTION: {name} comes out below nothing; the table does not fit this vehicle."
WINDY = "CAUTION: the wind is faster than the lowest speed, where drag changes its sign."


def spread(measure: Measure, one: Estimate, system: str) -> str:
    """A number and its standard deviation, with its unit once."""
    value = measure.value(one.value, system)
    sigma = measure.value(one.sigma, system) - measure.value(0.0, system)
    digits = max(0, 1 - _power(sigma)) if sigma > 0 else 4
    shown = f"{value:.{min(digits, 8)}f} +/- {sigma:.2g}"
    return f"{shown} {measure.shown(system)}".rstrip()


def _power(number: float) -> int:
    """Of ten."""
    return int(f"{number:e}".partition("e")[2])


@sentence.register(CoastDownFit)
def coast_down_sentence(fit: CoastDownFit) -> str:
    """The two numbers, or why there are none."""
    system = fit.system
    said = {
        "force": spread(FORCE, fit.force, system),
        "middle": SPEED.text(fit.middle_speed, system),
    }
    if fit.drag_area is None or fit.rolling_resistance is None:
        low, high = (SPEED.text(speed, system) for speed in fit.speeds)
        return TOGETHER.format(lowest=low, highest=high, ratio=SEPARABLE, **said)
    drag = spread(AREA, fit.drag_area, system)
    return SEPARATED.format(
        drag=drag, rolling=spread(PLAIN, fit.rolling_resistance, system), **said
    )


@sentences.register(CoastDownFit)
def coast_down_sentences(fit: CoastDownFit) -> list[str]:
    """What it holds for, what it leans on and what is wrong with it."""
    system = fit.system
    wind, grade = spread(WIND, fit.headwind, system), spread(SHARE, fit.grade, system)
    said = [REFERENCE.format(density=DENSITY.text(fit.air_density, system, 4))]
    said += [ASIDE.format(wind=wind, grade=grade) if fit.both_ways else ONE_WAY]
    if fit.correlation is not None:
        said.append(CORRELATED.format(correlation=f"{fit.correlation:+z.2f}"))
    rise = SHARE.short(fit.rolling_rise, system)
    said.append(ALIASED_BUT.format(rise=rise) if fit.rolling_rise else ALIASED)
    scatter = WIND.text(fit.scatter, system, 2)
    said.append(SCATTER.format(scatter=scatter, memory=fit.memory))
    return said + _cautions(fit)


def _cautions(fit: CoastDownFit) -> list[str]:
    named = {"the drag area": fit.drag_area, "the rolling resistance": fit.rolling_resistance}
    said = [
        LESS_THAN_NOTHING.format(name=name)
        for name, one in named.items()
        if one is not None and one.value < 0
    ]
    return said + ([WINDY] if abs(fit.headwind.value) > fit.speeds[0] else [])
