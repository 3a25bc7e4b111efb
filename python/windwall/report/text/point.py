"""The answer to "what does the engine do, held here"."""

from __future__ import annotations

from windwall.quantities.measures import ENGINE_SPEED, SHARE, SPEED
from windwall.report.text.common import caution_lines, head, station_table
from windwall.report.text.knock import knock_lines
from windwall.report.text.safety_notes import safety_notes
from windwall.report.text_layout import Blocks, headline, paragraph, section, table
from windwall.report.wording.scenario import conditions
from windwall.results.operating_point import OperatingPoint
from windwall.results.views import content

__all__ = ["held_text", "point_text", "question", "rows"]


@content.register(OperatingPoint)
def point_text(answer: OperatingPoint) -> Blocks:
    """Everything worth reading about one operating point."""
    return held_text(answer, question(answer))


def held_text(answer: OperatingPoint, asked: str) -> Blocks:
    """The same of whatever the engine is held by."""
    info = answer.scenario_info
    lines = head(info, asked)
    if not answer.answered:
        lines += section("No answer", paragraph(answer.sentence))
        return [*lines, *caution_lines(answer), *safety_notes()]
    lines += ["", *headline(answer.sentence)]
    lines += section("Engine", table(rows(answer)))
    lines += knock_lines(answer)
    lines += station_table(answer.point, info.system)
    lines += caution_lines(answer)
    return [*lines, *safety_notes()]


def question(answer: OperatingPoint) -> str:
    info = answer.scenario_info
    return (
        f"the engine held at {ENGINE_SPEED.text(answer.engine_speed, info.system, 4)}, "
        f"throttle {SHARE.text(answer.opening, info.system)} open, cooling air at "
        f"{SPEED.text(answer.road_speed, info.system)}; {conditions(info)}."
    )


def rows(answer: OperatingPoint) -> list[tuple[str, str]]:
    """What the rows of the engine and of the charge it draws say."""
    return [
        (record.sentence(key), record.measure(key).short(value, answer.scenario_info.system))
        for record in (answer.point.engine, answer.point.manifold, answer.point.injector or {})
        for key, value in record.items()
        if value is not None
    ]
