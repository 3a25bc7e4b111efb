"""The questions of `windwall new`, and how an answer may be meant. What is asked, its range and its
usual value come from the rows; here stands only where an answer belongs.
"""

from __future__ import annotations

import json
import re
from collections.abc import Callable
from math import hypot
from typing import Any, NamedTuple

from windwall.errors import ScenarioError
from windwall.scenario.data import ScenarioData
from windwall.scenario.inputs import row, sentence

Values = dict[str, Any]  # by address
TEETH = re.compile(r"\s*(\d+)\s*[:/]\s*(\d+)\s*")
SIDES = re.compile(r"\s*[x\N{MULTIPLICATION SIGN}*]\s*")
NUMBER = re.compile(r"\s*[+-]?\d+(\.\d+)?\s*")
# B. Bowling, Air Drag Coefficients and Frontal Area Calculation: 85 percent for cars; a small open
# car is judged to lie between a sedan, 0.34 to 0.50, and a motorcycle, 0.50 to 1.00.
FRONTAL_SHARE, FRONTAL_SIGMA = 0.85, 0.05  # of height times width
DRAG_COEFFICIENT, DRAG_SIGMA = 0.55, 0.12


class Question(NamedTuple):
    """One question: the word it is called by, where its answer goes, and how it may be answered."""

    name: str
    address: str
    example: str = ""  # where the row has none
    needed: bool = False
    empty: str = ""  # what an empty answer means, where it is not the row's default
    also: str = ""  # another way to answer
    after: str = ""  # asked only where this other question was answered
    read: Callable[[str, str], list[Values]] | None = None


def plain(address: str, text: str) -> list[Values]:
    """A number without a unit as a number, all else as the text it is."""
    return [{address: number(text)}]


def number(text: str) -> Any:
    """JSON writes plain numbers without quotes."""
    if not NUMBER.fullmatch(text):
        return text
    return float(text) if "." in text else int(text)


def heading(address: str, text: str) -> list[Values]:
    return [{address: text}]


def size_or_radius(address: str, text: str) -> list[Values]:
    """A length is a measured radius, and anything else a size."""
    return [{"tyres/rolling_radius": text}, {address: text}]


def height_or_barometer(address: str, text: str) -> list[Values]:
    return [{address: number(text)}, {"day/pressure": number(text)}]


def gears(address: str, text: str) -> list[Values]:
    return [{address: [number(one) for one in re.split(r"[,;\s]+", text) if one]}]


def chain(part: str, text: str) -> Values | None:
    """Teeth in front and behind, as `18:30`."""
    teeth = TEETH.fullmatch(text)
    if not teeth:
        return None
    front, rear = map(int, teeth.groups())
    return {f"{part}/kind": "chain", f"{part}/teeth_front": front, f"{part}/teeth_rear": rear}


def ratio_or_chain(address: str, text: str) -> list[Values]:
    part = address.rpartition("/")[0]
    return [chain(part, text) or {f"{part}/kind": "final_drive", address: number(text)}]


def area_or_sides(address: str, text: str) -> list[Values]:
    """A drag area, or height times width with a guess of how slippery that is."""
    sides = SIDES.split(text)
    if len(sides) != 2:
        return [{address: number(text)}]
    height, width = (length(side) for side in sides)
    area = FRONTAL_SHARE * DRAG_COEFFICIENT * height * width
    sigma = area * hypot(FRONTAL_SIGMA / FRONTAL_SHARE, DRAG_SIGMA / DRAG_COEFFICIENT)
    note = (
        f"The drag area is a guess: {FRONTAL_SHARE} of height times width ({text}), times a drag "
        f"coefficient of {DRAG_COEFFICIENT} ± {DRAG_SIGMA} as of a small open car."
    )
    return [{address: f"{area:.3f} ± {sigma:.2f} m2", "notes": note}]


def length(text: str) -> float:
    """Metres, read as a file would be; a height above sea level is any length."""
    try:
        return ScenarioData.read(trial({"day/altitude": number(text)})).get("day/altitude")
    except ScenarioError as wrong:
        told = [one._replace(address="body/drag_area") for one in wrong.problems]
        raise ScenarioError(told) from None


QUESTIONS = (
    Question("title", "title", "Airfield cyclecar", empty="no title", read=heading),
    Question("units", "units", "us", read=heading),
    Question("cylinders", "engine/cylinders", "2", needed=True),
    Question("bore", "engine/bore", "76 mm", needed=True),
    Question("stroke", "engine/stroke", "68.8 mm", needed=True),
    Question("compression_ratio", "engine/compression_ratio", "7.6", needed=True),
    Question("rev_limit", "engine/rev_limit", "5000 rpm", needed=True),
    Question("throttle", "charge_path/throttle/bore", "30 mm", needed=True),
    Question("blower", "charge_path/blower/displacement", "230 cm3", empty="no blower"),
    Question("blower_ratio", "charge_path/blower/drive_ratio", "1.35", needed=True, after="blower"),
    Question("mass", "body/mass", "348 ± 5 kg", needed=True),
    Question(
        "drag_area",
        "body/drag_area",
        "0.70 ± 0.05 m2",
        needed=True,
        also="height x width, such as 1.2 m x 1.3 m, for a guess",
        read=area_or_sides,
    ),
    Question(
        "tyre",
        "tyres/size",
        "135/80 R13 70T",
        needed=True,
        also="the measured rolling radius, such as 265 mm",
        read=size_or_radius,
    ),
    Question(
        "primary",
        "driveline/primary/teeth_front",
        "26:52",
        empty="the gearbox turns with the crank",
        read=lambda address, text: [
            chain("driveline/primary", text)
            or {"driveline/primary/kind": "final_drive", "driveline/primary/ratio": number(text)}
        ],
    ),
    Question("gears", "driveline/gearbox/ratios", "3.2, 2.0, 1.45, 1.1", needed=True, read=gears),
    Question(
        "final_drive",
        "driveline/final_drive/ratio",
        "4.1",
        empty="none, the wheels turn with the gearbox",
        also="teeth of a chain, front:rear, such as 18:30",
        read=ratio_or_chain,
    ),
    Question("temperature", "day/temperature", "25 degC", needed=True),
    Question(
        "altitude",
        "day/altitude",
        "120 m",
        needed=True,
        also="the barometer, such as 98.4 kPa",
        read=height_or_barometer,
    ),
    Question("goal_speed", "goal/speed", "140 km/h", empty="no goal"),
    Question("run_up", "goal/run_up", "1600 m", empty="as long as it takes"),
    Question("seen_speed", "observed/1/speed", "122 ± 2 km/h", empty="nothing was measured"),
    Question("seen_gear", "observed/1/gear", "4", empty="not noted", after="seen_speed"),
    Question("seen_boost", "observed/1/boost", "29 ± 4 kPa", empty="not read", after="seen_speed"),
    Question("seen_knock", "observed/1/knock", "not heard", after="seen_speed", read=heading),
)
KINDS = {
    "throttle": "throttle",
    "blower": "positive_blower",
    "gearbox": "gearbox",
    "primary": "chain",
    "final_drive": "final_drive",
}
START = {"format": "windwall-scenario/2", "engine/kind": "cylinder"}
# Words of `windwall new` where a row is about one part and the question about which part there is.
ASKED = {
    "title": "What the vehicle is called",
    "blower": "Volume moved by one turn of the blower's driven rotor",
    "primary": "Teeth of the primary drive from crank to gearbox, front:rear, or its ratio",
    "final_drive": "Turns of the gearbox's output for one turn of the driven wheels",
    "gears": "Ratios of the gearbox, first gear first, the value 1 for a single fixed gear",
    "tyre": "Size on the sidewall of the driven tyres",
    "seen_speed": "Top speed that was measured with the vehicle as described",
    "seen_gear": "The gear it was in, counted from 1",
}


def readings(question: Question, text: str) -> list[Values]:
    """What an answer may mean, in the order in which it is tried."""
    return (question.read or plain)(question.address, text)


def document(values: Values) -> dict[str, Any]:
    """The document of a file in which these values stand at their addresses."""
    made: dict[str, Any] = {}
    for address, value in {**START, **values}.items():
        put(made, address, value)
    return made


def put(made: dict[str, Any], address: str, value: Any) -> None:
    first, *rest = address.split("/")
    if not rest:
        made[first] = value
    elif first in ("charge_path", "driveline"):
        part(made.setdefault(first, []), rest[0])[rest[1]] = value
    elif first == "observed":
        (seen,) = made.setdefault(first, [{"what": "top speed"}])
        seen[rest[1]] = value
    else:
        made.setdefault(first, {})[rest[0]] = value


def part(parts: list[dict[str, Any]], name: str) -> dict[str, Any]:
    found = next((one for one in parts if one["id"] == name), None)
    if found is None:
        found = {"id": name, "kind": KINDS[name]}
        parts.append(found)
    return found


def stand_in(skipped: Values) -> Values:
    """The examples of everything needed, so that an answer can be judged before the next."""
    made: Values = {}
    for question in QUESTIONS:
        if question.needed and not question.after:
            made |= _example(question)
    clash = {"day/altitude": "day/pressure", "day/pressure": "day/altitude"}
    for address in skipped:
        made.pop(clash.get(address, ""), None)
    return made


def _example(question: Question) -> Values:
    return readings(question, question.example)[-1 if question.name == "tyre" else 0]


def trial(values: Values, without: str = "") -> str:
    """The text of a file with these values, and examples wherever something else is needed."""
    own = dict(values)
    if "charge_path/blower/displacement" in own:
        own.setdefault("charge_path/blower/drive_ratio", 1)
    whole = {**stand_in(own), **own}
    whole.pop(without, None)
    return json.dumps(document(whole), ensure_ascii=False)


def asked(question: Question) -> str:
    """The one line that is printed, made from the row."""
    node = row(document(_all_examples()), question.address)
    says, described = sentence(node), node["description"]
    says = ASKED.get(question.name, says)
    bounds = re.search(r"\. (From [^(]*?)\.(?= |$)", described)
    usual = re.search(r"(Usually .*)", described)
    words = f"{question.name}: {says}"
    if bounds and question.name != "primary":  # a ratio is no number of teeth
        words += f", {bounds[1][0].lower()}{bounds[1][1:]}"
    words += f"; such as {question.example}"
    words += f", or {question.also}" if question.also else ""
    if question.needed:
        return words + ". Needed."
    default = f"{usual[1][0].lower()}{usual[1][1:]}" if usual else "left out"
    return f"{words}. Empty: {(question.empty or default).rstrip('.')}."


def _all_examples() -> Values:
    made: Values = {}
    for question in QUESTIONS:
        made |= _example(question)
    made.pop("driveline/primary/ratio", None)
    return made
