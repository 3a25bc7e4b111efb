"""Which fault fits, as people read it."""

from __future__ import annotations

from windwall.report.text.safety_notes import safety_notes
from windwall.report.text_layout import (
    Bars,
    Blocks,
    Title,
    bullet,
    headline,
    paragraph,
    section,
    table,
)
from windwall.report.wording.faults import (
    counted,
    severity,
    shown_sentence,
    telling_sentence,
)
from windwall.results.faults import FactRead, FaultsThatFit
from windwall.results.views import content

__all__ = ["ASKED", "BEFORE", "CHECKING", "HEADER", "IMPOSSIBLE", "OFF", "PRIOR", "faults_text"]

ASKED = "Asked: which single fault fits what was read{before}."
BEFORE = ", in the vehicle as {count} readings found it when it was sound"
HEADER = ("", "read", "+/-", "sound", "+/-", "off", "likeliest")
OFF = (
    "Off: standard deviations that the sound vehicle lies above what was read, those of the "
    "sensor and of the vehicle's own doubt together. Likeliest: what the first alternative below "
    "would read."
)
PRIOR = (
    "Before anything was read: no fault as likely as any, and each fault that this vehicle can "
    "have as likely as the next. A fault fits by its severity alone, spread evenly over what may "
    "be; the rest of the vehicle is as doubtful as its file says."
)
IMPOSSIBLE = "Not looked for, without the parts or without an answer: {names}."
CHECKING = "Engine off and cold, unless the check asks for a pull. {care}."


@content.register(FaultsThatFit)
def faults_text(answer: FaultsThatFit) -> Blocks:
    """Everything worth reading about it."""
    before = BEFORE.format(count=answer.before) if answer.before else ""
    lines = [Title(answer.title), *paragraph(ASKED.format(before=before), "")]
    lines += ["", *headline(answer.sentence)]
    if not answer.facts:
        return [*lines, *safety_notes()]
    read = table((_fact(one, answer.system) for one in answer.facts), head=HEADER)
    lines += section("What was read", read + paragraph(OFF))
    bars = Bars("", tuple((x.chance, x.chance, x.chance) for x in answer.alternatives))
    lines += section(
        "Which fault fits", table(_rows(answer), left=(0, 2), bars=bars) + paragraph(PRIOR)
    )
    if answer.impossible:
        lines += paragraph(IMPOSSIBLE.format(names=", ".join(answer.impossible)))
    likely = [one for one in answer.alternatives[:3] if one.shows]
    shown = [line for one in likely for line in bullet(shown_sentence(one, answer.system))]
    lines += section("What else each would show", shown)
    return [*lines, *_check(answer), *safety_notes()]


def _fact(one: FactRead, system: str) -> tuple[str, ...]:
    measure, off = one.measure, "" if one.off is None else f"{one.off:+z.1f}"
    sound = (measure.text(one.model, system, 4), measure.spread.number(one.model_sigma, system, 2))
    fitted = "" if one.fitted is None else measure.number(one.fitted, system, 4)
    if isinstance(one.value, str):
        return one.address, one.value, "", *sound, off, fitted
    sigma = measure.spread.number(one.sigma, system, 2)
    return one.address, measure.text(one.value, system, 4), sigma, *sound, off, fitted


def _rows(answer: FaultsThatFit) -> list[tuple[str, str, str]]:
    return [
        (one.title, counted(one.chance), severity(one, answer.system))
        for one in answer.alternatives
    ]


def _check(answer: FaultsThatFit) -> Blocks:
    check = answer.telling
    if check is None:
        return []
    lines = paragraph(telling_sentence(answer, check))
    care = check.care[:1].upper() + check.care[1:]
    return section("The check that tells", lines + paragraph(CHECKING.format(care=care)))
