"""The model held against what was seen, first of all."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from windwall.quantities.measures import ANGLE, ENGINE_SPEED, LENGTH, SHARE, SPEED
from windwall.report.text.rated import MEASURES as RATED
from windwall.report.text_layout import Blocks, bullet, paragraph, section, table
from windwall.results.diagnosis import (
    FAR_OFF,
    SETTINGS,
    Compared,
    Diagnosis,
    Explained,
    Explanation,
    Fact,
    FirstGain,
    Spoiled,
    heard_tells,
    listened_for_knock,
)
from windwall.results.scenario_info import RatedFigure, ScenarioInfo
from windwall.results.situation import Apart
from windwall.scenario.inputs import SLIPS
from windwall.study.diagnosis import FARTHEST

__all__ = [
    "CHALLENGED", "COUNTED", "EXPLAINED", "FAR", "FIRST", "HEADER", "NOT_YET", "RECOMMENDED",
    "SPARKS", "SPOILS", "THEN", "UNEXPLAINED", "contradiction", "counted", "held", "in_order",
    "label", "moved_text", "not_compared", "observed_lines", "rated_text", "spoils_text",
]  # fmt: skip

COUNTED = (
    "The model's +/- counts where the engine knocks{sparks}, and no other input: with all of them "
    "it is less sure than that."
)
SPARKS = " and the spark that was driven"
HEADER = ("", "observed", "+/-", "model", "+/-", "standard deviations off")
NOT_YET = (
    "The file says what was observed, and nobody has compared it with this answer yet. Where the "
    "scenario is called car, print(answer.summary({diagnose})) does."
)
FAR = (
    "CAUTION: the model is over {limit} standard deviations from what was observed in {name}, and "
    "what follows is worth less until that is explained."
)
CHALLENGED = (
    "CHALLENGED: in {name} the model is {off} standard deviations from what was observed. Before "
    "anything below is believed, see what would explain it."
)
EXPLAINED = "Any one of these, so far off, would:"
UNEXPLAINED = (
    "No single input does, moved within {farthest:.0f} of its standard deviations: several are "
    "wrong at once, or something that the file or the model does not have."
)
FIRST = "As stated the first gains alone are {gains} {unit}; behind each stands what they would be."
THEN = "; then {gains}"
SPOILS = "; but it spoils, by so many standard deviations: {facts}"
RECOMMENDED = ", the recommended set {speed}"


def observed_lines(
    info: ScenarioInfo, diagnosis: Diagnosis | None, how: str = "car.diagnose()"
) -> Blocks:
    """Model beside observation, in standard deviations of both, with a caution where far off; or
    how to get that.
    """
    heading = "Held against what was observed"
    if diagnosis is None:
        return section(heading, paragraph(NOT_YET.format(diagnose=how))) if info.observed else []
    system, compared = info.system, diagnosis.compared
    lines = table((_row(one, system) for one in compared), head=HEADER) if compared else []
    lines += [line for sentence in held(compared, system) for line in paragraph(sentence)]
    lines += paragraph(counted(compared))
    for one in diagnosis.explained:
        lines += contradiction(one, diagnosis.first, system)
    lines += [line for sentence in not_compared(info) for line in paragraph(sentence)]
    return section(heading, lines)


def label(fact: Fact, system: str) -> str:
    """What was seen, and when."""
    name = fact.key.replace("_", " ")
    if fact.at_top_speed:
        return name
    if fact.situation.apart:
        return _apart(fact.situation.apart, system)
    return f"{name} at {ENGINE_SPEED.text(fact.engine_speed, system, 4)}"


def _apart(done: Apart, system: str) -> str:
    """What was done, of a fact that was not seen at one engine speed."""
    if done.key == "fuel_used":
        return f"fuel used at {SPEED.short(done.speed, system)}"
    if done.key == "caught":
        return f"caught from {done.part}"
    if done.key == "coasting":
        fast, slow = (SPEED.short(done.coasting[at][1], system) for at in (0, -1))
        return f"time to coast from {fast} to {slow}"
    if done.speed is None:
        return f"time over {LENGTH.short(done.distance, system)}"
    return f"time to {SPEED.short(done.speed, system)}"


def counted(compared: Sequence[Compared]) -> str:
    """What the model's own spread is made of."""
    if not any(one.model_sigma for one in compared):
        return ""
    sparks = any(one.fact.retard_sigma for one in compared)
    return COUNTED.format(sparks=SPARKS if sparks else "")


def _row(one: Compared, system: str) -> tuple[str, ...]:
    measure, name = one.measure, label(one.fact, system)
    if one.key == "knock":
        spread = f"{one.model_sigma:.1f}"
        return name, str(one.observed), "", f"{one.model:+z.1f} octane", spread, f"{one.off:+z.1f}"
    observed, model = (measure.short(value, system) for value in (one.observed, one.model))
    if one.key == "gear":
        return name, observed, "", model, "", "same" if one.model == one.observed else "another"
    if one.key in SETTINGS:
        observed, model = (measure.short(value, system, 2) for value in (one.observed, one.model))
    known = "not stated" if one.sigma is None else measure.spread.number(one.sigma, system, 2)
    spread = measure.spread.number(one.model_sigma, system, 2)
    off = "chosen, not judged" if one.key in SETTINGS else ""
    return name, observed, known, model, spread, off if one.off is None else f"{one.off:+z.1f}"


def held(compared: Sequence[Compared], system: str) -> Iterator[str]:
    """With which spark, and at which engine speed, the model stands beside each entry."""
    entries: list[list[Compared]] = []
    for one in compared:
        if entries and entries[-1][0].fact.entry is one.fact.entry:
            entries[-1].append(one)
        else:
            entries.append([one])
    for entry in entries:
        judged = [one for one in entry if one.key not in SETTINGS and not one.fact.apart]
        if judged:
            at_turns = [one for one in judged if one.fact.situation.held]
            yield f"The model has {_spark(judged[0], system)}{_turns(at_turns, system)}."


def _spark(one: Compared, system: str) -> str:
    retard = one.fact.situation.retard
    if retard is None:
        return "its own spark, for the one that was driven is not stated"
    return f"the spark that was driven, {ANGLE.short(retard, system, 2)} late"


def _turns(held: list[Compared], system: str) -> str:
    """At what the engine turned for the facts that are not of the end of the model's own pull."""
    if not held or not held[0].fact.at_top_speed or held[0].engine_speed is None:
        return ""
    asked = held[0].fact.situation
    names = " and ".join(label(one.fact, system) for one in held)
    text = f", and for {names} {ENGINE_SPEED.short(held[0].engine_speed, system)}"
    if asked.gear is None:
        return text + " as it was read"
    return text + f": {SPEED.short(asked.road_speed, system)} in gear {asked.gear:.0f}"


def contradiction(one: Explained, first: tuple[FirstGain, ...], system: str) -> Blocks:
    """That a fact contradicts the model, which single input would explain it, and what that makes
    of the gains that come first.
    """
    said = FAR if one.compared.far else CHALLENGED
    opening = said.format(
        limit=FAR_OFF, name=label(one.compared.fact, system), off=f"{one.compared.off:+z.1f}"
    )
    if not one.inputs:
        return paragraph(f"{opening} {UNEXPLAINED.format(farthest=FARTHEST)}")
    more = [EXPLAINED]
    if first:
        names = [each.label for each in first]
        gains = in_order(names, [each.gain for each in first], system)
        more = [FIRST.format(gains=gains, unit=SPEED.shown(system)), EXPLAINED]
    lines = paragraph(" ".join([opening, *more]))
    return lines + [line for each in one.inputs for line in bullet(moved_text(each, first, system))]


def moved_text(one: Explanation, first: tuple[FirstGain, ...], system: str) -> str:
    """An input, what it is and what it would have to be, and the gains then."""
    known = one.input
    now, then = (known.measure.short(value, system, 3) for value in (known.value, one.value))
    stated = "read" if one.is_misread else "stated" if known.given else "assumed"
    text = (
        f"{known.address}: {then} instead of {now} {stated}, "
        f"{one.deviations:+z.1f} of its standard deviations"
    )
    if known.sentence == SLIPS:
        text += f", by a belt that slips {SHARE.text(1 - one.value / known.value, system, 2)}"
    names = [each.label for each in first]
    text += rated_text(one.rated, system) + spoils_text(one.spoils, system)
    if one.is_misread:
        return f"{text}; then nothing here changes"
    if not one.gains:
        return text
    text += THEN.format(gains=in_order(names, one.gains, system))
    speed = one.speeds.get("target")
    return text + (RECOMMENDED.format(speed=SPEED.text(speed, system, 4)) if speed else "")


def spoils_text(spoiled: tuple[Spoiled, ...], system: str) -> str:
    """What it makes the model miss that it meets as it is."""
    if not spoiled:
        return ""
    named = (f"{label(one.fact, system)}, {one.off:+z.1f}" for one in spoiled)
    return SPOILS.format(facts=" and ".join(named))


def rated_text(rated: tuple[RatedFigure, ...], system: str) -> str:
    """What the plate comes to, once the rest of the stock engine is fitted to it again."""
    if not rated:
        return ""
    met = [RATED[one.key].text(one.met, system, 3) for one in rated]
    printed = [RATED[one.key].short(one.rated, system, 3) for one in rated]
    return f"; the plate, {' and '.join(printed)}, is then met with {' and '.join(met)}"


def in_order(names: list[str], gains: Sequence[float | None], system: str) -> str:
    """Upgrades with their gains, the largest first."""
    both = sorted(zip(names, gains, strict=True), key=lambda one: -(one[1] or 0.0))
    return ", ".join(
        f"{name} {'no answer' if gain is None else SPEED.change(gain, system)}"
        for name, gain in both
    )


def not_compared(info: ScenarioInfo) -> Iterator[str]:
    """Observations that the model cannot be asked about."""
    for at, entry in enumerate(info.observed, 1):
        at_full_throttle = entry["what"] == "full throttle"
        if at_full_throttle and not entry["engine_speed"]:
            yield f"observed/{at} is not compared: full throttle needs its engine_speed."
        if listened_for_knock(entry) and not heard_tells(entry, info.spark_is_chosen):
            yield (
                f'What was heard of knock in observed/{at} ("{entry["knock"]}") says nothing until '
                "its retard is stated: the spark that was driven."
            )
