"""The answer at a few places of each slider, for whoever has none: on paper, in a terminal, or
where ipywidgets is not installed.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from windwall.errors import ScenarioError
from windwall.quantities.measures import SPEED
from windwall.report.live.slider import Slider
from windwall.report.text_layout import Blocks, Title, lead, paragraph, section, table
from windwall.results.views import Readable, content
from windwall.scenario.data import ScenarioData
from windwall.sliders.told import told
from windwall.study.solve import top_speed

PLACES = 5  # of each slider, its ends among them
WHY = "Sliders need ipywidgets: pip install 'windwall[sliders]', then start the notebook anew."
HEAD = ("", "value", "speed, {unit}", "change")
ALONE = "Each moved alone, everything else as the file says."
REFUSED = "refused"
NO_ANSWER = "no answer"


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
    unit = SPEED.shown(scenario.system)
    rows = [row for one in places.sliders for row in _rows(scenario, one, base)]
    head = tuple(one.format(unit=unit) for one in HEAD)
    blocks = [Title(scenario.title or scenario.source), *told(answer, answer, places.show)]
    blocks += section("What each makes of the speed", paragraph(ALONE) + table(rows, (0,), head))
    return blocks + lead(places.why)


def _rows(
    scenario: ScenarioData, one: Slider, base: float | None
) -> Iterator[tuple[str, str, str, str]]:
    for at, k in enumerate(positions(one)):
        speed = _speed(scenario, one, k)
        change = "-"
        if isinstance(speed, float) and base is not None:
            change = SPEED.change(speed - base, scenario.system)
        shown = f"{SPEED.value(speed, scenario.system):.1f}" if isinstance(speed, float) else speed
        yield one.label if at == 0 else "", one.text(k), shown, change


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
