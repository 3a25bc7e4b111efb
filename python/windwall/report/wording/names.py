"""What the words of the core's closed lists are called in tables."""

from __future__ import annotations

from collections.abc import Iterable
from functools import singledispatch

from windwall.quantities.measures import TEMPERATURE_DIFFERENCE
from windwall.results.entry import Gain, NamedNumber, Use

__all__ = ["CHANGES", "COOLER", "USES", "by_name", "change_in", "name"]

CHANGES = {
    "power_up": "power +1 %",
    "drag_area_down": "drag area -1 %",
    "mass_down": "mass -1 %",
    "charge_cooler": "charge -10 K",
    "octane_up": "octane number +1",
    "gearing_shorter": "gearing 1 % shorter",
    "gearing_longer": "gearing 1 % longer",
}
COOLER = 10.0  # K, by which the charge is colder there
# Uses of power that are called otherwise than by their word.
USES = {
    "crank_slowing": "crank slowing",
    "tyre_slip": "tyre slip",
    "unburnt_fuel": "unburnt fuel",
    "part": "{part}",
    "belt": "{part} belt",
    "shaft": "{part} shaft",
    "casing": "{part} casing",
}


@singledispatch
def name(entry: NamedNumber) -> str:
    """What a table calls a number."""
    raise TypeError(f"nothing is called a {type(entry).__name__}")


@name.register(Use)
def _use(entry: Use) -> str:
    return USES.get(entry.use, entry.use).format(part=entry.part)


@name.register(Gain)
def _gain(entry: Gain) -> str:
    return CHANGES[entry.change]


def change_in(entry: Gain, system: str) -> str:
    """What a table calls a small change, in the units of the scenario."""
    if entry.change == "charge_cooler":
        return f"charge -{TEMPERATURE_DIFFERENCE.short(COOLER, system)}"
    return name(entry)


def by_name(entries: Iterable[NamedNumber]) -> dict[str, float | None]:
    """The numbers of an account, or of small changes, by what they are called."""
    return {name(one): one.number for one in entries}
