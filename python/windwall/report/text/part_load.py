"""The answer to "which pedal holds this"."""

from __future__ import annotations

from windwall.quantities.measures import ENGINE_SPEED, SPEED
from windwall.report.text.point import held_text
from windwall.report.text_layout import Blocks
from windwall.report.wording.scenario import conditions
from windwall.results.part_load import PartLoad
from windwall.results.views import content

__all__ = ["part_load_text", "question"]


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
