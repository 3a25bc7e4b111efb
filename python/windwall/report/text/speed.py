"""The answer to "how fast, and why no faster"."""

from __future__ import annotations

from collections.abc import Iterator
from functools import partial

from windwall.errors import NoAnswer
from windwall.quantities.measures import (
    ENERGY,
    ENGINE_SPEED,
    POWER,
    SHARE,
    SPEED,
    TEMPERATURE,
    TEMPERATURE_DIFFERENCE,
    TIME,
)
from windwall.report.text.account import account_table
from windwall.report.text.common import caution_lines, driven_lines, head, pairs, station_table
from windwall.report.text.disagreement import contradicts_speed
from windwall.report.text.drawn import drawn_speed_lines
from windwall.report.text.knock import knock_lines
from windwall.report.text.limits import ahead_lines, limits_table, unrated_lines
from windwall.report.text.margins import margin_lines
from windwall.report.text.observed import observed_lines
from windwall.report.text.safety_notes import safety_notes
from windwall.report.text.stock_engine import stock_engine_lines
from windwall.report.text_layout import Bars, Blocks, bullet, paragraph, section, table
from windwall.report.wording.names import by_name, change_in
from windwall.report.wording.scenario import conditions, in_gear, road_length
from windwall.report.wording.top_speed import beyond_plate, gearing, limit_word, to_a_tenth
from windwall.results.diagnosis import Diagnosis
from windwall.results.drawn import DrawnSpeed
from windwall.results.smaller_jet import SmallerJet
from windwall.results.standing_start import Shortfall
from windwall.results.top_speed import TopSpeed
from windwall.results.views import content

__all__ = [
    "FASTER", "MEAN_SHOWS", "NO_GAIN", "exhaust", "faster_than_seen", "gains", "reasons",
    "speed_text", "speeds",
]  # fmt: skip

MEAN_SHOWS = (50, 100)  # K less, of a probe behind the port: common practice, no source
FASTER = (
    "This is faster than the {seen} that was observed. The vehicle would carry {carries}, and its "
    "brakes would have to take it."
)
NO_GAIN = (
    "{speed} is no gain on the {seen} that was observed: the vehicle is the same, and the model "
    "disagrees with what was seen. Were the model right, it would carry {carries}, and its brakes "
    "would have to take it."
)


@content.register(TopSpeed)
def speed_text(
    answer: TopSpeed,
    diagnosis: Diagnosis | None = None,
    drawn: DrawnSpeed | None = None,
    driven: Shortfall | NoAnswer | None = None,
    sprays: tuple[SmallerJet, ...] = (),
) -> Blocks:
    """Everything worth reading about a top speed, with what a driven run and smaller jets make of
    it.
    """
    info = answer.scenario_info
    lines = head(info, f"top speed at full throttle; {conditions(info)}.")
    if not answer.answered:
        lines += section("No answer", paragraph(answer.sentence))
        lines += caution_lines(answer)
        return [*lines, *safety_notes()]
    lines += stock_engine_lines(info)
    lines += observed_lines(info, diagnosis)
    lines += ["", *pairs(speeds(answer)), *drawn_speed_lines(drawn)]
    lines += driven_lines(driven)
    lines += section("Why it stops", reasons(answer))
    lines += limits_table(answer.passed, info)
    lines += knock_lines(answer)
    lines += section("Spray", [line for one in sprays for line in paragraph(one.sentence)])
    lines += margin_lines(answer)
    lines += account_table(answer.account("shaft"))
    lines += account_table(answer.account("heat"))
    lines += exhaust(answer)
    lines += station_table(answer.point, info.system)
    lines += gains(answer)
    lines += unrated_lines(answer.unrated)
    lines += caution_lines(answer)
    lines += faster_than_seen(answer, diagnosis)
    return [*lines, *safety_notes()]


def speeds(answer: TopSpeed) -> Iterator[tuple[str, str]]:
    """The speeds, the goal's first."""
    info = answer.scenario_info
    text = partial(to_a_tenth, system=info.system)
    if answer.status == "knock_limited":
        share = SHARE.text(answer.opening, info.system, 2)
        yield "throttle", f"{share} of its travel; flat out it would knock"
    run = answer.run_up
    if run:
        time = TIME.text(run.time, info.system)
        without_shifts = " with no time lost in shifts" if info.gears > 1 else ""
        yield (
            f"after {road_length(info)} from rest",
            f"{text(run.speed)}{in_gear(info, run.gear)}, in {time}{without_shifts}",
        )
        if info.gears > 1:
            yield "gear to start in", str(run.start_gear)
    where = ENGINE_SPEED.text(answer.engine_speed, info.system, 4)
    yield "balance speed", f"{text(answer.speed)}{gearing(answer)} at {where}"
    if info.goal_speed is not None:
        short = info.goal_speed - answer.goal_speed
        met = f"{text(short)} short" if short > 0 else "reached"
        yield "goal", f"{text(info.goal_speed)}: {met}"


def reasons(answer: TopSpeed) -> Blocks:
    """What binds, and what would bind next."""
    lines = paragraph(f"Limited by: {limit_word(answer)}.")
    lines += paragraph(answer.sentence)
    lines += paragraph(beyond_plate(answer)) + paragraph(answer.next_limit)
    return lines + ahead_lines(answer["ahead"], answer.scenario_info)


def exhaust(answer: TopSpeed) -> Blocks:
    """Where its temperature comes from, and what the account finds about it."""
    system = answer.scenario_info.system
    temperature = TEMPERATURE.text(answer.exhaust_temperature, system)
    total, *entries = (one.number for one in answer["heat"])
    degrees = TEMPERATURE_DIFFERENCE.shown(system)
    least, most = (f"{TEMPERATURE_DIFFERENCE.value(kelvin, system):.0f}" for kelvin in MEAN_SHOWS)
    gap = POWER.number(round(total - sum(entries), 1) + 0.0, system)
    return paragraph(
        f"The exhaust, at {temperature}, comes from the engine's own energy balance; a probe "
        f"behind the port, which reads the mean over time, shows {least} to {most} {degrees} "
        f"less. The account checks it: {gap} {POWER.shown(system)} of the fuel stand in no entry."
    )


def gains(answer: TopSpeed) -> Blocks:
    """What small changes are worth, each by solving again."""
    system = answer.scenario_info.system
    rows = [
        (
            change_in(one, system),
            "no answer" if one.number is None else SPEED.change(one.number, system, 2),
        )
        for one in answer.sensitivities
    ]
    heading = f"What a little is worth, {SPEED.shown(system)}"
    changes = by_name(answer.sensitivities).values()
    bars = Bars("", tuple(None if one is None else (one, one, one) for one in changes))
    return section(heading, table(rows, bars=bars))


def faster_than_seen(answer: TopSpeed, diagnosis: Diagnosis | None = None) -> Blocks:
    """What going faster than ever before asks of everything that is not modelled; where the same
    vehicle was seen to be much slower, that this is no gain.
    """
    info = answer.scenario_info
    seen = info.observed_speed
    if seen is None or answer.goal_speed <= seen:
        return []
    energy = ENERGY.text(0.5 * info.mass * answer.goal_speed**2, info.system)
    more = 100 * ((answer.goal_speed / seen) ** 2 - 1)
    said = NO_GAIN if contradicts_speed(diagnosis) else FASTER
    sentence = said.format(
        seen=SPEED.text(seen, info.system),
        speed=to_a_tenth(answer.goal_speed, info.system),
        carries=f"{energy}, {more:.0f} % more than then",
    )
    return section("Faster than seen so far", bullet(sentence))
