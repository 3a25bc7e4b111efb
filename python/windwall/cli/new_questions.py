"""The questions of `windwall new`, and how an answer may be meant. What is asked, its range and its
usual value come from the rows; here stands only where an answer belongs.
"""

from __future__ import annotations

import json
import re
from math import hypot
from typing import Any

from windwall.cli.new_question import Question
from windwall.cli.new_readings import (
    Values,
    chain,
    ethanol,
    figure_at_a_speed,
    gears,
    heading,
    height_or_barometer,
    number,
    plain,
    ratio_or_chain,
    research_and_motor,
)
from windwall.cli.new_tyre import size_or_radius
from windwall.cli.new_upgrades import MENU, UPGRADES, menu_of
from windwall.cli.new_words import one_of
from windwall.cli.stock_engine import DISPLACEMENT, STOCK_RATIO, as_answered
from windwall.errors import ScenarioError
from windwall.scenario.data import ScenarioData
from windwall.scenario.inputs import row

__all__ = [
    "BY_DISPLACEMENT", "DRAG_COEFFICIENT", "DRAG_SIGMA", "FRONTAL_SHARE", "FRONTAL_SIGMA", "KINDS",
    "QUESTIONS", "SIDES", "START", "all_examples", "area_or_sides", "displacement",
    "document", "example", "length", "part", "put", "readings", "si", "stand_in", "trial", "word",
]  # fmt: skip

SIDES = re.compile(r"\s*[x\N{MULTIPLICATION SIGN}*]\s*")
# B. Bowling, Air Drag Coefficients and Frontal Area Calculation: 85 percent for cars; a small open
# car is judged to lie between a sedan, 0.34 to 0.50, and a motorcycle, 0.50 to 1.00.
FRONTAL_SHARE, FRONTAL_SIGMA = 0.85, 0.05  # of height times width
DRAG_COEFFICIENT, DRAG_SIGMA = 0.55, 0.12
BY_DISPLACEMENT = "by the displacement, where that and the other one are answered"


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
    """Metres; a height above sea level is any length."""
    return si("day/altitude", text, "body/drag_area")


def si(address: str, text: Any, told_at: str) -> float:
    """A quantity of one address read as a file would be; problems are told at another."""
    try:
        return ScenarioData.read(trial({address: text})).get(address)
    except ScenarioError as wrong:
        told = [one._replace(address=told_at) for one in wrong.problems]
        raise ScenarioError(told) from None


def displacement(address: str, text: str) -> list[Values]:
    """Cubic metres of all cylinders."""
    return [{address: si("charge_path/blower/displacement", text, "displacement")}]


def word(address: str, text: str) -> list[Values]:
    """A word of a closed list, or what is close enough to one."""
    words = row(document(all_examples()), address)["enum"]
    return [{address: one_of(address, words, text)}]


QUESTIONS = (
    Question("title", "title", "Airfield cyclecar", empty="no title", read=heading),
    Question("units", "units", "us", empty="metric", read=word),
    Question("cylinders", "engine/cylinders", "2", needed=True),
    Question(
        "displacement",
        DISPLACEMENT,
        "624 cm3",
        empty="by bore and stroke",
        read=displacement,
        row="charge_path/blower/displacement",
    ),
    Question("bore", "engine/bore", "76 mm", needed=True, empty=BY_DISPLACEMENT),
    Question("stroke", "engine/stroke", "68.8 mm", needed=True, empty=BY_DISPLACEMENT),
    Question(
        "compression_ratio", STOCK_RATIO, "8.0", needed=True, row="engine/rated/compression_ratio"
    ),
    Question("duty", "engine/design/duty", "work", empty="unknown", read=word),
    Question("chamber", "engine/design/chamber", "two_valve_wedge", empty="unknown", read=word),
    Question("cooling", "engine/design/cooling", "air", empty="unknown", read=word),
    Question("mixture", "engine/design/mixture", "carburettor", empty="unknown", read=word),
    Question("exhaust", "engine/design/exhaust", "muffled", empty="unknown", read=word),
    Question(
        "rated_torque",
        "engine/rated/torque",
        "43 N m at 2500 rpm",
        empty="not printed",
        read=figure_at_a_speed,
    ),
    Question(
        "rated_power",
        "engine/rated/power",
        "14.5 kW at 3600 rpm",
        empty="not printed",
        also="gross, 16 kW gross at 3600 rpm, where it was printed without silencer",
        read=figure_at_a_speed,
    ),
    Question(
        "maker_fuel",
        "engine/rated/research_octane",
        "91",
        empty="not printed",
        also="with the motor octane number, 91/83",
        read=research_and_motor,
    ),
    Question("compression_now", "engine/compression_ratio", "7.6", empty="as in the stock engine"),
    Question("rev_limit", "engine/rev_limit", "5000 rpm", needed=True),
    Question("throttle", "charge_path/throttle/bore", "30 mm", needed=True),
    Question("blower", "charge_path/blower/displacement", "230 cm3", empty="no blower"),
    Question("blower_ratio", "charge_path/blower/drive_ratio", "1.35", needed=True, after="blower"),
    Question(
        "fuel",
        "fuel/research_octane",
        "95",
        also="with the motor octane number, 95/85",
        read=research_and_motor,
    ),
    Question("ethanol", "fuel/ethanol", "10 %", also="as the pump calls it, E10", read=ethanol),
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
    Question(
        "seen_knock",
        "observed/1/knock",
        "not heard",
        empty="nobody listened",
        after="seen_speed",
        read=word,
    ),
    *UPGRADES,
)
KINDS = {
    "throttle": "throttle",
    "blower": "positive_blower",
    "gearbox": "gearbox",
    "primary": "chain",
    "final_drive": "final_drive",
}
START = {"format": "windwall-scenario/2", "engine/kind": "cylinder"}


def readings(question: Question, text: str) -> list[Values]:
    """What an answer may mean, in the order in which it is tried."""
    return (question.read or plain)(question.address, text)


def document(values: Values) -> dict[str, Any]:
    """The document of a file in which these values stand at their addresses."""
    made: dict[str, Any] = {}
    told = as_answered(values, si)
    for address, value in {**START, **told}.items():
        if not address.startswith(f"{MENU}/"):
            put(made, address, value)
    return made | ({MENU: menu} if (menu := menu_of(told)) else {})


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
        put(made.setdefault(first, {}), "/".join(rest), value)


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
            made |= example(question)
    clash = {"day/altitude": "day/pressure", "day/pressure": "day/altitude"}
    clash |= {DISPLACEMENT: "engine/bore"}  # which follows from it, or is answered
    for address in skipped:
        made.pop(clash.get(address, ""), None)
    return made


def example(question: Question) -> Values:
    return readings(question, question.example)[-1 if question.name == "tyre" else 0]


def trial(values: Values, without: str = "") -> str:
    """The text of a file with these values, and examples wherever something else is needed."""
    own = dict(values)
    if "charge_path/blower/displacement" in own:
        own.setdefault("charge_path/blower/drive_ratio", 1)
    whole = {**stand_in(own), **own}
    whole.pop(without, None)
    return json.dumps(document(whole), ensure_ascii=False)


def all_examples() -> Values:
    made: Values = {}
    for question in QUESTIONS:
        if question.read is word:  # which asks for them itself
            made[question.address] = question.example
        elif question.address != DISPLACEMENT:
            made |= example(question)
    made.pop("driveline/primary/ratio", None)
    return made
