"""The menu of `windwall new`: upgrades that many consider, by a word and a cost, and one's own."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from functools import cache
from typing import Any

from windwall.cli.new_question import Question
from windwall.cli.new_readings import Values, number
from windwall.cli.new_words import one_of
from windwall.errors import Problem, ScenarioError
from windwall.scenario.schema import whole_schema

__all__ = [
    "CHAINS", "CHANGE", "CHANGED", "COST", "DRAG", "DRIVEN", "GEARINGS", "LACKS", "LONGEST_ID",
    "MENU", "NOT_READY", "NO_BLOWER", "NO_CHAIN", "NO_CHANGE", "NO_COST", "PIECES", "PULLEYS",
    "SEAT", "STARTERS", "TEETH", "TIMES", "TWICE", "UPGRADES", "VERBS", "cooler", "fairing",
    "menu_of", "own_upgrade", "pulley", "refuse_twice", "sprockets", "starters",
]  # fmt: skip

MENU = "upgrades"
PIECES = re.compile(r"\s*(?:;|(?<!\d),|,(?!\d))\s*")  # a comma between digits is of a number
COST = re.compile(r"\d.*[^\W\d].*")
# What somebody may say that it changes; any other address is written out.
CHANGED = {
    "mass": "body/mass",
    "drag_area": "body/drag_area",
    "rolling_resistance": "body/rolling_resistance",
    "throttle": "charge_path/throttle/bore",
    "blower_ratio": "charge_path/blower/drive_ratio",
    "compression_ratio": "engine/compression_ratio",
    "rev_limit": "engine/rev_limit",
    "back_pressure": "engine/exhaust/back_pressure",
    "fuel": "fuel/research_octane",
    "tyre": "tyres/size",
}
TIMES = "\N{MULTIPLICATION SIGN}"
VERBS = {"x": "scale", "*": "scale", TIMES: "scale", "=": "set", "+": "add", "-": "add"}
CHANGE = re.compile(rf"([\w/ ]*?[\w/])(?:\s*([=+*{TIMES}-])|\s+(x)(?=[\s\d]))\s*(.+)")
SEAT = "Steel seat left at home, 20 EUR, mass - 12 kg"
LONGEST_ID = 32
# Chosen by the project, so that the best is likely to lie between the first and the last.
GEARINGS = (0.88, 0.91, 0.94, 0.97, 1.03, 1.06)  # times the turns in for one of the wheels
PULLEYS = (0.9, 1.1, 1.2)  # times the turns of the rotor
DRAG = "0.9 ± 0.05"  # of a drag area, behind a fairing: a guess, as its title says
CHAINS = ("driveline/final_drive", "driveline/primary")
DRIVEN = "charge_path/blower/drive_ratio"
TEETH = 10  # from which a whole number is one of teeth, and no ratio
NOT_READY = '"{word}" is none of these upgrades: {ready}. One of your own is the next question'
NO_COST = 'the cost of the {name} is missing; it is answered as "{name} 60 EUR"'
NO_CHANGE = (
    '"{text}" is no change that is understood: it is written "mass - 12 kg", "drag_area x 0.92" or '
    '"throttle = 38 mm", of {words}, or of any address of a file'
)
LACKS = '{what} is missing; it is answered as "{title}, 20 EUR, mass - 12 kg"'
NO_CHAIN = "neither a chain nor a final drive was answered, so there are no sprockets to change"
TWICE = 'there is an upgrade "{name}" already; call it otherwise'
NO_BLOWER = "no blower was answered, so a {name} has no place"


def starters(address: str, text: str) -> list[Values]:
    """`sprockets 60 EUR, fairing 130 EUR` as costs by the upgrades that they are of."""
    made: Values = {}
    for piece in filter(None, PIECES.split(text)):
        word, _, cost = piece.partition(" ")
        name = one_of(address, list(STARTERS), word)
        if name not in STARTERS:
            raise _wrong(address, NOT_READY.format(word=word, ready=", ".join(STARTERS)))
        if not COST.fullmatch(cost.strip()):
            raise _wrong(address, NO_COST.format(name=name))
        made[f"{MENU}/{name}"] = cost.strip()
    return [made]


def own_upgrade(address: str, text: str) -> list[Values]:
    """`Steel seat at home, 20 EUR, mass - 12 kg`: a title, a cost, and one change or several."""
    title, cost, *changes = [*PIECES.split(text), "", ""]
    changes = list(filter(None, changes))
    if not COST.fullmatch(cost) or not changes:
        what = "what it changes" if COST.fullmatch(cost) else "its cost"
        raise _wrong(address, LACKS.format(what=what, title=title))
    made: dict[str, Any] = {"title": title, "cost": cost}
    for change in changes:
        verb, where, value = _change(address, change)
        made.setdefault(verb, {})[where] = value
    return [{f"{MENU}/{_id_of(title)}": made}]


def refuse_twice(values: Values, before: Values) -> None:
    """A ScenarioError where an upgrade would stand in the place of another."""
    for address in values:
        if address.startswith(f"{MENU}/") and address in before:
            raise _wrong(MENU, TWICE.format(name=address.partition("/")[2]))


def _wrong(address: str, message: str) -> ScenarioError:
    return ScenarioError([Problem(address, 0, 0, message)])


def _change(address: str, text: str) -> tuple[str, str, Any]:
    """The verb of a file, the address and the value."""
    found = CHANGE.fullmatch(text.strip())
    word = re.sub(r"[\s-]+", "_", found[1].strip().lower()) if found else ""
    if not found or ("/" not in word and word not in CHANGED):
        raise _wrong(address, NO_CHANGE.format(text=text, words=", ".join(CHANGED)))
    sign, value = found[2] or found[3], found[4]
    told = f"-{value}" if sign == "-" else value
    return VERBS[sign], CHANGED.get(word, word), told if sign in "+-" else number(told)


def _id_of(title: str) -> str:
    """A title as an id, which no key of a file may be."""
    plain = re.sub(r"[^a-z0-9]+", "_", title.lower())[:LONGEST_ID].strip("_")
    return plain if re.match("[a-z]", plain) and plain not in _keys() else f"own_{plain}".strip("_")


@cache
def _keys() -> frozenset[str]:
    found: set[str] = set()
    nodes: list[Any] = [whole_schema()]
    while nodes:
        node = nodes.pop()
        found |= set(node.get("properties", {})) if isinstance(node, dict) else set()
        nodes += node.values() if isinstance(node, dict) else node if isinstance(node, list) else []
    return frozenset(found)


def menu_of(values: Values) -> list[dict[str, Any]]:
    """The upgrades of a file, of the answers so far."""
    return list(_menu(values))


def _menu(values: Values) -> Iterator[dict[str, Any]]:
    for address, said in values.items():
        top, _, name = address.partition("/")
        if top == MENU:
            made = said if isinstance(said, dict) else {"cost": said, **STARTERS[name](values)}
            yield {"id": name, **made}


def sprockets(values: Values) -> dict[str, Any]:
    """Other teeth behind, or another ratio, of what gears the wheels last."""
    for address in (f"{chain}/{key}" for chain in CHAINS for key in ("teeth_rear", "ratio")):
        if (here := values.get(address)) is not None:
            title = "Other sprockets" if address.endswith("rear") else "Other ratio to the wheels"
            return {"title": title, "choose": {address: _around(here, GEARINGS)}}
    raise _wrong(f"{MENU}/sprockets", NO_CHAIN)


def pulley(values: Values) -> dict[str, Any]:
    """Another speed of the blower."""
    here = values[_blower(values, "pulley")]
    return {"title": "Other blower pulley", "choose": {DRIVEN: _around(here, PULLEYS)}}


def cooler(values: Values) -> dict[str, Any]:
    """A charge cooler of middling size behind the blower; a guess, chosen by the project."""
    _blower(values, "cooler")
    part = {
        "id": "cooler",
        "kind": "charge_cooler",
        "conductance": "60 ± 20 W/K",
        "at_charge_flow": "30 g/s",
        "at_cooling_flow": "250 g/s",
        "face_area": "420 cm2",
    }
    return {
        "title": "Charge cooler, its size a guess",
        "insert": [{"after": ["blower"], "part": part}],
        "add": {"body/mass": "5 ± 2 kg"},
    }


def fairing(values: Values) -> dict[str, Any]:
    """A tenth of the drag area less."""
    return {"title": "Fairing, a tenth less drag as a guess", "scale": {"body/drag_area": DRAG}}


def _blower(values: Values, name: str) -> str:
    """The address of the blower's drive, or a ScenarioError where there is none."""
    if DRIVEN not in values:
        raise _wrong(f"{MENU}/{name}", NO_BLOWER.format(name=name))
    return DRIVEN


def _around(here: Any, times: tuple[float, ...]) -> list[Any]:
    """Whole teeth, or ratios to three digits, without what there is."""
    if isinstance(here, int) and here >= TEETH:
        return sorted({round(here * one) for one in times} - {here})
    value = float(re.split(r"[^\d.]", str(here), maxsplit=1)[0])
    return sorted({float(f"{value * one:.3g}") for one in times})


STARTERS: dict[str, Callable[[Values], dict[str, Any]]] = {
    "sprockets": sprockets,
    "pulley": pulley,
    "cooler": cooler,
    "fairing": fairing,
}
UPGRADES = (
    Question(
        "upgrades", MENU, "sprockets 60 EUR, fairing 130 EUR", empty="none of these", read=starters
    ),
    Question("upgrade", MENU, SEAT, empty="none", read=own_upgrade),
    Question("upgrade_2", MENU, SEAT, empty="no more", after="upgrade", read=own_upgrade),
    Question("upgrade_3", MENU, SEAT, empty="no more", after="upgrade_2", read=own_upgrade),
    Question("budget", "goal/budget", "500 EUR", empty="no end", after="upgrades upgrade"),
)
