"""What is told of a moved vehicle, beside what the file says of it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from windwall.quantities.measures import SPEED
from windwall.report.live.slider import Slider
from windwall.report.text.common import caution_lines
from windwall.report.text.limits import limits_table, result_measure
from windwall.report.text_layout import Blocks, headline, paragraph, section, table
from windwall.results.record import result_row
from windwall.results.top_speed import TopSpeed

__all__ = [
    "ANYWHERE", "CLEAN", "DECIMALS", "HEAD", "NOT_THERE", "NO_SPEED", "ROAD_END", "moved_words",
    "told",
]  # fmt: skip

HEAD = ("", "file", "now", "change")
NO_SPEED = "no answer"
NOT_THERE = "-"
DECIMALS = 2  # of a change; what is below them prints as 0
ROAD_END, ANYWHERE = "speed at the end of the road", "speed"
CLEAN = "It passes no limit that is known, and nothing else is to be said about it."


def told(file: TopSpeed, now: TopSpeed, show: Sequence[str], moves: bool = True) -> Blocks:
    """The sentence, the numbers, and whatever is to be minded; what does not move has no change."""
    blocks = headline(now.sentence)
    columns = len(HEAD) if moves else 2
    rows = [_speed(file, now), *_numbers(file, now, show)]
    blocks += table([row[:columns] for row in rows], head=HEAD[:columns])
    minded = caution_lines(now)
    if now.answered:
        minded = limits_table(now.passed, now.scenario_info) + minded
    return blocks + (minded or paragraph(CLEAN))


def moved_words(sliders: Sequence[Slider], at: Sequence[int]) -> Blocks:
    """What stands elsewhere than in the file."""
    rows = [
        (one.label, one.stated, one.text(k)) for one, k in zip(sliders, at, strict=True) if k != 0
    ]
    return section("Moved", table(rows, head=("", "file", "now")))


def _speed(file: TopSpeed, now: TopSpeed) -> tuple[str, ...]:
    system = file.scenario_info.system
    speeds = [one.goal_speed if one.answered else None for one in (file, now)]
    cells = (
        NO_SPEED if one is None else f"{SPEED.value(one, system):.1f} {SPEED.shown(system)}"
        for one in speeds
    )
    before, after = speeds
    change = NOT_THERE
    if before is not None and after is not None:
        change = SPEED.change(after - before, system)
    return ROAD_END if file.scenario_info.run_up else ANYWHERE, *cells, change


def _numbers(
    file: TopSpeed, now: TopSpeed, show: Sequence[str]
) -> Iterator[tuple[str, str, str, str]]:
    system = file.scenario_info.system
    for address in show:
        before, after = (_read(one, address) for one in (file, now))
        measure = result_measure(address)
        cells = [NOT_THERE if x is None else measure.short(x, system) for x in (before, after)]
        change = NOT_THERE
        if before is not None and after is not None:
            change = measure.spread.change(after - before, system, DECIMALS)
        yield result_row(address)["sentence"], *cells, change


def _read(answer: TopSpeed, address: str) -> float | None:
    """None where there is no answer, or a part that is not there has none."""
    if not answer.answered:
        return None
    found = answer.point
    for key in address.split("/"):
        found = found.get(key) if found is not None else None
    return found
