"""How loggers call what a vehicle model knows, and between which numbers it lies."""

from __future__ import annotations

import re
from typing import NamedTuple

__all__ = ["CALLED", "Called", "plain", "warm_slowly"]


class Called(NamedTuple):
    """A result, the words it goes by, its usual unit, its range in that unit, a gauge's spread."""

    address: str
    words: str  # a regular expression, over the heading in small letters
    unit: str
    low: float
    high: float
    sigma: str
    slow: bool = False  # it takes minutes to be what it is after a long pull

    def fits(self, heading: str) -> str:
        """The word of a heading by which it is known; empty where there is none."""
        found = re.search(rf"(?<![a-z])(?:{self.words})(?![a-z])", heading)
        return found[0] if found else ""


# The spreads are common practice for gauges of the usual price: no source.
CALLED = (
    Called("day/pressure", "baro(?:metric)?(?: pressure)?|ambient pressure|luftdruck|p amb",
           "kPa", 55, 110, "0.3 kPa"),
    Called("day/temperature", "ambient(?: air)?(?: temp(?:erature)?)?|outside(?: temp)?|oat|"
           "aussentemp\\w*|t amb", "degC", -30, 55, "1 K"),
    Called("engine/speed", "rpm|engine speed|engine revs|engine|revs|drehzahl|motordrehzahl|n mot|"
           "regime|toerental|n", "rpm", -200, 25000, "20 rpm"),
    Called("road/speed", "gps speed|speed|vehicle speed|velocity|geschw\\w*|vitesse|v|vss|kmh|"
           "snelheid|road", "", -10, 500, "1 km/h"),
    Called("pedal", "tps|throttle(?: pos\\w*)?|pedal|gas|app|drosselklappe|gaspedal|accelerator",
           "%", -8, 110, "2 %"),
    Called("manifold/pressure", "map|manifold(?: absolute)?(?: pressure)?|intake pressure|"
           "saugrohrdruck|boost|charge pressure|ladedruck|p man", "kPa", 12, 450, "2 kPa"),
    Called("manifold/boost", "boost|gauge pressure|ladedruck|charge pressure|manifold gauge|map",
           "kPa", -100, 350, "2 kPa"),
    Called("manifold/temperature", "iat|mat|intake(?: air)? temp\\w*|charge(?: air)? temp\\w*|"
           "ladelufttemp\\w*|ansaugtemp\\w*|manifold temp\\w*|charge|t man",
           "degC", -30, 220, "3 K"),
    Called("engine/head_temperature", "cht|(?:cylinder )?head(?: temp\\w*)?|zylinderkopf\\w*",
           "degC", -30, 350, "5 K", True),
    Called("engine/oil_temperature", "oil(?: temp\\w*)?|oeltemp\\w*|öltemp\\w*", "degC", -30, 200,
           "3 K", True),
    Called("engine/exhaust_gas_temperature", "egt\\d?|exhaust(?: gas)?(?: temp\\w*)?|abgastemp\\w*",
           "degC", -30, 1200, "30 K"),
    Called("engine/lambda", "lambda|wideband|wbo2", "", 0.4, 3, "0.03"),
    Called("acceleration", "accel\\w*|long(?:itudinal)? ?acc\\w*|acc x|ax|beschl\\w*", "m/s2",
           -15, 15, "0.2 m/s2"),
    Called("road/gear", "gear|gang", "", -1, 12, ""),
    Called("distance", "dist\\w*|weg|strecke", "m", 0, 1e6, ""),
)  # fmt: skip


def plain(heading: str) -> str:
    """A heading in small letters and spaces."""
    parted = re.sub(r"(?<=[a-zäöü])(?=[A-Z])", " ", heading)
    return " ".join(re.sub(r"[_\-./:()\[\]]+", " ", parted).lower().split())


def warm_slowly() -> set[str]:
    """Results that a pull of seconds says nothing of."""
    return {one.address for one in CALLED if one.slow}
