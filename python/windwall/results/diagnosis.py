"""What was seen beside what the model says, and what would explain a difference."""

from __future__ import annotations

from functools import cache
from math import hypot
from typing import Any, NamedTuple

from windwall import _core
from windwall.quantities.measures import Measure
from windwall.quantities.uncertain_input import UncertainInput
from windwall.results.gearing import Longer
from windwall.results.scenario_info import RatedFigure
from windwall.results.situation import Alone, Apart, Situation
from windwall.results.values import Values

__all__ = [
    "APART", "CHALLENGED", "FAR_OFF", "MISREAD", "OCTANE", "OF_THE_PULL", "READINGS", "RESULTS",
    "SETTINGS", "Compared", "Diagnosis", "Explained", "Explanation", "Fact", "FirstGain", "Reached",
    "Spoiled", "deepest", "heard_tells", "listened_for_knock",
]  # fmt: skip

CHALLENGED = 1  # standard deviations, beyond which an explanation is looked for
FAR_OFF = 2  # likewise, beyond which the model is worth less
# Where an answer has the number that an observation names.
RESULTS = {
    "gear": "road/gear",
    "engine_speed": "engine/speed",
    "boost": "manifold/boost",
    "charge_temperature": "manifold/temperature",
    "inlet_depression": "charge_path/{}/inlet_depression",
    "head_temperature": "engine/head_temperature",
    "exhaust_temperature": "engine/exhaust_gas_temperature",
    "lambda": "engine/lambda",
    "knock": "knock/margin",
    "retard": "knock/retard",
}
SETTINGS = {"retard"}  # what a driver chose: shown beside the model's own, and no evidence
OF_THE_PULL = {"speed", "gear", "engine_speed"}  # of a top speed: where the model's own pull ends
# What is observed of a doing that is no full throttle at one engine speed.
APART = {
    "held speed": "fuel_used",
    "standing start": "time",
    "coast-down": "coasting",
    "nozzle into a jar": "caught",
}
READINGS, MISREAD = "observed", "What was read"  # instead of an input that is wrong
OCTANE = Measure("plain number", "")


@cache
def _measure(key: str) -> Measure:
    if key == "coasting":  # the time of the whole
        return _measure("time")
    return Measure.of_row(_core.observed_rows()["rows"][key])


def listened_for_knock(entry: dict[str, Any]) -> bool:
    return entry["knock"] != "not listened for"


def heard_tells(entry: dict[str, Any], spark_is_chosen: bool) -> bool:
    """Whether what was heard of knock says anything: not without the spark that was driven."""
    return listened_for_knock(entry) and (entry["retard"] is not None or not spark_is_chosen)


class Fact(NamedTuple):
    """One thing that was observed: SI, or the word for what was heard of knock."""

    entry: dict[str, Any]
    key: str
    observed: float | str
    sigma: float | None

    @property
    def at_top_speed(self) -> bool:
        return self.entry["what"] == "top speed"

    @property
    def situation(self) -> Situation:
        """Equal for facts that one answer serves: the spark that was driven, and for all but the
        end of a pull the engine speed, read or by speed and gear.
        """
        if self.apart:
            return Situation(apart=self._apart())
        engine_speed, gear, speed = map(self._driven, ("engine_speed", "gear", "speed"))
        retard = None if self.key in SETTINGS else self._driven("retard")
        if self.at_top_speed and self.key in OF_THE_PULL:
            return Situation(retard)
        if engine_speed is not None:
            return Situation(retard, engine_speed, None, speed)
        return Situation(retard) if None in (gear, speed) else Situation(retard, None, gear, speed)

    @property
    def apart(self) -> bool:
        """Whether it was seen where no engine speed was held."""
        return APART.get(self.entry["what"]) == self.key

    def _apart(self) -> Apart:
        told = {key: self._driven(key) for key in ("speed", "gear", "distance", "time", "pressure")}
        if self.key == "time":
            told["time"] = None  # is what is asked
        table = self.entry["coasting"]
        rows = tuple(zip(table["time"], table["speed"], strict=True)) if table else ()
        back = self.entry["way"] == "back"
        return Apart(self.key, **told, part=self.entry["part"], back=back, coasting=rows)

    def _driven(self, key: str) -> float | None:
        stated = self.entry.get(key)
        return stated[0] if stated else None

    @property
    def retard_sigma(self) -> float:
        """rad, to which the spark that was driven is known."""
        stated = None if self.key in SETTINGS else self.entry.get("retard")
        return (stated[1] or 0.0) if stated else 0.0

    @property
    def measure(self) -> Measure:
        return OCTANE if self.key == "knock" else _measure(self.key)

    def above(self, model: float) -> float:
        """By how much the model's number lies above what was seen. Knock heard means a margin of
        zero or less, knock not heard one of zero or more, knock at the edge none at all.
        """
        if not isinstance(self.observed, str):
            return model - self.observed
        heard = {"heard": max(model, 0.0), "not heard": min(model, 0.0)}
        return heard.get(self.observed, model)

    def model(self, answer: Values | Alone | None) -> float | None:
        """The same number of an answer."""
        if answer is None or not answer.answered:
            return None
        if isinstance(answer, Alone):
            return answer.value
        if self.key == "speed":
            return answer.goal_speed
        if self.key == "inlet_depression":
            return deepest(answer)[1]
        if RESULTS[self.key].startswith("knock/") and answer.point.knock is None:
            return None
        return answer.point[RESULTS[self.key]]


def deepest(answer: Values) -> tuple[str | None, float | None]:
    """The part whose inlet is drawn deepest, and how deep, Pa; None where nothing blows."""
    parts = (
        (name, part.get("inlet_depression")) for name, part in answer.point.charge_path.items()
    )
    drawn = [(deep, name) for name, deep in parts if deep is not None]
    return max(drawn)[::-1] if drawn else (None, None)


class Compared(NamedTuple):
    """One observed fact beside the model's. SI; knock is a word beside a margin."""

    fact: Fact
    model: float
    model_sigma: float  # of the model's number: by where the engine knocks and what spark it had
    engine_speed: float | None = None  # rad/s, at which the model was held for it

    @property
    def key(self) -> str:
        return self.fact.key

    @property
    def observed(self) -> float | str:
        return self.fact.observed

    @property
    def sigma(self) -> float | None:
        """One standard deviation of what was observed; None where it is not stated."""
        return self.fact.sigma

    @property
    def measure(self) -> Measure:
        return self.fact.measure

    @property
    def off(self) -> float | None:
        """How many standard deviations the model lies above, those of the observation and of the
        knock anchor taken together.
        """
        if self.key in SETTINGS or (self.sigma is None and self.key != "knock"):
            return None
        return self.fact.above(self.model) / self.spread if self.spread else None

    @property
    def spread(self) -> float:
        """One standard deviation of the observation and of the knock anchor together."""
        return hypot(self.sigma or 0.0, self.model_sigma)

    def far_by(self, gap: float) -> bool:
        """Whether a model with that gap to the observation would be far off."""
        return abs(gap) > FAR_OFF * self.spread

    @property
    def far(self) -> bool:
        return self.off is not None and abs(self.off) > FAR_OFF

    @property
    def challenged(self) -> bool:
        """Whether it contradicts the model by enough to ask what would explain it."""
        return self.off is not None and abs(self.off) > CHALLENGED


class Spoiled(NamedTuple):
    """A fact that agrees with the model, and no longer does with an input moved."""

    fact: Fact
    off: float  # standard deviations


class Explanation(NamedTuple):
    """An input and how many of its standard deviations it has to be moved."""

    input: UncertainInput
    deviations: float
    gains: tuple[float | None, ...] = ()  # of the first upgrades alone with it moved there, m/s
    speeds: dict[str, float | None] = {}  # noqa: RUF012  # of the sets a ranking names, likewise
    rated: tuple[RatedFigure, ...] = ()  # what the stock engine then has of them
    spoils: tuple[Spoiled, ...] = ()

    @property
    def value(self) -> float:
        """What it would have to be, SI."""
        return self.input.value + self.deviations * self.input.sigma

    @property
    def is_misread(self) -> bool:
        """Whether the model stays as it is, and what was seen was read wrong."""
        return self.input.address.startswith(READINGS + "/")


class Explained(NamedTuple):
    """A fact that contradicts the model, and the inputs of which each would explain it."""

    compared: Compared
    inputs: list[Explanation]

    def least_first(self) -> Explained:
        """By how many standard deviations each has to be moved."""
        return self._replace(inputs=sorted(self.inputs, key=lambda one: abs(one.deviations)))


class FirstGain(NamedTuple):
    """One of the upgrades that gain most alone: with the value that it chose, and m/s."""

    label: str
    gain: float


class Reached(NamedTuple):
    """Of vehicles described like one, those that reach its goal with a set, by what a ranking calls
    that.
    """

    which: str
    chance: float
    worlds: int
    middle: float  # m/s, that half of them reach


class Diagnosis(NamedTuple):
    """The model held against everything that was observed."""

    compared: tuple[Compared, ...]
    explained: tuple[Explained, ...]  # of those that are challenged
    first: tuple[FirstGain, ...] = ()  # of a ranking; each explanation has the same ones' gains
    reached: tuple[Reached, ...] = ()  # of a ranking with a goal
    longer: Longer | None = None  # of a ranking whose fastest set the rev limit keeps from the goal
