"""The defaults that an answer leans on, by how much of its speed each is in doubt for."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from windwall.inputs import Loose, loose, moved

if TYPE_CHECKING:
    from windwall.scenario import Scenario


class Leaning(NamedTuple):
    """A default, and the speed that one standard deviation of it is worth, m/s."""

    input: Loose
    speed: float | None  # None where the vehicle has no top speed either way


def leanings(scenario: Scenario) -> list[Leaning]:
    """Every default with a standard deviation, the one that matters most first."""
    found = [Leaning(one, worth(scenario, one)) for one in loose(scenario) if not one.given]
    return sorted(found, key=lambda leaning: -(leaning.speed or 0))


def worth(scenario: Scenario, one: Loose) -> float | None:
    """Largest change of speed within one standard deviation either way, by solving again."""
    here = goal_speed(scenario)
    if here is None:
        return None
    speeds = [goal_speed(moved(scenario, one, way)) for way in (-1, 1)]
    return max((abs(speed - here) for speed in speeds if speed is not None), default=None)


def goal_speed(scenario: Scenario | None) -> float | None:
    """The speed that goals go by, m/s."""
    answer = scenario.brief_top_speed() if scenario else None
    return answer.goal_speed if answer and answer.answered else None
