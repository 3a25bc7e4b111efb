"""What pulls tell of results: levels and accelerations at several engine speeds, with honest ±.

Rows of a log are no independent readings. A pull is parted into windows that do not overlap; each
gives one number of a column, from a parabola through its rows. The noise of neighbouring rows may
be tied, and its correlation widens the ±. The gauge's own error is the same in all of them: of n
facts of one column each takes it times the root of n, so that all together are no better known than
one reading of that gauge.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from math import hypot, sqrt

import numpy as np

from windwall.logs.channels import Channel
from windwall.logs.gears import Gear
from windwall.logs.smoothing import Local, Noise, local_quadratic, noise_of
from windwall.logs.words import warm_slowly
from windwall.results.log import Log, LogFact, Pull
from windwall.scenario.data import ScenarioData

__all__ = [
    "HALF", "MOST_WINDOWS", "NOT_HELD", "NOT_HELD_KELVIN", "NO_FACTS", "SCALE", "SURPLUS", "facts",
]  # fmt: skip

HALF = 0.5  # s, of a window
MOST_WINDOWS = 6
SURPLUS = "road/surplus"
NO_FACTS = {"engine/speed", "road/speed", "road/gear", "pedal", "distance", "acceleration"}
SCALE = 0.01  # of an acceleration, by its speed gauge: chosen by the project, no source
# By how much a pull that lasts seconds differs from a vehicle held there: shares of the value, and
# K. Derived: from drives of the example vehicles beside the same vehicles held; the head is cooler,
# breathes better, and leaves less boost.
NOT_HELD = {"manifold/boost": 0.06, "manifold/pressure": 0.012, SURPLUS: 0.005}
NOT_HELD_KELVIN = 1.5


def facts(
    log: Log,
    channels: dict[str, Channel],
    pulls: tuple[Pull, ...],
    gears: tuple[Gear, ...],
    scenario: ScenarioData,
) -> tuple[LogFact, ...]:
    """Every fact of every pull; `sigma` still lacks what all facts of one address share."""
    found = [
        fact
        for pull in pulls
        for fact in _of_pull(log, channels, pull, gears, scenario)
        if np.isfinite(fact.value)
    ]
    count = Counter(fact.address for fact in found)
    made = (_with_shared(fact, channels, count[fact.address], scenario) for fact in found)
    return tuple(fact for fact in made if fact.sigma > 0)


def _with_shared(
    fact: LogFact, channels: dict[str, Channel], count: int, scenario: ScenarioData
) -> LogFact:
    shared = hypot(_gauge(fact, channels, scenario), _not_held(fact))
    return fact._replace(sigma=hypot(fact.sigma, shared * sqrt(count)))


def _gauge(fact: LogFact, channels: dict[str, Channel], scenario: ScenarioData) -> float:
    if fact.address != SURPLUS:
        return channels[fact.address].sigma
    mass = scenario.get("body/mass")
    return abs(fact.value) * hypot(SCALE, scenario.sigma("body/mass") / mass)


def _not_held(fact: LogFact) -> float:
    if fact.address.endswith("temperature"):
        return NOT_HELD_KELVIN
    return NOT_HELD.get(fact.address, 0.0) * abs(fact.value)


def _of_pull(
    log: Log,
    channels: dict[str, Channel],
    pull: Pull,
    gears: tuple[Gear, ...],
    scenario: ScenarioData,
) -> Iterator[LogFact]:
    seen = _Seen(log, channels, pull)
    gear = next((one for one in gears if one.number == pull.gear), None)
    for middle in seen.middles():
        turning = seen.local("engine/speed", middle)
        if turning is None:
            continue
        situation = {
            "kind": "held",
            "retard": None,
            "engine_speed": turning.level,
            "gear": pull.gear,
            "road_speed": None if pull.gear else _level(seen.local("road/speed", middle)),
            "opening": 1.0,
        }
        line = int(log.lines[np.searchsorted(log.time, middle)])
        said = f"{pull.name}, line {line}"
        for address in channels:
            local = seen.local(address, middle) if _tells(address) else None
            if local is not None:
                sigma = hypot(local.level_sigma, _along(local, turning))
                yield LogFact(situation, address, local.level, sigma, said, pull.name, pull.day)
        pushed = _surplus(seen, middle, gear, turning)
        if pushed is not None:
            yield LogFact(situation, SURPLUS, *pushed, said, pull.name, pull.day)


def _tells(address: str) -> bool:
    """A vehicle that is held is as warm as after a long pull; what warms slowly is not, by then."""
    return address not in NO_FACTS | warm_slowly() and not address.startswith("day/")


def _level(local: Local | None) -> float | None:
    return None if local is None else float(local.level)


def _along(local: Local, turning: Local) -> float:
    """What the noise of the engine speed makes of a number that changes with it."""
    if abs(turning.slope) < 3 * turning.slope_sigma:
        return 0.0
    return abs(local.slope / turning.slope) * turning.level_sigma


def _surplus(
    seen: _Seen, middle: float, gear: Gear | None, turning: Local
) -> tuple[float, float] | None:
    """Force that accelerates, N, and its noise: by the road or the engine speed, whichever is the
    better known.
    """
    if gear is None:
        return None
    ratio = sqrt(gear.low * gear.high)
    ways = [(turning.slope / ratio, turning.slope_sigma / ratio)]
    road = seen.local("road/speed", middle)
    if road is not None:
        ways.append((road.slope, road.slope_sigma))
    slope, sigma = min(ways, key=lambda one: one[1])
    return float(gear.mass * slope), float(gear.mass * sigma)


class _Seen:
    """The columns of one pull, smoothed at the middles of its windows."""

    def __init__(self, log: Log, channels: dict[str, Channel], pull: Pull) -> None:
        self.channels = channels
        self.begin, self.end = pull.time
        self.rows = slice(pull.first, pull.last + 1)
        self.half = self._half(log.time[self.rows])
        self.noise: dict[str, Noise] = {}

    @staticmethod
    def _half(time: np.ndarray) -> float:
        """Seconds; longer where rows come seldom or the pull has room for more than is wanted."""
        step = float(np.median(np.diff(time)))
        room = (time[-1] - time[0]) / (2 * MOST_WINDOWS)
        return max(HALF, 4.5 * step, min(room, 2 * HALF))

    def middles(self) -> list[float]:
        """Of windows beside one another."""
        count = min(int((self.end - self.begin) / (2 * self.half) + 1e-9), MOST_WINDOWS)
        if count < 1:
            return []
        apart = (self.end - self.begin) / count
        return [self.begin + (i + 0.5) * apart for i in range(count)]

    def local(self, address: str, middle: float) -> Local | None:
        one = self.channels.get(address)
        if one is None:
            return None
        if address not in self.noise:
            of_pull = (one.time[self.rows], one.values[self.rows])
            self.noise[address] = noise_of(*of_pull, self.half)
        return local_quadratic(one.time, one.values, middle, self.half, self.noise[address])
