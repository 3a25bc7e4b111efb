"""The fragment of a page: sliders, their answer, and what answers them."""

from __future__ import annotations

import json
from collections.abc import Iterable, Mapping
from html import escape
from importlib.resources import files
from typing import Any

from windwall.report.live.baked import baked
from windwall.report.live.chosen import Span, sliders
from windwall.report.live.core import compiled_core
from windwall.report.live.slider import Slider
from windwall.report.live.words import limited, sentences, units
from windwall.scenario.data import ScenarioData
from windwall.scenario.embedded import without_markup
from windwall.scenario.info import scenario_info

__all__ = [
    "PARTS", "SCRIPTS", "SHORT_OF_CORE", "WAITING", "as_data", "content", "fragment", "live_block",
    "own", "row",
]  # fmt: skip

SCRIPTS = ("numbers.js", "baked.js", "core.js", "answer.js", "block.js")
SHORT_OF_CORE = 0.5  # of the way of a slider: between far positions nothing is known well
PARTS = {
    "exact": "The numbers are those of windwall itself, which runs inside this page.",
    "baked": "Answers were worked out beforehand for some positions of each slider; between them "
    "the page interpolates, and says by how much it was off where that was tried. Save the moved "
    "scenario and ask windwall for the exact answer.",
}


def live_block(
    scenario: ScenarioData, addresses: Iterable[str] | Mapping[str, Span] | None = None
) -> str:
    """An HTML fragment with sliders for these inputs of a scenario, and an answer that follows
    them: the compiled core inside it, or without one, answers worked out here and interpolated.

    Without addresses it takes blower drive, gearing, mass, drag area and the day; a mapping gives
    an address its span, `{"body/mass": ("250 kg", "400 kg")}`, or None for the usual one. Raises
    `ScenarioError` for an address that the scenario does not have.
    """
    core = compiled_core()
    moved = sliders(scenario, addresses)
    if not core:
        moved = [near for one in moved if (near := one.nearer(SHORT_OF_CORE)).low < near.high]
    data = content(scenario, moved)
    data["core" if core else "baked"] = core or baked(scenario, moved)
    return fragment(moved, data, PARTS["exact" if core else "baked"])


def content(scenario: ScenarioData, moved: list[Slider]) -> dict[str, Any]:
    """What the scripts know of the scenario."""
    info = scenario_info(scenario)
    return {
        "title": scenario.title,
        "scenario": scenario.text(),
        "sliders": [one._asdict() for one in moved],
        "goal": info.goal_speed,
        "gears": info.gears,
        "units": units(info.system),
        "limited": limited(scenario.limits, info.system),
        "words": sentences(info),
    }


def fragment(moved: list[Slider], data: dict[str, Any], how: str) -> str:
    """The markup with style, data and scripts inside; nothing is fetched."""
    rows = "\n".join(row(at, one) for at, one in enumerate(moved))
    scripts = "\n".join(own(name) for name in SCRIPTS)
    return f"""<section class="windwall-live" aria-label="Sliders">
<style>{own("live.css")}</style>
<div class="sliders" role="group" aria-label="What to move">
{rows}
<p><button type="button" class="save">Save as a scenario file</button>
<button type="button" class="reset-all" hidden>Reset all</button></p>
</div>
<div class="answer">
<p class="headline" aria-live="polite">{escape(WAITING)}</p>
<dl></dl>
<p class="how">{escape(how)}</p>
</div>
<script type="application/json">{as_data(data)}</script>
<script>(() => {{
"use strict";
{scripts}
}})();</script>
</section>
"""


WAITING = "The sliders need a browser that runs scripts."


def row(at: int, one: Slider) -> str:
    """A labelled range with its number and its way back."""
    known = f" {one.hint}" if one.hint else ""
    return f"""<div class="slider"><label><span>{escape(one.label)}</span>
<input type="range" min="{one.low}" max="{one.high}" step="1" value="0" \
aria-valuetext="{escape(one.stated)}"></label>
<output>{escape(one.stated)}</output>
<small>file: {escape(one.stated + known)}</small>
<button type="button" class="reset" aria-label="{escape("Reset " + one.label)}" \
hidden>Reset</button>
</div>"""


def own(name: str) -> str:
    """The text of a file that lies beside this one."""
    return files("windwall.report.live").joinpath(name).read_text("utf-8").strip()


def as_data(data: dict[str, Any]) -> str:
    """As an element of a page holds it."""
    return without_markup(
        json.dumps(data, ensure_ascii=False, separators=(",", ":"), allow_nan=False)
    )
