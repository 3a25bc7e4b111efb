"""The answer to "which pedal holds this": one in full, several in a line each."""

from __future__ import annotations

from collections.abc import Sequence

from windwall.quantities.measures import ENGINE_SPEED, FUEL, SHARE, SPEED, TEMPERATURE
from windwall.report.text.common import cautions_once, head
from windwall.report.text.point import held_text
from windwall.report.text.safety_notes import safety_notes
from windwall.report.text_layout import Blocks, bullet, paragraph, section, table
from windwall.report.wording.part_load import each
from windwall.report.wording.scenario import conditions
from windwall.results.part_load import PartLoad
from windwall.results.views import content

__all__ = ["GEARED", "MORE", "NO_PEDAL", "Row", "part_load_text", "question", "several_text"]

NO_PEDAL = "no pedal"
GEARED = {True: "gear", False: "belt"}
MORE = "One speed alone is told in full: the charge, knock and what to know of it."
Row = tuple[str, ...]


@content.register(PartLoad)
def part_load_text(answer: PartLoad) -> Blocks:
    """Everything worth reading about it."""
    return held_text(answer, question(answer))


def question(answer: PartLoad) -> str:
    info = answer.scenario_info
    if answer.idles:
        engine_speed = ENGINE_SPEED.text(answer["engine_speed"], info.system, 4)
        what = f"the engine idling at {engine_speed}, the vehicle standing"
    else:
        what = f"the pedal that holds {SPEED.text(answer['road_speed'], info.system)}"
    return f"{what}; {conditions(info)}."


def several_text(answers: Sequence[PartLoad]) -> Blocks:
    """One line a speed, and below why no pedal holds those that none does."""
    info = answers[0].scenario_info
    lines = head(info, f"the pedal that holds each speed; {conditions(info)}.")
    names = ("", GEARED[info.gears > 1], "pedal", "engine", "fuel", "", "charge", "head")
    lines += ["", *table(map(_row, answers), left=(), head=names)]
    none = [line for one in answers if not one.answered for line in bullet(one.sentence)]
    lines += section("Without a pedal", none)
    lines += cautions_once(answers)
    return [*lines, *paragraph(MORE), *safety_notes()]


def _geared(answer: PartLoad) -> str:
    belt = answer.point.get("variator")
    if answer.scenario_info.gears > 1:
        return str(answer.gear)
    return f"{belt.ratio:#.3g} to 1" if belt else ""


def _row(answer: PartLoad) -> Row:
    system = answer.scenario_info.system
    speed = SPEED.text(answer["road_speed"], system)
    if not answer.answered:
        return speed, NO_PEDAL
    engine = answer.point.engine
    return (
        speed,
        _geared(answer),
        SHARE.text(answer.opening, system, 2),
        ENGINE_SPEED.text(answer.engine_speed, system, 4),
        FUEL.text(answer.petrol, system, 2),
        each(answer),
        TEMPERATURE.text(answer.charge_temperature, system),
        TEMPERATURE.text(engine.head_temperature, system),
    )
