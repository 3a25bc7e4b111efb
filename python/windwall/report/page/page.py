"""The page as a whole: what was found, told in one file that asks for nothing from elsewhere."""

from __future__ import annotations

import os
from functools import cache
from importlib.resources import files as resources
from pathlib import Path
from typing import TYPE_CHECKING, Any

from windwall import _core
from windwall.report.html.fragment import body
from windwall.report.html.style import bars
from windwall.report.html.words import words
from windwall.report.live import live_block
from windwall.report.page.findings import Findings
from windwall.report.page.head import Head, head
from windwall.report.page.parts import Part, parts
from windwall.report.text.safety_notes import FIRST_STEPS, NOT_MODELLED, WHO_DECIDES
from windwall.report.text_layout import Blocks
from windwall.report.wording.scenario import conditions
from windwall.scenario import files
from windwall.scenario.data import ScenarioData
from windwall.scenario.embedded import embedded
from windwall.study.progress import Progress

if TYPE_CHECKING:
    import jinja2

__all__ = [
    "SENTENCES", "file_name", "html_of", "named", "own", "page", "shown", "shown_head", "told",
    "write_page",
]  # fmt: skip

SENTENCES = ("first", "likely", "aside", "doubt")  # of the head


def page(
    scenario: ScenarioData,
    draws: int = 0,
    live: bool = True,
    progress: bool | Progress | None = None,
    budget: float | str | None = None,
) -> str:
    """One HTML page about a scenario: how fast, why no faster, where the watts go, what to buy, and
    how well all of that is known, with sliders (`live`) and the scenario inside.

    With `draws`, a power of two, the ranking says how sure it is; with a `budget` such as
    "500 EUR" it names no set that costs more. Nothing is fetched by the page;
    whatever the file says is escaped.
    """
    return _rendered(Findings(scenario, draws, progress, budget), live)


def write_page(
    scenario: ScenarioData,
    path: str | os.PathLike[str],
    draws: int = 0,
    budget: float | str | None = None,
) -> bool:
    """The same, written to a file; whether the vehicle has an answer."""
    findings = Findings(scenario, draws, budget=budget)
    files.write(path, _rendered(findings, live=True))
    return findings.best.answered


def _rendered(findings: Findings, live: bool) -> str:
    return _template().render(**told(findings, live))


def told(findings: Findings, live: bool) -> dict[str, Any]:
    """What the template puts into its places; elements are marked as such."""
    from markupsafe import Markup

    scenario, best = findings.scenario, findings.best
    return {
        "title": named(scenario),
        "asked": conditions(best.scenario_info),
        "notes": scenario.document().get("notes", "").splitlines(),
        **shown_head(head(findings)),
        "parts": [shown(one) for one in parts(findings)],
        "live": Markup(live_block(scenario)) if live and best.answered else "",
        "scenario": Markup(embedded(scenario.text())),
        "care": [FIRST_STEPS, WHO_DECIDES, NOT_MODELLED],
        "name": file_name(scenario.title),
        "digest": scenario.digest[:16],
        "version": _core.build_info()["windwall"],
        "css": Markup(own("page.css") + bars("main")),
        "script": Markup(own("page.js")),
    }


def shown_head(first: Head) -> dict[str, Any]:
    """What comes before all parts as elements."""
    from markupsafe import Markup

    said = {key: Markup(words(getattr(first, key))) for key in SENTENCES}
    laid_out = {"answer": Markup(html_of(first.blocks)), "behind": Markup(html_of(first.behind))}
    return said | laid_out | {"is_far": first.is_far}


def named(scenario: ScenarioData) -> str:
    """Its name; a text that has no title and came from no file has none."""
    is_file = bool(Path(scenario.source).suffix)
    return scenario.name if scenario.title or is_file else "A vehicle"


def shown(part: Part) -> dict[str, Any]:
    """A part as elements."""
    from markupsafe import Markup

    return {
        "heading": part.heading,
        "look": part.look or ("beside" if len(part.drawn) == 1 else ""),
        "said": Markup(html_of(part.blocks)),
        "drawn": [Markup(one) for one in part.drawn],
        "above": Markup(html_of(part.above)),
        "below": Markup(html_of(part.below)),
        "folded": [(what, Markup(html_of(blocks))) for what, blocks in part.folded],
    }


def html_of(blocks: Blocks) -> str:
    """Blocks below the headings of the page."""
    return body(blocks).replace("<h4>", "<h3>").replace("</h4>", "</h3>")


def file_name(title: str) -> str:
    """Of the scenario when it is saved from the page."""
    words = "".join(one if one.isalnum() else " " for one in title.lower()).split()
    return "_".join(words)[:60] or "scenario"


def own(name: str) -> str:
    """The text of a file that lies beside this one."""
    return resources("windwall.report.page").joinpath(name).read_text("utf-8")


@cache
def _template() -> jinja2.Template:
    import jinja2

    made = jinja2.Environment(
        autoescape=True, undefined=jinja2.StrictUndefined, trim_blocks=True, lstrip_blocks=True
    )
    return made.from_string(own("page.html"))
