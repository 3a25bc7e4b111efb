"""How an answer to `windwall new` may be meant, as values by their addresses."""

from __future__ import annotations

import re
from typing import Any

from windwall.errors import Problem, ScenarioError

__all__ = [
    "AT_A_SPEED", "BLOWN", "COMMA", "COMMAS", "NUMBER", "OCTANE", "RATED_AS", "SEA_LEVEL",
    "TEETH", "THOUSANDS", "TO_ONE", "Values", "chain", "ethanol", "figure_at_a_speed", "gears",
    "heading", "height_or_barometer", "number", "plain", "ratio_or_chain",
    "refuse_decimal_comma", "research_and_motor",
]  # fmt: skip

Values = dict[str, Any]  # by address
TEETH = re.compile(r"\s*(\d+)\s*[:/]\s*(\d+)\s*")
SEA_LEVEL = ("sea level", "at sea level", "the sea", "sea")
NUMBER = re.compile(r"\s*[+-]?\d+(\.\d+)?\s*")
TO_ONE = re.compile(r"\s*(\d+(?:\.\d+)?)\s*(?::|to)\s*1\s*", re.IGNORECASE)
COMMA = re.compile(r"(\d+),(\d+)(?![\d,])")
COMMAS = re.compile(r"\s*\d+,\d+(?:\s*[;\s]\s*\d+,\d+)+\s*")
AT_A_SPEED = re.compile(r"\s*(?:@|\bat\b)\s*", re.IGNORECASE)
RATED_AS = re.compile(r"\s*\b(gross|net)\b\s*", re.IGNORECASE)
BLOWN = re.compile(r"\b(blown|blower|supercharged|turbocharged|turbo)\b", re.IGNORECASE)
OCTANE = re.compile(r"\b(RON|research|octane|number)\b", re.IGNORECASE)


def plain(address: str, text: str) -> list[Values]:
    """A number without a unit as a number, all else as the text it is."""
    return [{address: number(text)}]


def number(text: str) -> Any:
    """JSON writes plain numbers without quotes; `8.5:1` is a ratio of 8.5."""
    if to_one := TO_ONE.fullmatch(text):
        text = to_one[1]
    if not NUMBER.fullmatch(text):
        return text
    return float(text) if "." in text else int(text)


def heading(address: str, text: str) -> list[Values]:
    return [{address: text}]


def height_or_barometer(address: str, text: str) -> list[Values]:
    """Of the place; `sea level` is a height too."""
    told = "0 m" if text.strip().lower() in SEA_LEVEL else number(text)
    return [{address: told}, {"day/pressure": told}]


def gears(address: str, text: str) -> list[Values]:
    """Ratios between commas, semicolons or spaces; a comma between two digits might be any, unless
    each of several ratios between spaces has one.
    """
    if COMMAS.fullmatch(text):
        text = COMMA.sub(r"\1.\2", text)
    if "." not in text and (comma := COMMA.search(text)):
        message = (
            f'"{comma[0]}" may be two ratios, {comma[1]} and {comma[2]}, or one of '
            f'{comma[1]}.{comma[2]}; write "{comma[1]}, {comma[2]}" or "{comma[1]}.{comma[2]}"'
        )
        raise ScenarioError([Problem(address, 0, 0, message)])
    ratios = re.sub(r"\s*:\s*1(?![\d.])", ":1", text)
    return [{address: [number(one) for one in re.split(r"[,;\s]+", ratios) if one]}]


def refuse_decimal_comma(address: str, text: str) -> None:
    """A ScenarioError that gives the number back as it is written here, with its unit."""
    if not (comma := COMMA.search(text)):
        return
    said = [COMMA.sub(r"\1.\2", text)]
    said += [COMMA.sub(r"\1\2", text)] if len(comma[2]) == THOUSANDS else []
    message = (
        f'"{text}" is not understood: decimals are set off by a point, and thousands by nothing; '
        f"write {' or '.join(f'{chr(34)}{one}{chr(34)}' for one in said)}"
    )
    raise ScenarioError([Problem(address, 0, 0, message)])


THOUSANDS = 3  # digits behind a comma that may set off either


def chain(part: str, text: str) -> Values | None:
    """Teeth in front and behind, as `18:30`."""
    teeth = TEETH.fullmatch(text)
    if not teeth or TO_ONE.fullmatch(text):
        return None
    front, rear = map(int, teeth.groups())
    return {f"{part}/kind": "chain", f"{part}/teeth_front": front, f"{part}/teeth_rear": rear}


def ratio_or_chain(address: str, text: str) -> list[Values]:
    part = address.rpartition("/")[0]
    return [chain(part, text) or {f"{part}/kind": "final_drive", address: number(text)}]


def figure_at_a_speed(address: str, text: str) -> list[Values]:
    """A printed torque or power with its engine speed, as `15 kW gross at 3600 rpm`."""
    if BLOWN.search(text):
        message = (
            "figures with a blower of the maker's are not met: the stock engine is solved without "
            "one, and would be given a filling that nothing has. An empty answer leaves them out"
        )
        raise ScenarioError([Problem(address, 0, 0, message)])
    kind = RATED_AS.search(text)
    value, *speeds = AT_A_SPEED.split(RATED_AS.sub(" ", text).strip())
    if len(speeds) != 1 or not speeds[0]:
        message = 'at which engine speed? It is answered as "44 N m at 2500 rpm"'
        raise ScenarioError([Problem(address, 0, 0, message)])
    made = {address: value, f"{address}_speed": speeds[0]}
    return [made | ({"engine/rated/as": kind[1].lower()} if kind else {})]


def research_and_motor(address: str, text: str) -> list[Values]:
    """Octane numbers of a fuel, `91` or `91/83`."""
    research, *motor = (number(part.strip()) for part in OCTANE.sub("", text).split("/"))
    if not re.match(r"\d", str(research)) or re.search(r"[a-z%]", f"{research}{motor}"):
        message = (
            f'"{text}" is no octane number; it is written "95", or "95/85" where the motor octane '
            "number is known too"
        )
        raise ScenarioError([Problem(address, 0, 0, message)])
    beside = f"{address.rpartition('/')[0]}/motor_octane"
    return [{address: research} | ({beside: motor[0]} if motor else {})]


def ethanol(address: str, text: str) -> list[Values]:
    """A share by volume, or the name that a pump has for it: `E10`."""
    name = re.fullmatch(r"\s*E\s*-?(\d{1,3})\s*", text, re.IGNORECASE)
    return [{address: f"{name[1]} %" if name else text}]
