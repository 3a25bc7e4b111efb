"""What the core's rows name, as attributes and as items."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from typing import Any, ClassVar

from windwall.quantities.finite import finite
from windwall.results.scenario_info import ScenarioInfo

__all__ = ["Values", "completed", "plain"]


class Values(Mapping[str, Any]):
    """Numbers in SI, words and tuples, by the keys of their rows. They do not change."""

    __slots__ = ("_info", "_numbers")
    kinds: ClassVar[dict[str, type[Values]]] = {}  # below a key, where they are more than values
    pictures: ClassVar[tuple[str, ...]] = ()  # functions of `ww.plot` that draw it

    def __init__(self, numbers: dict[str, Any], info: ScenarioInfo | None = None) -> None:
        object.__setattr__(self, "_numbers", numbers)
        object.__setattr__(self, "_info", info)

    def __reduce__(self) -> tuple[Any, ...]:
        return type(self), (self._numbers, self._info)

    @property
    def numbers(self) -> dict[str, Any]:
        """Everything as the core answered it."""
        return self._numbers

    @property
    def scenario_info(self) -> ScenarioInfo:
        """What a reader needs to know about the scenario."""
        return self._info

    def __getitem__(self, key: str) -> Any:
        """By key, or by an address such as `charge_path/blower/outlet/temperature`."""
        first, _, rest = key.partition("/")
        if first not in self._numbers:
            raise KeyError(self._unknown(first))
        value = self._below(first, self._numbers[first])
        return value[rest] if rest else value

    def _unknown(self, key: Any) -> str:
        from difflib import get_close_matches

        close = get_close_matches(str(key), map(str, self._numbers), 1)
        meant = f"; did you mean {close[0]!r}?" if close else "."
        return f"no {key!r} here{meant} There are {', '.join(self)}"

    def _below(self, key: str, value: Any) -> Any:
        if isinstance(value, dict):
            return self.kinds.get(key, Values)(value, self._info)
        if isinstance(value, list):
            return tuple(self._below(key, one) for one in value)
        return value

    def __getattr__(self, key: str) -> Any:
        if key.startswith("_") or key not in self._numbers:
            known = "" if key.startswith("_") else f"; there are {', '.join(self)}"
            raise AttributeError(f"no {key!r} here{self._drawn(key)}{known}")
        return self[key]

    def _drawn(self, key: str) -> str:
        """How it is drawn, for whoever asks it for that."""
        if key != "plot" or not self.pictures:
            return ""
        return f": draw it with {' or '.join(f'ww.plot.{one}(answer)' for one in self.pictures)}"

    def __setattr__(self, key: str, value: Any) -> None:
        raise AttributeError("results do not change")

    def __dir__(self) -> list[str]:
        return completed(super().__dir__(), self._numbers)

    def __iter__(self) -> Iterator[str]:
        return iter(self._numbers)

    def __len__(self) -> int:
        return len(self._numbers)

    def __eq__(self, other: object) -> bool:
        # Numbers that are none are equal here, as they are not among floats.
        mine, theirs = self.__reduce__(), other.__reduce__() if isinstance(other, Values) else None
        return theirs is not None and finite(mine) == finite(theirs)

    __hash__ = None  # type: ignore[assignment]

    def __repr__(self) -> str:
        inside = ", ".join(f"{key}={value!r}" for key, value in self.items())
        return f"{type(self).__name__}({inside})"

    def to_dict(self) -> dict[str, Any]:
        """The same as nested dicts of plain numbers."""
        return {key: plain(value) for key, value in self.items()}


def completed(names: Iterable[str], more: Iterable[str] = ()) -> list[str]:
    """What completion offers: what may be read, without what is for those who work on it."""
    return sorted({one for one in names if one[:1] != "_" or one[:2] == "__"} | {*more})


def plain(value: Any) -> Any:
    """Values as dicts, wherever they stand."""
    if isinstance(value, tuple):
        return [plain(one) for one in value]
    return value.to_dict() if isinstance(value, Values) else value
