"""The answer to "what does the engine do, held here"."""

from __future__ import annotations

from typing import TYPE_CHECKING

from windwall.layout import paragraph, section, table
from windwall.measures import ANGLE, ENGINE_SPEED, SHARE, SPEED
from windwall.texts.care import care
from windwall.texts.common import caution_lines, head, knock_lines, station_table

if TYPE_CHECKING:
    from windwall.held_point import HeldPoint


def point_text(answer: HeldPoint) -> str:
    """Everything worth reading about one operating point."""
    asked = answer._asked
    lines = head(asked, question(answer))
    if not answer.answered:
        lines += section(f"No answer ({answer.status})", paragraph(answer.sentence))
        return "\n".join([*lines, *caution_lines(answer.cautions), *care()])
    lines += ["", *paragraph(answer.sentence)]
    lines += section("Engine", table(rows(answer)))
    lines += knock_lines(answer.knock_band, consequence(answer))
    lines += station_table(answer.point, asked.system)
    lines += caution_lines(answer.cautions)
    return "\n".join([*lines, *care()])


def question(answer: HeldPoint) -> str:
    numbers, system = answer._numbers, answer._asked.system
    return (
        f"the engine held at {ENGINE_SPEED.text(numbers['engine_speed'], system, 4)}, "
        f"throttle {SHARE.text(numbers['opening'], system)} open, cooling air at "
        f"{SPEED.text(numbers['road_speed'], system)}; {answer._asked.conditions}."
    )


def rows(answer: HeldPoint) -> list[tuple[str, str]]:
    """What the rows of the engine and of the charge it draws say."""
    return [
        (record.sentence(key), record.measure(key).short(value, answer._asked.system))
        for record in (answer.point.engine, answer.point.manifold, answer.point.injector or {})
        for key, value in record.items()
    ]


def consequence(answer: HeldPoint) -> str:
    knock = answer.point.knock
    retard = knock.retard if knock else 0
    if retard <= 0:
        return ""
    return (
        f"The spark is held {ANGLE.text(retard, answer._asked.system, 2)} later than the one of "
        "best torque: that costs power and heats exhaust and head."
    )
