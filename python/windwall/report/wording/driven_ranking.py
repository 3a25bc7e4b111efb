"""What a ranking by driven runs comes to, and how far it can be trusted."""

from __future__ import annotations

from windwall.quantities.measures import LENGTH
from windwall.report.wording.ranking import already
from windwall.report.wording.sets import sum_of_money
from windwall.results.driven_ranking import DrivenRanking, DrivenSet
from windwall.results.views import sentences

__all__ = [
    "ALL", "AS_IT_IS", "AT_END", "BEST", "BEYOND", "BEYOND_GOAL", "CHECKED", "CUT", "DRIVEN",
    "GAIN", "HIGHEST", "LEFT_ASIDE", "MISSED", "MISSED_GOAL", "NEAR", "NONE", "NONE_HOLDS",
    "NOT_SURE", "ONE", "OVER", "REACHED", "STOPPED", "TO", "as_it_is", "cost",
    "driven_ranking_sentences", "merit", "what",
]  # fmt: skip

TO = "time from standstill to {mark}"
OVER = "time from standstill over {mark}"
AT_END = "speed at the end of {road} from standstill"
HIGHEST = "speed where a run gets no faster"
BEST = "Best is {name}: {merit}{gain}, for {cost}."
GAIN = ", {gain} {better} than as it is"
AS_IT_IS = "Nothing on the menu is better than as it is: {merit}."
NONE = "No run gets there."
NONE_HOLDS = (
    "There is no best: every allowed set passes a limit, has no answer or ends without one."
)
BEYOND = "{merit}, and past limits of the file"
LEFT_ASIDE = (
    "Left aside undriven, because a long pull with it passes a limit, has no answer or ends "
    "without one: {count}. `windwall rank FILE` says which limits those are, and what each "
    "upgrade gains alone."
)
BEYOND_GOAL = (
    "The goal of {goal} is reached as it is, {merit}, but past limits; no set that holds every "
    "limit reaches it."
)
REACHED = "The goal of {goal} is reached most cheaply by {name}, for {cost}: {merit}."
MISSED_GOAL = "Nothing that was driven reaches the goal of {goal}."
DRIVEN = (
    "{driven} of the {candidates} sets that hold every limit were driven; the quick ranking says "
    "that no other can be the best for its price. Driven runs lie about a straight line over the "
    "quick speed with a standard deviation of {spread}."
)
ALL = "All {candidates} sets that hold every limit were driven."
ONE = "The one set that holds every limit was driven."
CHECKED = (
    "{checked} of those passed over were driven all the same: none is the best for its price{near}."
)
NEAR = ", the nearest {nearest} behind"
MISSED = (
    "CAUTION: of {checked} passed over and driven all the same {missed} are the best for their "
    "price: the pruning misses sets here."
)
CUT = (
    "CAUTION: so many could still win that only {driven} were driven; better may be among the rest."
)
STOPPED = "It was stopped; what stands here is what had been driven by then."
NOT_SURE = (
    "Runs are driven with the knock anchor at its middle, and choices have the value of the "
    "highest quick speed at the end of that road."
)


def what(answer: DrivenRanking) -> str:
    """What is ranked by."""
    if answer.mark is not None:
        mark = answer.mark.measure.short(answer.mark.value, answer.system, 6)
        return (OVER if answer.mark.speed is None else TO).format(mark=mark)
    if answer.run_up is None:
        return HIGHEST
    return AT_END.format(road=LENGTH.short(answer.run_up, answer.system))


def merit(answer: DrivenRanking, one: DrivenSet, digits: int = 4) -> str:
    """A time or a speed with its unit."""
    if one.merit is None:
        return "no answer"
    return answer.of_merit.text(one.merit, answer.system, digits)


def cost(answer: DrivenRanking, one: DrivenSet) -> str:
    return sum_of_money(one.fitted.cost, answer.currency)


@sentences.register(DrivenRanking)
def driven_ranking_sentences(answer: DrivenRanking) -> list[str]:
    """The best, the goal, the limits that are passed already, and what was passed over."""
    beyond = [already(answer.passed)] if answer.passed else []
    aside, said = answer.left_aside, []
    if aside:
        said = [LEFT_ASIDE.format(count="1 set" if aside == 1 else f"{aside} sets")]
    return [*_best(answer), *_goal(answer), *beyond, *said, *_trust(answer), NOT_SURE]


def as_it_is(answer: DrivenRanking) -> str:
    """What the vehicle as it is comes to, and that it passes limits on the way."""
    found = merit(answer, answer.stock)
    return BEYOND.format(merit=found) if answer.passed else found


def _best(answer: DrivenRanking) -> list[str]:
    best = answer.best
    if best is None:
        return [NONE_HOLDS if answer.answered else NONE]
    if not best.fitted.upgrades:
        return [AS_IT_IS.format(merit=merit(answer, best))]
    gain = answer.gain(best)
    words = ("faster", "slower") if answer.mark is None else ("less", "more")
    said = ""
    if gain is not None:
        said = GAIN.format(gain=_number(answer, abs(gain)), better=words[gain < 0])
    return [
        BEST.format(
            name=best.fitted.name, merit=merit(answer, best), gain=said, cost=cost(answer, best)
        )
    ]


def _goal(answer: DrivenRanking) -> list[str]:
    if answer.goal is None:
        return []
    goal = answer.of_merit.short(answer.goal, answer.system)
    one = answer.cheapest_for_goal
    if one is None and answer.reaches(answer.stock):
        return [BEYOND_GOAL.format(goal=goal, merit=merit(answer, answer.stock))]
    if one is None:
        return [MISSED_GOAL.format(goal=goal)]
    said = {"name": one.fitted.name, "cost": cost(answer, one), "merit": merit(answer, one)}
    return [REACHED.format(goal=goal, **said)]


def _trust(answer: DrivenRanking) -> list[str]:
    pruned = answer.pruning
    if answer.stopped:
        return [STOPPED]
    if pruned.candidates < 2:
        return [ONE] * pruned.candidates
    if pruned.driven == pruned.candidates:
        return [ALL.format(candidates=pruned.candidates)]
    said = [CUT.format(driven=pruned.driven)] if not answer.complete else []
    spread = _number(answer, pruned.spread)
    if answer.complete:
        said.append(DRIVEN.format(**pruned._asdict() | {"spread": spread}))
    if pruned.missed:
        return [*said, MISSED.format(checked=pruned.checked, missed=pruned.missed)]
    near = "" if pruned.nearest is None else NEAR.format(nearest=_number(answer, pruned.nearest))
    return [*said, CHECKED.format(checked=pruned.checked, near=near)]


def _number(answer: DrivenRanking, value: float) -> str:
    return answer.of_merit.text(value, answer.system, 2)
