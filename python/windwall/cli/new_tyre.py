"""How an answer to the question of the tyre may be meant: a size, or a radius that was measured."""

from __future__ import annotations

import re

from windwall.cli.new_readings import Values
from windwall.errors import Problem, ScenarioError

__all__ = ["AS_RADIUS", "LENGTH", "RADIUS", "WIDTHS", "size_or_radius"]

RADIUS = re.compile(r"\s*(?:rolling\s+)?radius\s*(?:of\s+|=\s*)?(.+)", re.IGNORECASE)
LENGTH = re.compile(r"\s*(\d+(?:\.\d+)?)\s*(mm|cm|m|in|inch|ft)?\s*(?:(?:\u00b1|\+/-).*)?")
WIDTHS = (80, 260)  # mm, of sections that are printed so; chosen by the project
AS_RADIUS = "tyres/rolling_radius"


def size_or_radius(address: str, text: str) -> list[Values]:
    """A length is a measured radius, and anything else a size; what may be the width of a tyre is
    refused with both readings.
    """
    if said := RADIUS.fullmatch(text):
        return [{AS_RADIUS: said[1]}]
    length = LENGTH.fullmatch(text)
    if not length:
        return [{address: text}]
    value, unit = length.groups()
    if unit in (None, "mm") and WIDTHS[0] <= float(value) <= WIDTHS[1]:
        raise ScenarioError([Problem(address, 0, 0, _both(value, text))])
    return [{AS_RADIUS: text}]


def _both(value: str, text: str) -> str:
    twice = f"{2 * float(value):g} mm"
    return (
        f'"{text}" may be the width of a tyre, whose size then needs its rim, as in "{value}/80 '
        f'R13", or a rolling radius, of a wheel {twice} tall; write the whole size, or "radius '
        f'{value} mm"'
    )
