"""What an answer leans on, in sentences."""

from __future__ import annotations

from windwall.quantities.measures import SPEED, TIME
from windwall.results.leans_on import Lean, Leaning, LeansOn, LeansPlan
from windwall.results.views import sentence, sentences

__all__ = [
    "AS_IT_IS", "COST", "DIFFERENCE_LEANS", "NAMED", "NOTHING", "NOTICEABLE", "SAID", "SHARE",
    "SLOWER", "SPEED_LEANS", "STOPPED", "TOGETHER", "UNANSWERED", "WHAT", "cost", "first_sentence",
    "further_sentences", "listed", "most", "said", "set_name", "share",
]  # fmt: skip

COST = (
    "{speeds} top speeds of {worlds} worlds are to be solved, about {time}; Ctrl-C keeps what is "
    "done."
)
SPEED_LEANS = "The speed is {mean} ± {sigma} and leans most on {most}."
DIFFERENCE_LEANS = "{first} is {mean} ± {sigma} faster than {second}, which leans most on {most}."
SLOWER = "{first} is {mean} ± {sigma} slower than {second}, which leans most on {most}."
SHARE = "{title} ({share})"
NOTHING = {
    "speed": "Too few worlds have a speed, or all have the same: nothing can be said.",
    "difference": "The difference of the two sets is the same in every world, or too few have it.",
}
TOGETHER = "{share} of what moves {what} comes of several numbers that are off together."
UNANSWERED = (
    "{count} of {rows} rows of worlds are left out of {what}: not every world in them has an "
    "answer."
)
STOPPED = "Stopped after {rows} of {all} rows; the ± of the shares says what that leaves open."
WHAT = {"speed": "the speed", "difference": "the difference"}
AS_IT_IS = "The vehicle as it is"
NAMED = 3
SAID = 0.05  # share from which a number is named
NOTICEABLE = 0.1


@sentence.register(LeansPlan)
def cost(plan: LeansPlan) -> str:
    """What it will take."""
    worlds = plan.rows * plan.worlds_of_a_row
    return COST.format(
        speeds=plan.speeds, worlds=worlds, time=TIME.short(max(plan.seconds, 1.0), "metric", 2)
    )


@sentence.register(LeansOn)
def first_sentence(found: LeansOn) -> str:
    """What the speed leans on."""
    return said(found, found.speed)


@sentences.register(LeansOn)
def further_sentences(found: LeansOn) -> list[str]:
    """The difference, what comes of several at once, and what is missing."""
    made = [said(found, one) for one in found.leanings[1:]]
    for one in found.leanings:
        made += _together(one)
        if one.unanswered:
            rows = one.worlds + one.unanswered
            made.append(UNANSWERED.format(count=one.unanswered, rows=rows, what=WHAT[one.of]))
    if found.interrupted:
        made.append(STOPPED.format(rows=found.rows, all=found.plan.rows))
    return made


def said(found: LeansOn, leaning: Leaning) -> str:
    """One answer in a sentence."""
    if not leaning.leans:
        return NOTHING[leaning.of]
    values = {
        "mean": f"{SPEED.value(abs(leaning.mean), found.system):.1f}",
        "sigma": f"{SPEED.value(leaning.sigma, found.system):.1f} {SPEED.shown(found.system)}",
        "most": listed([_shared(one) for one in most(leaning)]) or "no number in particular",
    }
    if leaning.of == "speed":
        return SPEED_LEANS.format(**values)
    first, second = map(set_name, found.pair)
    template = DIFFERENCE_LEANS if leaning.mean >= 0 else SLOWER
    return template.format(first=first, second=second, **values)


def set_name(upgrades: tuple[str, ...]) -> str:
    """A set by its upgrades."""
    return " + ".join(upgrades) or AS_IT_IS


def most(leaning: Leaning) -> list[Lean]:
    """What is worth naming."""
    return [one for one in leaning.leans[:-1] if one.total >= SAID][:NAMED]


def _shared(one: Lean) -> str:
    return SHARE.format(title=one.title, share=share(one.total))


def share(value: float) -> str:
    """In whole per cent."""
    return f"{100 * max(value, 0.0):.0f} %"


def listed(texts: list[str]) -> str:
    """`a, b and c`."""
    return " and ".join([", ".join(texts[:-1]), texts[-1]] if len(texts) > 1 else texts)


def _together(leaning: Leaning) -> list[str]:
    """Said where first orders leave more than their errors explain."""
    left = 1 - sum(one.first for one in leaning.leans)
    error = sum(one.first_error**2 for one in leaning.leans) ** 0.5
    if not leaning.leans or left < max(NOTICEABLE, 2 * error):
        return []
    return [TOGETHER.format(share=share(left), what=WHAT[leaning.of])]
