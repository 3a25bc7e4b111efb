"""How far it is to a knock margin of nothing, in what a builder can turn."""

from __future__ import annotations

from collections.abc import Iterator

from windwall.quantities.measures import ANGLE, BOOST, TEMPERATURE_DIFFERENCE
from windwall.report.text_layout import Blocks, paragraph, section, table
from windwall.results.knock import held_late
from windwall.results.top_speed import TopSpeed

__all__ = ["OUT_OF_REACH", "margin_lines", "rows"]

OUT_OF_REACH = "not used up within the range searched"


def margin_lines(answer: TopSpeed) -> Blocks:
    """What is left, what that was found by, and what was held."""
    if answer.knock is None:
        return []
    retard = ANGLE.text(held_late(answer.knock.retard), answer.scenario_info.system, 2)
    held = (
        "Each by solving again until the middle of the knock band is used up, with engine and road "
        f"speed, throttle and the spark ({retard} late) held but for what the line names; a minus "
        "is too far already. The band is no narrower for it: none of this is to be spent."
    )
    heading = "Until nothing is left of the knock margin"
    return section(heading, table(rows(answer), left=(0, 1)) + paragraph(held))


def rows(answer: TopSpeed) -> Iterator[tuple[str, str]]:
    left, system = answer.margins, answer.scenario_info.system
    if left.blower:
        boost = OUT_OF_REACH
        if left.boost is not None:
            more = f"{BOOST.change(left.boost, system)} {BOOST.shown(system)}"
            boost = f"{more}, at a drive ratio of {left.drive_ratio:.3g}"
        yield f"boost, by driving {left.blower} faster", boost
    warmer = OUT_OF_REACH
    if left.charge_temperature is not None:
        change = TEMPERATURE_DIFFERENCE.change(left.charge_temperature, system)
        warmer = f"{change} {TEMPERATURE_DIFFERENCE.shown(system)}"
    yield "charge temperature at the manifold", warmer
    earlier = OUT_OF_REACH
    if left.spark is not None:
        earlier = f"{ANGLE.change(left.spark, system)} {ANGLE.shown(system)} of advance"
    yield "spark", earlier
