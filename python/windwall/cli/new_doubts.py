"""What answers to `windwall new` make together and hardly can: gearing and blower, by their ratios
alone, before anything is solved.
"""

from __future__ import annotations

from collections.abc import Iterator

from windwall import physics
from windwall.cli.new_questions import trial
from windwall.cli.new_readings import Values
from windwall.quantities.measures import ENGINE_SPEED, SPEED
from windwall.scenario.data import ScenarioData

__all__ = [
    "BEYOND", "DISPLACED", "DRIVEN", "GEARBOX", "GEARED", "GEARED_ONCE", "MOST_MOVED", "MUCH_MOVED",
    "NOTHING_REDUCES", "REV_LIMIT", "TOO_SHORT", "doubts", "ratios", "told",
]  # fmt: skip

GEARBOX = "driveline/gearbox/ratios"
REV_LIMIT = "engine/rev_limit"
DISPLACED, DRIVEN = "charge_path/blower/displacement", "charge_path/blower/drive_ratio"
MOST_MOVED = 3.0  # times what the engine draws; beyond any displacer, chosen by the project
BEYOND = 1.1  # times a speed that slip and growth of tyres may hide
NOTHING_REDUCES = (
    "nothing reduces the speed of the engine on its way to the wheels: one turn of the crank makes "
    "{turns} of the wheels in the lowest gear, and at {limit} that is {speed}. A primary drive, a "
    "chain or a gear is missing, or a ratio is upside down"
)
TOO_SHORT = (
    "at {limit}, where the engine ends, the highest gear makes {speed}; {what} of {asked} would be "
    "{needed}. The turns of the crank for one of the wheels, {ratio} there, are too many, or the "
    "tyre or that speed is wrong"
)
GEARED = "at {limit} that makes {lowest} in the lowest gear and {highest} in the highest"
GEARED_ONCE = "at {limit} that makes {highest}"
MUCH_MOVED = (
    "at {ratio} turns for one of the crank the blower moves {times} times what the engine draws: "
    "more than a blower of this kind holds, and the charge gets too hot for any answer. Turns of "
    "the rotor for one of the crankshaft are asked, seldom more than a few"
)


def told(name: str, values: Values, system: str) -> Iterator[str]:
    """What an answer to this question makes with those before it: how the vehicle is geared, and
    every doubt.
    """
    if name == "final_drive":
        yield from _geared(values, system)
    yield from doubts(values, system, name)


def doubts(values: Values, system: str, name: str = "") -> Iterator[str]:
    """Every doubt about the answers so far, or those that one question is about."""
    made = ScenarioData.read(trial(values))
    if name in ("", "final_drive") and GEARBOX in values:
        yield from _nothing_reduces(made, system)
    for question, what in (("goal_speed", "the goal"), ("seen_speed", "a measured speed")):
        address = {"goal_speed": "goal/speed", "seen_speed": "observed/1/speed"}[question]
        if name in ("", question) and address in values:
            yield from _too_short(made, address, what, system)
    if name in ("", "blower_ratio") and DISPLACED in values and DRIVEN in values:
        yield from _much_moved(made)


def _reduction(made: ScenarioData, part: str) -> float:
    """Turns in for one turn out."""
    kinds = {one["id"]: one["kind"] for one in made.document()["driveline"]}
    if part not in kinds:
        return 1.0
    if kinds[part] == "final_drive":
        return float(made.get(f"driveline/{part}/ratio"))
    front, rear = (made.get(f"driveline/{part}/teeth_{end}") for end in ("front", "rear"))
    return float(rear / front)


def ratios(made: ScenarioData) -> list[float]:
    """Turns of the crank for one of the wheels, first gear first."""
    outside = _reduction(made, "primary") * _reduction(made, "final_drive")
    return [outside * float(one) for one in made.document()["driveline"][_at(made)]["ratios"]]


def _at(made: ScenarioData) -> int:
    return [one["id"] for one in made.document()["driveline"]].index("gearbox")


def _speed(made: ScenarioData, ratio: float) -> float:
    """m/s at the rev limit, without slip."""
    radius = made.get("tyres/rolling_radius") or physics.rolling_radius(made.get("tyres/size"))
    return float(physics.overall_ratio_speed(made.get(REV_LIMIT), ratio, radius))


def _words(made: ScenarioData, system: str) -> dict[str, str]:
    every = ratios(made)
    return {
        "limit": ENGINE_SPEED.text(made.get(REV_LIMIT), system, 4),
        "lowest": SPEED.text(_speed(made, every[0]), system),
        "highest": SPEED.text(_speed(made, every[-1]), system),
    }


def _geared(values: Values, system: str) -> Iterator[str]:
    made = ScenarioData.read(trial(values))
    words = GEARED if len(ratios(made)) > 1 else GEARED_ONCE
    yield words.format(**_words(made, system))


def _nothing_reduces(made: ScenarioData, system: str) -> Iterator[str]:
    words, lowest = _words(made, system), ratios(made)[0]
    if lowest <= 1:
        turns = f"{1 / lowest:.3g}"
        yield NOTHING_REDUCES.format(limit=words["limit"], speed=words["lowest"], turns=turns)


def _too_short(made: ScenarioData, address: str, what: str, system: str) -> Iterator[str]:
    asked = _asked(made, address)
    ratio = ratios(made)[-1]
    fastest = _speed(made, ratio)
    if asked > BEYOND * fastest:
        needed = made.get(REV_LIMIT) * asked / fastest
        yield TOO_SHORT.format(
            limit=ENGINE_SPEED.text(made.get(REV_LIMIT), system, 4),
            speed=SPEED.text(fastest, system),
            what=what,
            asked=SPEED.text(asked, system),
            needed=ENGINE_SPEED.text(needed, system),
            ratio=f"{ratio:.3g}",
        )


def _asked(made: ScenarioData, address: str) -> float:
    if address.startswith("observed/"):
        return float(made.observed[0]["speed"][0])
    return float(made.get(address))


def _much_moved(made: ScenarioData) -> Iterator[str]:
    """Swept by the blower over swept by the engine, which draws every second turn."""
    sizes = (made.get(f"engine/{key}") for key in ("bore", "stroke", "cylinders"))
    drawn = float(physics.swept_volume(*sizes)) / 2
    times = made.get(DISPLACED) * made.get(DRIVEN) / drawn
    if times > MOST_MOVED:
        yield MUCH_MOVED.format(ratio=f"{made.get(DRIVEN):.3g}", times=f"{times:.2g}")
