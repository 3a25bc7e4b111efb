"""What another day makes of a run, in sentences."""

from __future__ import annotations

from windwall.quantities.measures import KILOWATTS, PRESSURE, SPEED, TEMPERATURE
from windwall.results.day import Corrected, Factor, Forecast, Weather
from windwall.results.views import sentence, sentences

__all__ = [
    "AS_WARM", "BLOWN", "EXPECTED", "FACTOR", "INVALID", "LATE", "LIMITS", "NAMES", "NONE",
    "NOT_READ", "NOWHERE", "NO_DRAG", "POWER", "RANGE", "SAME", "SPEEDS", "VALID", "air", "change",
    "corrected_sentence", "corrected_sentences", "forecast_sentence", "power",
]  # fmt: skip

EXPECTED = "{seen} on the first day would have been {expected} on the second, by the model's ratio."
SPEEDS = "The model goes {before} on the first day and {after} on the second, {change}."
POWER = "Its most power at full throttle changes by {model}."
FACTOR = "By {name} it would change by {change}{limits}."
NAMES = {"j1349": "SAE J1349", "iso1585": "ISO 1585", "din70020": "DIN 70020 (withdrawn)"}
INVALID = ", outside the 0.93 to 1.07 that the standard takes its own factor for"
VALID = ", within the 0.93 to 1.07 that the standard takes its own factor for"
NOT_READ = "; within which limits its standard takes it was not read"
LIMITS = {None: NOT_READ, True: VALID, False: INVALID}
NO_DRAG = (
    "The factors are of power alone: the air that feeds the engine also drags, so that no speed "
    "follows from them."
)
AS_WARM = (
    "They are for an engine that is as warm on both days; here head and oil follow the air, and "
    "cold oil drags."
)
BLOWN = (
    "They know the air in front of the engine and no blower: neither its power, nor how hot it "
    "makes the charge, nor that a throttle, a bypass or a cooler answers to the day."
)
LATE = (
    "On {which} the spark is late for fear of knock, which changes with the charge from day to "
    "day; a factor holds for a spark that stays."
)
NONE = "There is no answer on the {which} day: {status}."
RANGE = "From {low} at {low_day} to {high} at {high_day}: what the day alone does to this vehicle."
NOWHERE = "It has no answer on any of these days."
SAME = 5e-4


@sentence.register(Corrected)
def corrected_sentence(found: Corrected) -> str:
    """The speed on the other day."""
    for which, day in (("first", found.before), ("second", found.after)):
        if day.speed is None:
            return NONE.format(which=which, status=day.status.replace("_", " "))
    if found.observed is not None:
        seen, expected = (SPEED.text(x, found.system, 4) for x in (found.observed, found.expected))
        return EXPECTED.format(seen=seen, expected=expected)
    return _speeds(found)


@sentences.register(Corrected)
def corrected_sentences(found: Corrected) -> list[str]:
    """The power, and the published factors with their limits."""
    if not found.answered:
        return []
    made = [_speeds(found)] if found.observed is not None else []
    if found.power_ratio is not None:
        made.append(POWER.format(model=change(found.power_ratio)))
    made += [_factor(one) for one in found.factors] + [NO_DRAG, AS_WARM]
    if found.blown:
        made.append(BLOWN)
    return made + _late(found)


@sentence.register(Forecast)
def forecast_sentence(found: Forecast) -> str:
    """The slowest and the fastest day."""
    known = [
        (found.speed[i, j], _air(found.system, temperature, pressure))
        for i, temperature in enumerate(found.temperatures)
        for j, pressure in enumerate(found.pressures)
        if found.speed[i, j] == found.speed[i, j]
    ]
    if not known:
        return NOWHERE
    low, high = min(known), max(known)
    return RANGE.format(
        low=SPEED.text(low[0], found.system, 4),
        low_day=low[1],
        high=SPEED.text(high[0], found.system, 4),
        high_day=high[1],
    )


def change(ratio: float) -> str:
    """A ratio as a change in per cent."""
    return "nothing" if abs(ratio - 1) < SAME else f"{100 * (ratio - 1):+z.1f} %"


def air(weather: Weather, system: str) -> str:
    """The air of a day in a few words."""
    return _air(system, weather.temperature, weather.pressure)


def power(value: float, system: str) -> str:
    """At the flywheel."""
    return KILOWATTS.text(value, system, 4)


def _air(system: str, temperature: float, pressure: float) -> str:
    return f"{TEMPERATURE.short(temperature, system)}, {PRESSURE.short(pressure, system)}"


def _speeds(found: Corrected) -> str:
    before, after = (SPEED.text(one.speed, found.system, 4) for one in (found.before, found.after))
    return SPEEDS.format(before=before, after=after, change=change(found.speed_ratio))


def _factor(one: Factor) -> str:
    return FACTOR.format(
        name=NAMES[one.name], change=change(one.power_ratio), limits=LIMITS[one.valid]
    )


def _late(found: Corrected) -> list[str]:
    if not found.late_spark:
        return []
    days = (("the first day", found.before), ("the second day", found.after))
    late = [name for name, day in days if (day.retard or 0.0) > 1e-3]
    return [LATE.format(which="both days" if len(late) > 1 else late[0])]
