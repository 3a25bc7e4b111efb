"""Which fault fits, and the check that tells."""

from __future__ import annotations

from windwall.results.faults import Alternative, FaultsThatFit, Shown, Telling
from windwall.results.views import sentence

__all__ = [
    "BEST", "HARDLY", "LEANS", "MOVE", "POOR", "SETTLED", "SETTLES", "SEVERITY", "SHOWS", "SOME",
    "TELLING", "UNLIKELY", "UNREAD", "WITH_SPREAD", "counted", "faults_sentence", "fits_poorly",
    "move", "severity", "shown_sentence", "telling_sentence",
]  # fmt: skip

BEST = "{title} fits best: in {chance} vehicles read like this{severity}."
UNREAD = "Nothing was read that any fault could be held against."
POOR = (
    "Yet none of these fits well: two things are wrong at once, a gauge is, or something that the"
    " model does not have."
)
SEVERITY = ", {told}"
WITH_SPREAD = "{severity} ± {spread}"
TELLING = "To tell {first} from {second}: {says} ({hours:g} h). {clear}"
SETTLES = "That settles it."
LEANS = "It comes nearest to settling it: the two lie {apart:.1f} of its standard deviations apart."
HARDLY = "Hardly anything does: by it the two lie {apart:.1f} standard deviations apart."
SETTLED, SOME = 3.0, 1.0
SHOWS = "{title} would show {moves}."
MOVE = "a {gauge} of {faulty} instead of {sound}"
UNLIKELY = 0.01  # chance of so poor a fit where the alternative is true


@sentence.register(FaultsThatFit)
def faults_sentence(answer: FaultsThatFit) -> str:
    """What fits best."""
    if not answer.facts:
        return UNREAD
    best = answer.alternatives[0]
    told = severity(best, answer.system)
    said = SEVERITY.format(told=told) if told else ""
    made = BEST.format(title=best.title, chance=counted(best.chance), severity=said)
    made = made[0].upper() + made[1:]
    return f"{made} {POOR}" if fits_poorly(answer) else made


def fits_poorly(answer: FaultsThatFit) -> bool:
    """Whether even the best alternative leaves more than the sensors and the doubt allow."""
    from scipy.stats import chi2

    numbers = sum(not isinstance(one.value, str) for one in answer.facts)
    best = min(one.misfit for one in answer.alternatives)
    return numbers > 0 and bool(chi2.sf(best, numbers) < UNLIKELY)


def counted(chance: float) -> str:
    """A chance in words that people count."""
    if chance > 0.995:
        return "more than 99 of 100"
    if chance < 0.005:
        return "fewer than 1 of 100"
    return f"{round(100 * chance)} of 100"


def severity(one: Alternative, system: str) -> str:
    """How bad a fault is, with its ±."""
    if one.measure is None or one.severity is None or one.spread is None:
        return ""
    unit = one.measure.shown(system)
    value = one.measure.number(one.severity, system, 2)
    spread = one.measure.number(one.spread, system, 1)
    number = WITH_SPREAD.format(severity=value, spread=spread)
    return one.told.format(severity=f"{number} {unit}".rstrip())


def shown_sentence(one: Alternative, system: str) -> str:
    """What else it would show."""
    moves = ", ".join(move(each, system) for each in one.shows)
    made = SHOWS.format(title=one.title, moves=moves)
    return made[0].upper() + made[1:]


def move(one: Shown, system: str) -> str:
    """What one gauge would read."""
    faulty, sound = (one.measure.text(x, system, 3) for x in (one.faulty, one.sound))
    return MOVE.format(gauge=one.title, faulty=faulty, sound=sound)


def telling_sentence(answer: FaultsThatFit, check: Telling) -> str:
    """The one check, and whether it settles it."""
    first, second = answer.alternatives[:2]
    clear = SETTLES if check.apart >= SETTLED else LEANS if check.apart >= SOME else HARDLY
    says = check.says
    return TELLING.format(
        first=first.title,
        second=second.title,
        says=says,
        hours=check.hours,
        clear=clear.format(apart=check.apart),
    )
