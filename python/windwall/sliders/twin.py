"""The answer at a few places of each slider, for whoever has none: on paper, in a terminal, or
where anywidget is not installed.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from windwall.errors import ScenarioError
from windwall.quantities.measures import SPEED
from windwall.report.live.slider import Slider
from windwall.report.text_layout import Bars, Blocks, Title, paragraph, section, table
from windwall.results.views import Readable, content
from windwall.scenario.data import ScenarioData
from windwall.sliders.told import told
from windwall.study.solve import top_speed

__all__ = [
    "ALONE", "HEAD", "NO_ANSWER", "PLACES", "REFUSED", "WHY", "Found", "Places", "Row",
    "places_content", "positions",
]  # fmt: skip

PLACES = 5  # of each slider, its ends among them
WHY = "Sliders need anywidget: pip install 'windwall[sliders]', then start the notebook anew."
HEAD = ("", "value", "speed, {unit}", "change")
ALONE = "Each moved alone, everything else as the file says."
REFUSED = "refused"
NO_ANSWER = "no answer"
Found = tuple[str, str, float | str]  # the slider, where it stands, the speed or a word
Row = tuple[str, str, str, str]


class Places(Readable):
    """The same question as `explore` answers, at a few places; `scenario` is that of the file."""

    def __init__(
        self, scenario: ScenarioData, sliders: Sequence[Slider], show: Sequence[str], why: str = WHY
    ) -> None:
        self.scenario = scenario
        self.sliders = tuple(sliders)
        self.show = tuple(show)
        self.why = why


@content.register(Places)
def places_content(places: Places) -> Blocks:
    """The answer of the file, and what each slider makes of the speed."""
    scenario = places.scenario
    answer = top_speed(scenario)
    base = answer.goal_speed if answer.answered else None
    head = tuple(one.format(unit=SPEED.shown(scenario.system)) for one in HEAD)
    found = [row for one in places.sliders for row in _found(scenario, one)]
    rows = table(
        [_row(*one, base, scenario.system) for one in found], head=head, bars=_bars(found, base)
    )
    blocks = [
        Title(scenario.name),
        *paragraph(places.why),
        *told(answer, answer, places.show, moves=False),
    ]
    return blocks + section("What each makes of the speed", paragraph(ALONE) + rows)


def _found(scenario: ScenarioData, one: Slider) -> Iterator[Found]:
    for at, k in enumerate(positions(one)):
        yield one.label if at == 0 else "", one.text(k), _speed(scenario, one, k)


def _row(label: str, value: str, speed: float | str, base: float | None, system: str) -> Row:
    if isinstance(speed, str):
        return label, value, speed, "-"
    change = "-" if base is None else SPEED.change(speed - base, system)
    return label, value, f"{SPEED.value(speed, system):.1f}", change


def _bars(found: Sequence[Found], base: float | None) -> Bars:
    changes = [
        None if base is None or isinstance(speed, str) else speed - base for *_, speed in found
    ]
    return Bars("", tuple(None if one is None else (one, one, one) for one in changes))


def positions(one: Slider) -> list[int]:
    """Both ends, the file's value, and some in between."""
    step = (one.high - one.low) / (PLACES - 1)
    even = (round(one.low + at * step) for at in range(PLACES))
    return sorted({*even, 0})


def _speed(scenario: ScenarioData, one: Slider, k: int) -> float | str:
    try:
        found = top_speed(scenario.set({one.address: one.given(k)}) if k else scenario, brief=True)
    except ScenarioError:
        return REFUSED
    return found.goal_speed if found.answered else NO_ANSWER
