"""The word of a closed list that somebody means who answers `windwall new` in other words."""

from __future__ import annotations

import re

from windwall.errors import Problem, ScenarioError

__all__ = ["SAID", "UNKNOWN", "one_of"]

# By the last key of the address: what people say where a file has a word of its own.
SAID = {
    "duty": {
        "race": "racing",
        "track": "racing",
        "car": "road",
        "motorcycle": "road",
        "mower": "work",
        "pump": "work",
        "generator": "work",
        "industrial": "work",
    },
    "chamber": {
        "flathead": "side_valve",
        "flat_head": "side_valve",
        "bathtub": "two_valve_wedge",
    },
    "cooling": {"water": "liquid", "fan": "air"},
    "mixture": {
        "carbs": "carburettor",
        "carburetor": "carburettor",
        "fuel_injection": "ported_injection",
        "injected": "ported_injection",
        "injectors": "ported_injection",
    },
    "exhaust": {
        "yes": "muffled",
        "silencer": "muffled",
        "silenced": "muffled",
        "no": "open",
        "straight_pipe": "open",
    },
    "knock": {"yes": "heard", "edge": "at the edge"},
    "units": {"imperial": "us", "si": "metric"},
}
UNKNOWN = ("do_not_know", "don't_know")


def one_of(address: str, words: list[str], text: str) -> str:
    """The word that was meant: however it is spaced, the beginning of one of its parts where only
    one word has such a part, or a plain word for it. A ScenarioError where two are meant alike.
    """
    typed = _joined(text)
    whole = [word for word in words if _joined(word) == typed]
    plain = SAID.get(address.rpartition("/")[2], {}).get(typed)
    if plain is None and typed in UNKNOWN and "unknown" in words:
        plain = "unknown"
    if meant := whole[0] if whole else plain:
        return meant
    close = [word for word in words if _begins_a_part(typed, _joined(word))]
    if len(close) > 1:
        message = f'"{text}" may be {" or ".join(close)}: a letter or two more will tell'
        raise ScenarioError([Problem(address, 0, 0, message)])
    return close[0] if close else text


def _joined(text: str) -> str:
    return re.sub(r"[\s-]+", "_", text.strip().lower())


def _begins_a_part(typed: str, word: str) -> bool:
    """Whether some parts of the word begin so, as `pent` does of `four_valve_pent_roof`."""
    parts = word.split("_")
    return bool(typed) and any("_".join(parts[at:]).startswith(typed) for at in range(len(parts)))
