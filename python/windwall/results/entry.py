"""One entry of a list that an answer holds: what the core's rows name, as attributes."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from windwall.results.scenario_info import ScenarioInfo
from windwall.results.views import sentence


class Entry:
    """Numbers in SI, words and texts, by the keys of their rows."""

    __slots__ = ("_info", "_numbers")

    def __init__(self, numbers: dict[str, Any], info: ScenarioInfo) -> None:
        object.__setattr__(self, "_numbers", numbers)
        object.__setattr__(self, "_info", info)

    def __reduce__(self) -> tuple:
        return type(self), (self._numbers, self._info)

    def __getattr__(self, key: str) -> Any:
        if key.startswith("_") or key not in self._numbers:
            raise AttributeError(f"no {key!r} here; there are {', '.join(self)}")
        value = self._numbers[key]
        if key == "passed":
            return [Passed(one, self._info) for one in value]
        return tuple(value) if isinstance(value, list) else value

    def __setattr__(self, key: str, value: Any) -> None:
        raise AttributeError("results do not change")

    def __dir__(self) -> list[str]:
        return [*super().__dir__(), *self._numbers]

    def __iter__(self) -> Iterator[str]:
        return iter(self._numbers)

    def __eq__(self, other: object) -> bool:
        return type(self) is type(other) and self.__reduce__() == other.__reduce__()

    __hash__ = None  # type: ignore[assignment]

    def __repr__(self) -> str:
        inside = ", ".join(f"{key}={value!r}" for key, value in self._numbers.items())
        return f"{type(self).__name__}({inside})"

    @property
    def scenario_info(self) -> ScenarioInfo:
        """What a reader needs to know about the scenario."""
        return self._info

    def to_dict(self) -> dict[str, Any]:
        """The same as plain numbers."""
        return dict(self._numbers)


class Caution(Entry):
    """Something to know about an answer: one of a closed list of words, and where."""

    __slots__ = ()

    @property
    def sentence(self) -> str:
        """What there is to know, in the units of the scenario."""
        return sentence(self)

    def to_dict(self) -> dict[str, Any]:
        return super().to_dict() | {"sentence": self.sentence}


class Passed(Entry):
    """A limit that is passed on the way up: where first, and by how much at worst."""

    __slots__ = ()


class Gain(Entry):
    """What a small change would add to the speed; None where the changed vehicle has none."""

    __slots__ = ()


class Margins(Entry):
    """What is left until the knock margin is zero in the middle of its band.

    Each is found by solving again with engine speed, road speed, throttle and spark held, but for
    the one that is moved. Negative: that much too far already. None: not reached in the range that
    is searched (the drive ratio times e either way, 150 K, 40 degrees), or no blower to move.
    """

    __slots__ = ()
