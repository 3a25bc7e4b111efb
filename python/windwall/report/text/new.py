"""What is said before the first question of `windwall new` and after the last."""

from __future__ import annotations

import shlex

from windwall.quantities.measures import SPEED
from windwall.report.text.observed import contradiction
from windwall.report.text.rated import rated_lines
from windwall.report.text_layout import Blocks, as_text, bullet, paragraph, section
from windwall.results.default_sensitivity import DefaultSensitivity
from windwall.results.diagnosis import Diagnosis
from windwall.results.top_speed import TopSpeed
from windwall.scenario.data import ScenarioData

__all__ = [
    "NEXT", "NO_SPEED", "SEEN", "SHOWN", "a_sentence", "answer_lines", "closing", "default_lines",
    "mismatches", "opening",
]  # fmt: skip

SEEN = "The model has {model} where {observed} was observed: {off} standard deviations off."
SHOWN = 12
NEXT = ("check", "speed", "rank", "report")
NO_SPEED = "With these answers no top speed is found"


def opening(path: str, draft: str) -> str:
    lines = paragraph(
        f"A few questions make {path}. Every number with its unit, and how well it is known behind "
        "± or +/- where that can be told. An empty answer leaves the usual value, which the model "
        "knows the spread of. ? explains a question, back returns to the one before, end leaves "
        "everything else at its usual value. Ctrl-D or Ctrl-C breaks off, and keeps the answers in "
        f"{draft}.",
        "",
    )
    return as_text([*lines, ""])


def closing(
    made: ScenarioData,
    answer: TopSpeed,
    diagnosis: Diagnosis | None,
    doubts: list[str],
    found: list[DefaultSensitivity],
) -> str:
    """The stock engine beside its figures, what was written, what comes of it, what was observed
    otherwise and what is doubtful, which defaults it leans on, and what to type next.
    """
    lines = [*rated_lines(made), "", f"written: {made.source}", *answer_lines(answer)]
    lines += mismatches(diagnosis, made.system) if diagnosis else []
    lines += section(
        "Look at these answers again", [one for it in doubts for one in bullet(a_sentence(it))]
    )
    name = shlex.quote(made.source)
    nexts = [f"  windwall {command} {name}" for command in NEXT]
    return as_text([*lines, *default_lines(found, made.system), *section("Next", nexts)])


def a_sentence(text: str) -> str:
    """With a capital in front and a full stop behind."""
    return f"{text[0].upper()}{text[1:]}."


def answer_lines(answer: TopSpeed) -> Blocks:
    """How fast, and why no faster; or why there is no answer."""
    heading = "With these answers" if answer.answered else NO_SPEED
    return section(heading, paragraph(answer.sentence))


def mismatches(diagnosis: Diagnosis, system: str) -> Blocks:
    """The model beside a measured speed, and whatever it is far from with what would explain it."""
    lines: Blocks = []
    for one in diagnosis.compared:
        if (
            one.off is not None
            and not isinstance(one.observed, str)
            and (one.far or one.key == "speed")
        ):
            model, observed = (one.measure.short(it, system) for it in (one.model, one.observed))
            lines += paragraph(SEEN.format(model=model, observed=observed, off=f"{one.off:+z.1f}"))
        for told in diagnosis.explained:
            if told.compared is one and one.far:
                lines += contradiction(told, (), system)
    return lines


def default_lines(found: list[DefaultSensitivity], system: str) -> Blocks:
    """The defaults that matter, by what one standard deviation of each is worth."""
    if found and found[0].speed is None:
        return []
    rows = found[:SHOWN]
    lines = [line for one in rows for line in bullet(_text(one, system))]
    more = len(found) - len(rows)
    lines += paragraph(
        "The speed is what one +/- of the value is worth, found by solving again. Measuring the "
        "first ones is the cheapest way to a better answer."
        + (f" Another {more} usual values matter less." if more > 0 else "")
    )
    return section("Values that were not stated and that the answer leans on", lines)


def _text(one: DefaultSensitivity, system: str) -> str:
    known = one.input
    measure = known.measure
    value = measure.short(known.value, system, 3)
    sigma = measure.spread.short(known.sigma, system, 2)
    worth = SPEED.short(one.speed or 0, system, 2)
    return f"{worth}: {known.address}, {value} +/- {sigma}. {known.sentence}."
